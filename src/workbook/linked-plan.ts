/**
 * A plan that other sheets read from: where its named cells are. Other sheets ask for them by the same names, and the
 * formula gets the address on the plan's sheet.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { cellAddress, quotedSheet, type SheetData } from "./data";

export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface LinkedPlan {
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
  readonly sheet: string;
  readonly places: ReadonlyMap<string, Place>;
}

export function linkedPlan(inputs: BatchInputs, plan: BatchPlan, { name, names }: SheetData): LinkedPlan {
  return { inputs, plan, sheet: name, places: new Map(names.map((each) => [each.name, each])) };
}

/** "'Plan · Brut'!B12", or nothing where the plan has no cell of that name. */
export function addressIn({ sheet, places }: LinkedPlan, name: string): string | undefined {
  const place = places.get(name);
  return place && `${quotedSheet(sheet)}!${cellAddress(place.row, place.column)}`;
}
