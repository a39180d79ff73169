/**
 * Results for the label: sweetness terms, alcohol, energy.
 */
import { NO_TERM } from "../../cellar/batch/plan-dosage";
import { builtin, cell, iff, isBlank, mousse, nth, operation } from "../formula";
import type { Row } from "../layout";
import { FORMATS, input, resultCell, resultRow, text, type Batch } from "./rows";

const sugar = cell("plan_sugar_gL");
const added = operation(cell("plan_dosage_mL"), ">", 0);
const rules = input("batch.rules");

export function labelResults({ plan: { dosage } }: Batch): Row[] {
  const term = input("dosage.term");
  const terms = mousse("SWEETNESS.TERMS", sugar, added, rules, input("batch.language"));
  const energy = (unit: string) =>
    mousse("LABEL.ENERGY", cell("plan_finishedAlcohol_vol"), sugar, input("baseWine.acidity_gL"), 0, unit);
  const alternative = (column: number) =>
    resultCell({
      name: `plan_term_${column}`,
      value: dosage.terms[column - 1] ?? "",
      formula: builtin("IFERROR", nth(terms, column), ""),
    });
  return [
    {
      cells: [
        text("Sweetness terms permitted, driest first", "label"),
        resultCell({
          name: "plan_term_1",
          value: dosage.terms[0]!,
          style: "key",
          formula: mousse("SWEETNESS.TERM", sugar, added, rules, input("batch.language")),
        }),
        alternative(2),
        alternative(3),
      ],
    },
    resultRow({
      name: "plan_termVerdict",
      label: "The term wanted is",
      value: dosage.termVerdict ?? NO_TERM,
      formula: iff(isBlank(term), NO_TERM, mousse("SWEETNESS.CHECK", term, sugar, added, rules)),
    }),
    resultRow({
      name: "plan_termMargin_gL",
      label: "… and its nearer bound is away by",
      unit: "g/L",
      format: FORMATS.two,
      value: dosage.termMarginGL ?? NO_TERM,
      formula: iff(isBlank(term), NO_TERM, mousse("SWEETNESS.MARGIN", term, sugar, rules)),
      note: "negative: outside",
    }),
    resultRow({
      name: "plan_label_vol",
      label: "Alcohol on the label",
      unit: "% vol",
      format: FORMATS.one,
      value: dosage.labelVol,
      formula: iff(
        isBlank(input("dosage.label_vol")),
        mousse("LABEL.ALCOHOL", cell("plan_finishedAlcohol_vol")),
        input("dosage.label_vol"),
      ),
      note: "blank above: the nearest half unit",
    }),
    resultRow({
      name: "plan_energy_kJ",
      label: "Energy",
      unit: "kJ/100 mL",
      format: FORMATS.whole,
      value: dosage.energyKj,
      formula: energy("kJ"),
      note: "alcohol, sugar and acids; glycerol not counted",
    }),
    resultRow({
      name: "plan_energy_kcal",
      label: "Energy",
      unit: "kcal/100 mL",
      format: FORMATS.whole,
      value: dosage.energyKcal,
      formula: energy("kcal"),
    }),
  ];
}
