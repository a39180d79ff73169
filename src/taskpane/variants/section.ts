/**
 * What if: sliders for what can be set otherwise, the figures of the setting beside the form's, and up to three
 * settings kept side by side. Nothing in the form changes until a setting is put there.
 */
import { problemSentence } from "../../cellar/batch/problem";
import { placedFields } from "../../cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../../cellar/batch/fields";
import type { Problem } from "../../cellar/batch/problem";
import { attemptPlan, atSettings, type Settings } from "../../cellar/batch/what-if";
import type { BatchPlan } from "../../cellar/batch/plan";
import { button, element } from "../dom";
import type { Units } from "../units";
import { changesOf, changesText } from "./changes";
import { spokenOf } from "./figures";
import { oncePerFrame, whenAtRest } from "./frames";
import { MOST_KEPT, isOfEarlier, kept, type Variant } from "./kept";
import { KNOB_KEYS, knobOf } from "./knobs";
import { labourBox } from "./labour";
import { results } from "./results";
import { Slider } from "./slider";

export interface VariantsSection {
  readonly element: HTMLElement;
  /** The form's inputs as they are now; null while it cannot be planned. */
  follow(inputs: BatchInputs | null): void;
}

const NO_FORM = "The form has fields to mend. Settings can be tried once it can be planned.";
const TO_MEND = "There are no figures until the number above is mended.";
const FULL = `${MOST_KEPT} variants are kept already. Remove one before you keep another.`;

const labels = new Map(placedFields(fields).map(({ dotted, field }) => [dotted, field.label]));
const inWords = (problem: Problem) =>
  problemSentence({ ...problem, field: labels.get(problem.field) ?? problem.field });

export function variantsSection(
  units: Units,
  take: (batch: BatchInputs, said: string) => void,
): VariantsSection {
  let form: { readonly inputs: BatchInputs; readonly plan: BatchPlan } | null = null;
  let current: Variant | null = null;

  const status = element("p", { class: "said", role: "status" });
  const spoken = element("p", { class: "visually-hidden", role: "status" });
  const say = (text: string) => (status.textContent = text);
  const speakAtRest = whenAtRest((text) => (spoken.textContent = text));
  const shown = results();
  const soon = oncePerFrame(update);
  /** Whether a setting was changed here; what the form changes is said elsewhere. */
  let isTurned = false;
  const changed = () => {
    isTurned = true;
    say("");
    soon();
  };
  const speak = (text: string) => {
    if (isTurned) speakAtRest(text);
    isTurned = false;
  };

  const sliders = KNOB_KEYS.map((key) => ({ key, slider: new Slider(`variant-${key}`, changed) }));
  const labour = labourBox(changed);
  sliders[0]!.slider.element.append(labour.element);
  const back = button("Back to the form’s values");
  const keep = button("Keep this variant");
  const put = button("Put into the form");
  const variants = kept(
    (name, variant, changes) =>
      give(
        variant.inputs,
        isOfEarlier(variant, form?.inputs ?? null)
          ? `Variant ${name} is in the form, with all the rest as it was when it was kept: ${changes}.`
          : `Variant ${name} is in the form: ${changes}.`,
      ),
    (name) => {
      say(`Variant ${name} is removed.`);
      keep.focus();
    },
  );
  const noForm = element("p", { class: "note" }, NO_FORM);
  const bench = element(
    "div",
    { hidden: true },
    element(
      "p",
      { class: "note" },
      "Move a slider or type a number. The form stays as it is until you put a setting into it.",
    ),
    ...sliders.map(({ slider }) => slider.element),
    element("div", { class: "actions" }, back),
    shown.element,
    element("div", { class: "actions" }, keep, put),
  );

  /** Puts inputs into the form; the setting is the form's own from then on. */
  function give(inputs: BatchInputs, said: string): void {
    resetAll();
    take(inputs, said);
    say(said);
    soon();
  }

  function resetAll(): void {
    for (const { slider } of sliders) slider.reset();
    labour.reset();
  }

  function settings(): Settings {
    const set = sliders.flatMap(({ key, slider }) =>
      slider.setting === undefined ? [] : [[key, slider.setting] as const],
    );
    return { ...Object.fromEntries(set), labour_pct: labour.pct };
  }

  function update(): void {
    current = null;
    noForm.hidden = form !== null;
    bench.hidden = form === null;
    if (form === null) return;
    if (labour.isWrong || sliders.some(({ slider }) => slider.isWrong)) {
      shown.refuse([TO_MEND], "note");
      speak(TO_MEND);
    } else attempt(form.inputs, form.plan);
    keep.disabled = put.disabled = current === null;
  }

  function attempt(inputs: BatchInputs, plan: BatchPlan): void {
    const set = settings();
    const changedInputs = atSettings(inputs, set);
    const tried = attemptPlan(changedInputs);
    if ("problems" in tried) {
      const sentences = tried.problems.map(inWords);
      shown.refuse(sentences, "problem");
      speak(`This setting cannot be planned. ${sentences.join(" ")}`);
      return;
    }
    current = { form: inputs, settings: set, inputs: changedInputs, plan: tried.plan };
    shown.show(inputs, plan, tried.plan, units);
    speak(spokenOf(tried.plan, units));
  }

  function follow(inputs: BatchInputs | null): void {
    const tried = inputs && attemptPlan(inputs);
    form = inputs && tried && "plan" in tried ? { inputs, plan: tried.plan } : null;
    // sliders keep what was set while the form is being mended
    refresh();
  }

  function refresh(): void {
    if (form !== null) {
      for (const { key, slider } of sliders) slider.follow(knobOf(key, form.inputs, units));
    }
    variants.show(form?.inputs ?? null, units);
    soon();
  }

  back.addEventListener("click", () => {
    resetAll();
    changed();
  });
  // what stands before the eye is what is kept, also where its frame is still to come
  keep.addEventListener("click", () => {
    update();
    if (current === null) return;
    const name = variants.keep(current);
    const changes = changesText(changesOf(current.form, current.settings, units));
    say(name === undefined ? FULL : `Kept as variant ${name}: ${changes}.`);
    variants.show(form?.inputs ?? null, units);
  });
  put.addEventListener("click", () => {
    update();
    if (current === null) return;
    const changes = changesText(changesOf(current.form, current.settings, units));
    give(current.inputs, `The setting is in the form: ${changes}.`);
  });
  units.onChange(refresh);

  return {
    element: element(
      "section",
      { class: "variants", "aria-label": "What if" },
      noForm,
      bench,
      spoken,
      status,
      variants.element,
    ),
    follow,
  };
}
