/**
 * What was set otherwise, in words.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import { USUAL_LABOUR_PCT, type Settings } from "../../cellar/batch/what-if";
import type { Units } from "../units";
import { KNOB_KEYS, knobOf, type Knob, type KnobKey } from "./knobs";

/** Two decimals, and of what is less than one as many as it takes. */
const brief = (value: number) =>
  value.toLocaleString(
    undefined,
    Math.abs(value) < 1 ? { maximumSignificantDigits: 3 } : { maximumFractionDigits: 2 },
  );
export const knobText = (knob: Knob, kept: number) => `${brief(knob.shown(kept))} ${knob.unit}`;

const SENTENCES: Readonly<Record<KnobKey, (now: string, own: string) => string>> = {
  volume_hL: (now, own) => `${now} of base wine instead of ${own}`,
  pressure_bar: (now, own) => `excess pressure ${now} instead of ${own}`,
  dose_gL: (now, own) => `dose ${now} instead of ${own}`,
  target_gL: (now, own) => `sweetness ${now} instead of ${own}`,
};

/** One phrase for each setting that differs from the form's. */
export function changesOf(inputs: BatchInputs, settings: Settings, units: Units): string[] {
  return KNOB_KEYS.flatMap((key) => {
    const value = settings[key];
    const knob = knobOf(key, inputs, units);
    if (knob === undefined || value === undefined || value === knob.own) return [];
    const phrase = SENTENCES[key](knobText(knob, value), knobText(knob, knob.own));
    const labour = settings.labour_pct ?? USUAL_LABOUR_PCT;
    return key === "volume_hL" && labour !== USUAL_LABOUR_PCT
      ? [phrase, `${brief(labour)} % of the labour grows with it`]
      : [phrase];
  });
}

export const changesText = (changes: readonly string[]) =>
  changes.length === 0 ? "nothing changed" : changes.join("; ");
