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
import { materialKeys, materials, OTHER_KEYS } from "../cellar/batch/materials";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { element } from "./dom";
import { isRelevant } from "./relevance";
import { shownNumber, typedNumber } from "./typed-numbers";

type Box = HTMLInputElement | HTMLSelectElement;
type Section = keyof typeof fields;

export interface Form {
  readonly element: HTMLFormElement;
  /** What stands in the boxes, as a batch file would hold it. */
  given(): unknown;
  fill(batch: unknown): void;
  /** Shows each problem at its box; answers with those that have none. */
  show(problems: readonly Problem[]): readonly Problem[];
}

interface Entry {
  readonly box: Box;
  readonly placed: PlacedField;
  readonly row: HTMLElement;
  readonly message: HTMLElement;
  /** The number that was put into the box, and how it is shown there. */
  filled?: { readonly shown: string; readonly exact: number } | undefined;
}

/** Sections that are open at first: those that a first plan cannot do without. */
const OPEN: readonly Section[] = ["batch", "baseWine", "tirage"];

export function batchForm(changed: () => void): Form {
  const boxes = new Map<string, Entry>();
  const sections = new Map<string, HTMLDetailsElement>();

  function boxFor(placed: PlacedField, describedBy: string): Box {
    const { field, dotted } = placed;
    const common = { id: dotted, name: dotted, "aria-describedby": describedBy };
    if (field.kind === "choice") {
      return element(
        "select",
        common,
        ...field.options.map((option) => element("option", { value: option }, option)),
      );
    }
    const numeric = field.kind === "number" || field.kind === "optional";
    return element("input", {
      ...common,
      type: field.kind === "date" ? "date" : "text",
      autocomplete: "off",
      ...(numeric && { inputmode: "decimal" }),
      ...(field.kind === "text" && { maxlength: String(field.maxLength) }),
    });
  }

  function register(placed: PlacedField, box: Box, row: HTMLElement, message: HTMLElement): void {
    boxes.set(placed.dotted, { box, placed, row, message });
  }

  function fieldRow(placed: PlacedField): HTMLElement {
    const { field, dotted } = placed;
    const message = element("p", { id: `${dotted}-message`, class: "problem", hidden: true });
    const box = boxFor(placed, `${dotted}-note ${dotted}-message`);
    const row = element(
      "div",
      { class: "field" },
      element("label", { for: dotted }, field.label),
      element("div", { class: "entry" }, box, element("span", { class: "unit" }, unitOf(field))),
      element("p", { id: `${dotted}-note`, class: "note", hidden: field.note === "" }, field.note),
      message,
    );
    register(placed, box, row, message);
    return row;
  }

  /** Materials share three columns, so they stand in a table. */
  function materialTable(): HTMLElement {
    const heads = ["Item", "Spare, %", "Pack size", "Price for 1"].map((head) =>
      element("th", { scope: "col" }, head),
    );
    const body = element("tbody");
    const cellFor = (dotted: string, label: string) => {
      const placed = placedByDotted.get(dotted)!;
      const message = element("p", { id: `${dotted}-message`, class: "problem", hidden: true });
      const box = boxFor(placed, `${dotted}-message`);
      box.setAttribute("aria-label", label);
      const cell = element("td", {}, box, message);
      register(placed, box, cell, message);
      return cell;
    };
    const columns = (key: string, item: string) =>
      (["spare_pct", "pack", "price"] as const).map((which) => {
        const dotted = `materials.${key}.${which}`;
        return cellFor(dotted, `${item}: ${placedByDotted.get(dotted)!.field.label.toLowerCase()}`);
      });
    for (const key of materialKeys) {
      const { label, unit } = materials[key];
      body.append(
        element(
          "tr",
          {},
          element("th", { scope: "row" }, label, element("span", { class: "unit" }, ` ${unit}`)),
          ...columns(key, label),
        ),
      );
    }
    for (const [index, key] of OTHER_KEYS.entries()) {
      const item = `Other ${index + 1}`;
      const name = cellFor(`materials.${key}.name`, `${item}: name`);
      const need = cellFor(`materials.${key}.need`, `${item}: quantity`);
      name.querySelector("input")!.placeholder = "Other: name";
      need.querySelector("input")!.placeholder = "quantity";
      body.append(
        element(
          "tr",
          {},
          element(
            "th",
            { scope: "row" },
            element("div", { class: "other" }, ...name.childNodes, ...need.childNodes),
          ),
          ...columns(key, item),
        ),
      );
    }
    return element("table", { class: "materials" }, element("thead", {}, element("tr", {}, ...heads)), body);
  }

  const placedByDotted = new Map(placedFields(fields).map((each) => [each.dotted, each]));
  const form = element("form", { class: "batch", novalidate: true, "aria-label": "Batch" });
  for (const section of Object.keys(fields) as Section[]) {
    const content =
      section === "materials"
        ? [materialTable()]
        : placedFields({ [section]: fields[section] }).map(fieldRow);
    const details = element(
      "details",
      { open: OPEN.includes(section) },
      element(
        "summary",
        {},
        element("span", {}, sectionTitles[section]),
        element("span", { class: "count" }),
      ),
      ...content,
    );
    sections.set(section, details);
    form.append(details);
  }

  const choice = (dotted: string) => boxes.get(dotted)!.box.value;
  const relevant = (dotted: string) => isRelevant(dotted, choice);
  function hideIrrelevant(): void {
    for (const [dotted, { row }] of boxes) row.hidden = !relevant(dotted);
  }

  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", () => {
    hideIrrelevant();
    changed();
  });

  return {
    element: form,
    given() {
      const valueOf = (node: Field | FieldTree, path: readonly string[]): unknown => {
        if (!isField(node))
          return Object.fromEntries(
            Object.entries(node).map(([key, child]) => [key, valueOf(child, [...path, key])]),
          );
        const dotted = path.join(".");
        const { box, filled } = boxes.get(dotted)!;
        const typed = box.value;
        if (!relevant(dotted)) return null;
        // a long number is shown short, but counts in full until it is typed over
        if (filled && filled.shown === typed) return filled.exact;
        return node.kind === "number" || node.kind === "optional" ? typedNumber(typed) : typed;
      };
      return valueOf(fields, []);
    },
    fill(batch) {
      for (const entry of boxes.values()) {
        const { box, placed } = entry;
        const given = placed.path.reduce<unknown>(
          (node, key) => (node as Record<string, unknown> | undefined)?.[key],
          batch,
        );
        box.value = shown(placed.field, given);
        const exact = given ?? ("blank" in placed.field ? placed.field.blank : undefined);
        entry.filled = typeof exact === "number" ? { shown: box.value, exact } : undefined;
      }
      hideIrrelevant();
    },
    show(problems) {
      const counts = new Map<string, number>();
      for (const { box, message } of boxes.values()) {
        box.removeAttribute("aria-invalid");
        message.hidden = true;
      }
      const elsewhere: Problem[] = [];
      for (const problem of problems) {
        const place = boxes.get(problem.field);
        if (!place) {
          elsewhere.push(problem);
          continue;
        }
        place.box.setAttribute("aria-invalid", "true");
        place.message.textContent = problemSentence({ ...problem, field: place.placed.field.label });
        place.message.hidden = false;
        const section = place.placed.path[0]!;
        counts.set(section, (counts.get(section) ?? 0) + 1);
      }
      for (const [section, details] of sections) {
        const count = counts.get(section) ?? 0;
        details.querySelector(".count")!.textContent = count === 0 ? "" : `${count} to mend`;
      }
      return elsewhere;
    },
  };
}

const unitOf = (field: Field) => (field.kind === "number" || field.kind === "optional" ? field.unit : "");

/** What a box shows of a value; where a batch gives none, what a blank means. */
function shown(field: Field, given: unknown): string {
  const value = given ?? ("blank" in field ? field.blank : undefined) ?? "";
  if (typeof value === "number") return shownNumber(value);
  return typeof value === "string" ? value : JSON.stringify(value);
}
