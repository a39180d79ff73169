/**
 * The sheets that are written together: those of a batch, or a season with all its batches.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import type { SheetData } from "./data";
import { frozen } from "./frozen";
import { linkedPlan, type LinkedPlan, type Place } from "./linked-plan";
import { listsOn, notesSheet } from "./notes/sheet";
import type { Rendering } from "./layout";
import { planSheet } from "./plan/sheet";
import { portable } from "./portable/render";
import { registerSheet } from "./register/sheet";
import { seasonSheet } from "./season/sheet";
import { whatIfSheet } from "./whatif/sheet";

/** A Notes sheet that the workbook has already. */
export interface KnownNotes {
  readonly sheet: string;
  readonly places: ReadonlyMap<string, Place>;
}

export interface Batch {
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
}

/** With our functions, worked out so that any spreadsheet program calculates them, or as values. */
export type Formulas = "add-in" | "portable" | "values";

export interface BookOptions {
  readonly known?: KnownNotes;
  readonly formulas?: Formulas;
}

export interface BatchBook {
  /** In the order in which they are shown. */
  readonly sheets: readonly SheetData[];
  readonly plans: readonly LinkedPlan[];
}

/** Plan, What-if and Register of each batch, and Notes if there are none yet. */
export function batchBook(
  batches: readonly Batch[],
  taken: readonly string[],
  { known, formulas = "add-in" }: BookOptions = {},
): BatchBook {
  const names = [...taken];
  const added = (sheet: SheetData) => {
    names.push(sheet.name);
    return sheet;
  };
  const notes = known ? undefined : added(notesSheet(names));
  const there = known ?? notesAt(notes!);
  const rendering = renderingOf(formulas, there);
  const listOf = listsOn(there.sheet, there.places);
  const written = batches.map(({ inputs, plan }) => {
    const sheet = added(planSheet(inputs, plan, names, { listOf, ...rendering }));
    const linked = linkedPlan(inputs, plan, sheet);
    return {
      linked,
      sheets: [
        sheet,
        added(whatIfSheet(linked, names, rendering.rendering)),
        added(registerSheet(linked, names, rendering.rendering)),
      ],
    };
  });
  const sheets = [...written.flatMap(({ sheets }) => sheets), ...(notes ? [notes] : [])];
  return {
    sheets: formulas === "values" ? frozen(sheets) : sheets,
    plans: written.map(({ linked }) => linked),
  };
}

/** A whole season in a new workbook. */
export function seasonBook(batches: readonly Batch[], formulas: Formulas = "add-in"): readonly SheetData[] {
  const { sheets, plans } = batchBook(batches, ["Season"], { formulas });
  const notes = notesAt(sheets.at(-1)!);
  const { rendering } = renderingOf(formulas, notes);
  const season = seasonSheet(
    plans,
    sheets.map(({ name }) => name),
    rendering,
  );
  return [...(formulas === "values" ? frozen([season]) : [season]), ...sheets];
}

/** A season of plans that are in a workbook already. */
export function seasonOf(
  plans: readonly LinkedPlan[],
  taken: readonly string[],
  known: KnownNotes | undefined,
  formulas: Formulas,
): SheetData {
  if (formulas === "portable" && !known)
    throw new Error("The Notes sheet, which its formulas read, is gone.");
  const sheet = seasonSheet(plans, taken, known && renderingOf(formulas, known).rendering);
  return formulas === "values" ? frozen([sheet])[0]! : sheet;
}

const notesAt = ({ name, names }: SheetData): KnownNotes => ({
  sheet: name,
  places: new Map(names.map((each) => [each.name, each])),
});

const renderingOf = (formulas: Formulas, notes: KnownNotes): { readonly rendering?: Rendering } =>
  formulas === "portable" ? { rendering: portable(notes) } : {};
