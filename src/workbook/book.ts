/**
 * The sheets that are written together: those of a batch, or a season with all its batches.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import type { SheetData } from "./data";
import { linkedPlan, type LinkedPlan, type Place } from "./linked-plan";
import { listsOn, notesSheet } from "./notes/sheet";
import { planSheet } from "./plan/sheet";
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

export interface BatchBook {
  /** In the order in which they are shown. */
  readonly sheets: readonly SheetData[];
  readonly plans: readonly LinkedPlan[];
}

/** Plan, What-if and Register of each batch, and Notes if there are none yet. */
export function batchBook(
  batches: readonly Batch[],
  taken: readonly string[],
  known?: KnownNotes,
): BatchBook {
  const names = [...taken];
  const added = (sheet: SheetData) => {
    names.push(sheet.name);
    return sheet;
  };
  const notes = known ? undefined : added(notesSheet(names));
  const lists = known
    ? listsOn(known.sheet, known.places)
    : listsOn(notes!.name, new Map(notes!.names.map((each) => [each.name, each])));
  const written = batches.map(({ inputs, plan }) => {
    const sheet = added(planSheet(inputs, plan, names, { listOf: lists }));
    const linked = linkedPlan(inputs, plan, sheet);
    return {
      linked,
      sheets: [sheet, added(whatIfSheet(linked, names)), added(registerSheet(linked, names))],
    };
  });
  return {
    sheets: [...written.flatMap(({ sheets }) => sheets), ...(notes ? [notes] : [])],
    plans: written.map(({ linked }) => linked),
  };
}

/** A whole season in a new workbook. */
export function seasonBook(batches: readonly Batch[], taken: readonly string[] = []): readonly SheetData[] {
  const { sheets, plans } = batchBook(batches, [...taken, "Season"]);
  return [seasonSheet(plans, [...taken, ...sheets.map(({ name }) => name)]), ...sheets];
}
