/**
 * What can be turned in a batch, and how far, in the person's own unit.
 */
import type { NumberField, OptionalField } from "../../cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../../cellar/batch/fields";
import type { Settings } from "../../cellar/batch/what-if";
import { rangeText, isWithin, type Domain } from "../../cellar/domains";
import type { Quantity, Unit, Units } from "../units";

export const KNOB_KEYS = ["volume_hL", "pressure_bar", "dose_gL", "target_gL"] as const;
export type KnobKey = (typeof KNOB_KEYS)[number] & keyof Settings;

export interface Knob {
  readonly label: string;
  readonly unit: string;
  /** The form's own value, in the unit that everything is kept in. */
  readonly own: number;
  /** Of the slider, in the person's unit. */
  readonly min: number;
  readonly max: number;
  readonly step: number;
  shown(kept: number): number;
  kept(shown: number): number;
  isAllowed(kept: number): boolean;
  /** "0 to 60 g/L", in the person's unit. */
  readonly allowed: string;
}

interface Kind {
  readonly label: (inputs: BatchInputs, units: Units) => string;
  readonly field: NumberField | OptionalField;
  readonly quantity?: Quantity;
  /** The form's own value; null where it is not asked for. */
  readonly own: (inputs: BatchInputs) => number | null;
  /** From where to where the slider goes, before the field's domain ends it. */
  readonly reach: (own: number) => readonly [number, number];
}

const KINDS: Readonly<Record<KnobKey, Kind>> = {
  volume_hL: {
    label: () => "Volume of base wine",
    field: fields.baseWine.volume_hL,
    quantity: "volume",
    own: ({ baseWine }) => baseWine.volume_hL,
    reach: (own) => [own * 0.5, own * 1.5],
  },
  pressure_bar: {
    label: ({ tirage }, units) => `Excess pressure wanted, at ${units.degrees(tirage.pressureAt_C ?? 20)}`,
    field: fields.tirage.pressure_bar,
    quantity: "pressure",
    own: ({ tirage }) => (tirage.goal === "pressure" ? tirage.pressure_bar : null),
    reach: (own) => [own - 2, own + 2],
  },
  dose_gL: {
    label: () => "Dose wanted",
    field: fields.tirage.dose_gL,
    own: ({ tirage }) => (tirage.goal === "dose" ? tirage.dose_gL : null),
    reach: (own) => [Math.min(15, own - 5), Math.max(30, own + 5)],
  },
  target_gL: {
    label: () => "Sweetness wanted",
    field: fields.dosage.target_gL,
    own: ({ dosage }) => (dosage.kind === "none" ? null : dosage.target_gL),
    reach: (own) => [0, Math.max(60, own * 1.5)],
  },
};

const KEPT_UNIT: Omit<Unit, "name"> = { shown: (kept) => kept, kept: (shown) => shown };

/** Undefined where this batch has no such setting. */
export function knobOf(key: KnobKey, inputs: BatchInputs, units: Units): Knob | undefined {
  const { label, field, quantity, own: ownOf, reach } = KINDS[key];
  const own = ownOf(inputs);
  if (own === null) return undefined;
  const { name, shown, kept } = quantity ? units.of(quantity) : { ...KEPT_UNIT, name: field.unit };
  const { domain } = field;
  const inUnit = (value: number) => shown(value) ?? value;
  const [low, high] = reach(own);
  const ends = [inUnit(Math.max(low, domain.min)), inUnit(Math.min(high, domain.max))] as const;
  const step = niceStep(ends[1] - ends[0]);
  return {
    label: label(inputs, units),
    unit: name,
    own,
    // on whole steps, and so inside the range
    min: short(Math.ceil(short(ends[0] / step)) * step),
    max: short(Math.floor(short(ends[1] / step)) * step),
    step,
    shown: inUnit,
    kept: (value) => kept(value) ?? value,
    isAllowed: (value) => isWithin(domain, value),
    allowed: rangeInUnit(domain, name, inUnit),
  };
}

function rangeInUnit(domain: Domain, unit: string, inUnit: (kept: number) => number): string {
  return rangeText({ ...domain, unit, min: inUnit(domain.min), max: inUnit(domain.max) });
}

const STEPS_AT_LEAST = 80;

/** The largest of 1, 2 and 5 times a power of ten that leaves enough steps. */
export function niceStep(range: number): number {
  const most = range / STEPS_AT_LEAST;
  const power = 10 ** Math.floor(Math.log10(most));
  const lead = most / power;
  return short((lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power);
}

/** Without the tail of a float. */
const short = (value: number) => Number(value.toPrecision(12));
