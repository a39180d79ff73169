/**
 * The form: one box for each field of the field table, in the steps of the work.
 */
import {
  isField,
  placedFields,
  type Field,
  type FieldTree,
  type PlacedField,
} from "../cellar/batch/field-kinds";
import { fields, sectionTitles } from "../cellar/batch/fields";
import type { Problem } from "../cellar/batch/problem";
import { sweetnessRules } from "../cellar/rules/sweetness-bands";
import { Box } from "./box";
import { element } from "./dom";
import { materialTable, type MakeBox } from "./material-table";
import type { Planned } from "./planned";
import { readingTable } from "./reading-table";
import { isRelevant } from "./relevance";
import { stepView } from "./step-view";
import { STEPS, type Section, type Step } from "./steps";
import type { Units } from "./units";

export interface Form {
  readonly element: HTMLFormElement;
  /** What stands in the boxes, as a batch file would hold it; `hidden too` gives what is kept but not used. */
  given(which?: "used" | "hidden too"): unknown;
  /** `usual`: the fields whose values are ours, where that is known; otherwise those that the batch leaves out. */
  fill(batch: unknown, usual?: readonly string[]): void;
  /** The fields whose values are ours. */
  usual(): readonly string[];
  /** Puts in what differs between two batches, and nothing else. */
  change(from: unknown, to: unknown): void;
  /** Shows the plan's figures, or each problem at its box; answers with problems that have none. */
  show(planned: Planned): readonly Problem[];
  /** Puts a value into one box, as if it were typed. */
  set(dotted: string, value: unknown): void;
  /** Goes to the first box. */
  focus(): void;
  /** Puts something of its own at the end of a step. */
  add(step: string, more: HTMLElement): void;
}

/** Steps that are open at first: those that a first plan cannot do without. */
const OPEN = ["wine", "tirage"];
/** Sections whose fields are the same line after line. */
const TABLES: Partial<Record<Section, (makeBox: MakeBox) => HTMLElement>> = {
  materials: materialTable,
  readings: readingTable,
};
const TERM = "dosage.term";

export function batchForm(units: Units, changed: () => void): Form {
  const placedByDotted = new Map(placedFields(fields).map((each) => [each.dotted, each]));
  const boxes = new Map<string, { readonly box: Box; readonly holder: HTMLElement }>();
  const makeBox: MakeBox = (dotted, holder, describedBy) => {
    const box = new Box(placedByDotted.get(dotted)!, units, describedBy);
    boxes.set(dotted, { box, holder });
    return box;
  };

  const form = element("form", { class: "batch", novalidate: true, "aria-label": "Batch" });
  const views = STEPS.map((step, index) => {
    const view = stepView(step, index + 1, units, sectionsOf(step, makeBox));
    view.element.open = OPEN.includes(step.key);
    form.append(view.element);
    return { step, view };
  });

  const terms = element("datalist", { id: "sweetness-terms" });
  boxes.get(TERM)!.box.input.setAttribute("list", terms.id);
  form.append(terms);

  const choice = (dotted: string) => boxes.get(dotted)!.box.input.value;
  function follow(): void {
    for (const [dotted, { holder }] of boxes) holder.hidden = !isRelevant(dotted, choice);
    terms.replaceChildren(
      ...usualTerms(choice("batch.rules"), choice("batch.language")).map((value) =>
        element("option", { value }),
      ),
    );
  }
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", () => {
    follow();
    changed();
  });

  return {
    element: form,
    given(which = "used") {
      const valueOf = (node: Field | FieldTree, path: readonly string[]): unknown => {
        if (!isField(node)) {
          return Object.fromEntries(
            Object.entries(node).map(([key, child]) => [key, valueOf(child, [...path, key])]),
          );
        }
        const dotted = path.join(".");
        return which === "hidden too" || isRelevant(dotted, choice) ? boxes.get(dotted)!.box.given : null;
      };
      return valueOf(fields, []);
    },
    fill(batch, usual) {
      for (const [dotted, { box }] of boxes) {
        box.fill(valueIn(batch, box.placed.path));
        if (usual) box.isUsual = usual.includes(dotted);
      }
      follow();
    },
    usual: () => [...boxes].flatMap(([dotted, { box }]) => (box.isUsual ? [dotted] : [])),
    change(from, to) {
      for (const { box } of boxes.values()) {
        const { path } = box.placed;
        if (valueIn(from, path) !== valueIn(to, path)) box.fill(valueIn(to, path));
      }
      follow();
    },
    show(planned) {
      const problems = "problems" in planned ? planned.problems : [];
      const at = new Map(problems.map((problem) => [problem.field, problem]));
      for (const [dotted, { box }] of boxes) box.show(at.get(dotted));
      for (const { step, view } of views) {
        const own: readonly string[] = [...step.sections, ...(step.later ?? [])];
        view.mend(problems.filter(({ field }) => own.includes(field.split(".")[0]!)).length);
        if ("plan" in planned) view.show(planned.inputs, planned.plan);
        else view.show(null, null);
      }
      return problems.filter(({ field }) => !boxes.has(field));
    },
    set(dotted, value) {
      const { box } = boxes.get(dotted)!;
      box.fill(value);
      box.input.dispatchEvent(new Event("input", { bubbles: true }));
    },
    focus() {
      views[0]!.view.element.open = true;
      [...boxes.values()][0]!.box.input.focus();
    },
    add: (key, more) => views.find(({ step }) => step.key === key)!.view.element.append(more),
  };
}

const valueIn = (batch: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], batch);

/** A step's sections one below the other; those for later are closed, and headed where there are several. */
function sectionsOf({ sections, later = [] }: Step, makeBox: MakeBox): HTMLElement[] {
  const content = (section: Section) => {
    const table = TABLES[section];
    const placed = placedFields({ [section]: fields[section] });
    return table ? [table(makeBox)] : placed.map((each) => fieldRow(each, makeBox));
  };
  return [
    ...sections.map((section) =>
      element(
        "fieldset",
        {},
        element("legend", { class: sections.length > 1 ? "" : "visually-hidden" }, sectionTitles[section]),
        ...content(section),
      ),
    ),
    ...later.map((section) =>
      element(
        "details",
        { class: "later", id: `section-${section}` },
        element("summary", {}, sectionTitles[section]),
        ...content(section),
      ),
    ),
  ];
}

function fieldRow(placed: PlacedField, makeBox: MakeBox): HTMLElement {
  const { field, dotted } = placed;
  const row = element("div", { class: "field" });
  const noteId = `${dotted}-note`;
  const { input, message, unit, usual } = makeBox(dotted, row, noteId);
  row.append(
    element("label", { for: dotted }, field.label),
    element("div", { class: "entry" }, input, unit),
    usual,
    element("p", { id: noteId, class: "note", hidden: field.note === "" }, field.note),
    message,
  );
  return row;
}

/** The usual words for the rules and the language chosen, driest first. */
function usualTerms(rules: string, language: string): string[] {
  const found = Object.entries(sweetnessRules).find(([ruleSet]) => ruleSet === rules)?.[1];
  return (found?.bands ?? []).flatMap(({ terms }) =>
    Object.entries(terms).flatMap(([code, [usual]]) => (code === language ? [usual] : [])),
  );
}
