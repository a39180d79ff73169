/**
 * The form: one box for each field of the field table, in the order of the work.
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
import { readingTable } from "./reading-table";
import { isRelevant } from "./relevance";

type Section = keyof typeof fields;

export interface Form {
  readonly element: HTMLFormElement;
  /** What stands in the boxes, as a batch file would hold it; `hidden` too gives what is kept but not used. */
  given(which?: "used" | "hidden too"): unknown;
  fill(batch: unknown): void;
  /** Shows each problem at its box; answers with those that have none. */
  show(problems: readonly Problem[]): readonly Problem[];
}

/** Sections that are open at first: those that a first plan cannot do without. */
const OPEN: readonly Section[] = ["batch", "baseWine", "tirage"];
/** Sections whose fields are the same line after line. */
const TABLES: Partial<Record<Section, (makeBox: MakeBox) => HTMLElement>> = {
  materials: materialTable,
  readings: readingTable,
};
const TERM = "dosage.term";

export function batchForm(changed: () => void): Form {
  const placedByDotted = new Map(placedFields(fields).map((each) => [each.dotted, each]));
  const boxes = new Map<string, { readonly box: Box; readonly holder: HTMLElement }>();
  const makeBox: MakeBox = (dotted, holder, describedBy) => {
    const box = new Box(placedByDotted.get(dotted)!, describedBy);
    boxes.set(dotted, { box, holder });
    return box;
  };

  const form = element("form", { class: "batch", novalidate: true, "aria-label": "Batch" });
  const counts = new Map<string, HTMLElement>();
  for (const section of Object.keys(fields) as Section[]) {
    const count = element("span", { class: "count" });
    const placed = placedFields({ [section]: fields[section] });
    const table = TABLES[section];
    const content = table ? [table(makeBox)] : placed.map((each) => fieldRow(each, makeBox));
    const summary = element("summary", {}, element("span", {}, sectionTitles[section]), count);
    form.append(element("details", { open: OPEN.includes(section) }, summary, ...content));
    counts.set(section, count);
  }

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
    fill(batch) {
      for (const { box } of boxes.values()) {
        box.fill(
          box.placed.path.reduce<unknown>(
            (node, key) => (node as Record<string, unknown> | undefined)?.[key],
            batch,
          ),
        );
      }
      follow();
    },
    show(problems) {
      const at = new Map(problems.map((problem) => [problem.field, problem]));
      for (const [dotted, { box }] of boxes) box.show(at.get(dotted));
      for (const [section, count] of counts) {
        const found = problems.filter(({ field }) => field.split(".")[0] === section).length;
        count.textContent = found === 0 ? "" : `${found} to mend`;
      }
      return problems.filter(({ field }) => !boxes.has(field));
    },
  };
}

function fieldRow(placed: PlacedField, makeBox: MakeBox): HTMLElement {
  const { field, dotted } = placed;
  const row = element("div", { class: "field" });
  const noteId = `${dotted}-note`;
  const { input, message } = makeBox(dotted, row, noteId);
  const unit = field.kind === "number" || field.kind === "optional" ? field.unit : "";
  row.append(
    element("label", { for: dotted }, field.label),
    element("div", { class: "entry" }, input, element("span", { class: "unit" }, unit)),
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
