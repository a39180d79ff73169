/**
 * What a bench row says, in words. Its numbers are all of the calculation module.
 */
import { placedFields } from "../../cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../../cellar/batch/fields";
import { problemSentence, type Problem } from "../../cellar/batch/problem";
import type { BenchRow } from "../../cellar/batch/what-if";
import { shownResult } from "../typed-numbers";

export interface Fact {
  readonly label: string;
  readonly value: string;
  /** What stands in the way of this choice. */
  readonly isHindrance?: boolean;
}

const labels = new Map(placedFields(fields).map(({ dotted, field }) => [dotted, field.label]));

/** The form's own names in place of those of a batch file. */
export const refusalInWords = (problem: Problem) =>
  problemSentence({ ...problem, field: labels.get(problem.field) ?? problem.field });

/** Syringes are read to a hundredth. */
export const glassText = ({ glassMl }: BenchRow) => `${shownResult(glassMl, 2)} mL`;
export const termsText = ({ dosage }: BenchRow) => dosage.terms.join(", ");

export function factsOf(inputs: BatchInputs, row: BenchRow): Fact[] {
  const { dosage } = row;
  const { stock_L } = inputs.dosage;
  return [
    { label: "Liqueur a bottle", value: `${shownResult(dosage.eachMl, 2)} mL` },
    { label: "Sugar as analysed", value: `${shownResult(dosage.sugarGL, 2)} g/L` },
    { label: "Terms permitted", value: termsText(row) },
    { label: "Alcohol after dosage", value: `${shownResult(dosage.alcoholVol, 2)} % vol` },
    { label: "Room in the neck", ...roomFact(row) },
    { label: "Liqueur for the batch", value: `${shownResult(dosage.batchL, 1)} L` },
    ...(stock_L === null ? [] : [{ label: "Stock of the liqueur", ...stockFact(stock_L, row) }]),
  ];
}

function roomFact({ spareMl }: BenchRow): Omit<Fact, "label"> {
  if (spareMl === null)
    return { value: "None: more wine is left in the bottle than is wanted.", isHindrance: true };
  return spareMl >= 0
    ? { value: `Fits; ${shownResult(spareMl, 2)} mL to fill up` }
    : { value: `Does not fit: ${shownResult(-spareMl, 2)} mL too much.`, isHindrance: true };
}

function stockFact(stockL: number, { stockLeftL, dosage }: BenchRow): Omit<Fact, "label"> {
  const left = stockLeftL ?? 0;
  if (left >= 0) return { value: `${shownResult(left, 1)} L left of ${shownResult(stockL, 1)} L` };
  const bottles = shownResult(dosage.bottlesFinished, 0);
  const short = shownResult(-left, 1);
  const isReserveOnly = dosage.stockBottles !== null && dosage.stockBottles >= dosage.bottlesFinished;
  return {
    value: isReserveOnly
      ? `${short} L short of the reserve, though enough for all ${bottles} bottles.`
      : `${short} L short: enough for ${shownResult(dosage.stockBottles ?? 0, 0)} of ${bottles} bottles.`,
    isHindrance: true,
  };
}
