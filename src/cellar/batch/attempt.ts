/**
 * Refusals inside a plan.
 */
import { Refusal } from "../refusal";
import type { Problem } from "./problem";

/** A batch that cannot be planned, with the fields to mend. */
export class UnplannableBatch extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ field, remedy }) => `${field}: ${remedy}`).join("; "));
    this.name = "UnplannableBatch";
  }
}

/** A figure that the plan cannot do without: its refusal is shown at the field that causes it. */
export function required<T>(field: string, given: unknown, figure: () => T): T {
  try {
    return figure();
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    throw new UnplannableBatch([{ field, given, remedy: refusal.remedy }]);
  }
}

/** A figure that a check can stop over: null where there is no answer, as the sheet's cell shows an error. */
export function orNull<T>(figure: () => T): T | null {
  try {
    return figure();
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return null;
  }
}
