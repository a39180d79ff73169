/**
 * "Explain this cell": for any call of any function the working in order, or why there is none.
 */
import { isRefusal, Refusal } from "../cellar/refusal";
import { ageing } from "./ageing";
import { callText, NAMESPACE } from "./call";
import { cost } from "./cost";
import { disgorging } from "./disgorging";
import { dosage } from "./dosage";
import { bench } from "./dosage-bench";
import { label } from "./label";
import { Notebook, type Explainer } from "./notebook";
import { pressure } from "./pressure";
import { classes } from "./pressure-class";
import { refused, unknownFunction } from "./refused";
import { riddling } from "./riddling";
import { sugar } from "./sugar";
import { sweetness } from "./sweetness";
import { tirage } from "./tirage";
import { tiragePressure } from "./tirage-pressure";
import { tirageReadings } from "./tirage-readings";
import type { Explanation } from "./types";

export const explainers: ReadonlyMap<string, Explainer> = new Map<string, Explainer>(
  [
    tirage,
    tiragePressure,
    tirageReadings,
    pressure,
    classes,
    ageing,
    riddling,
    disgorging,
    dosage,
    bench,
    sweetness,
    sugar,
    label,
    cost,
  ].flatMap((family) => Object.entries(family)),
);

/** The id as it is listed: "=mousse.tirage.sugar" is TIRAGE.SUGAR. */
function plainId(id: string): string {
  const upper = id.trim().replace(/^=/u, "").toUpperCase();
  return upper.startsWith(NAMESPACE) ? upper.slice(NAMESPACE.length) : upper;
}

/** The working of a call, or its refusal in the cell's own words. Throws for nothing that a cell can hold. */
export function explain(id: string, args: readonly unknown[]): Explanation {
  const known = plainId(id);
  const call = callText(known, args);
  const explainer = explainers.get(known);
  if (explainer === undefined) return unknownFunction(call, known, [...explainers.keys()]);
  const on = new Notebook(explainer.parameters, args);
  try {
    const { result, unit, sources, cautions = [] } = explainer.work(on);
    if (typeof result === "number" && !Number.isFinite(result)) {
      const remedy = "give less extreme arguments";
      throw new Refusal({ kind: "unanswerable", argument: "the result", given: result, remedy });
    }
    return {
      kind: "working",
      call,
      steps: on.steps,
      constants: on.constants,
      result,
      unit,
      sources,
      ...(cautions.length > 0 ? { caution: cautions.join(" ") } : {}),
    };
  } catch (refusal) {
    if (isRefusal(refusal)) return refused(call, refusal);
    throw refusal;
  }
}
