/**
 * The head of the sheet: what the batch is, and the few figures asked for most.
 */
import type { CellValue } from "../data";
import { builtin, cell, iff, operation } from "../formula";
import type { CellSpec, Row } from "../layout";
import { worstOf } from "./checks";
import { FORMATS, currencyUnit, input, resultRow, text, type Section, type Unit, gap } from "./rows";

const INPUTS = "Boxed, lightly filled cells are inputs; everything else is calculated from them.";
export const LIVE_WITH_ADDIN = `${INPUTS} Change an input and the rest follows, where the Mousse add-in is.`;
export const LIVE_ANYWHERE = `${INPUTS} Change an input and the rest follows, in any spreadsheet program.`;

const TITLE = "Batch plan: ";
const UNPRICED = "prices or hours are missing: see Checks";

const withNote = ({ cells, ...row }: Row, note: CellSpec): Row => ({ ...row, cells: [...cells, note] });

export const glanceSection: Section = (batch) => {
  const { inputs, plan } = batch;
  const { tirage, dosage, costs, dates } = plan;
  const figure = (
    label: string,
    unit: Unit,
    name: string,
    value: CellValue,
    format: string,
    note = "",
  ): Row => resultRow({ label, unit, value, format, note, formula: cell(name), style: "key" });
  return [
    {
      cells: [
        {
          value: `${TITLE}${inputs.batch.name}`,
          formula: builtin("CONCATENATE", TITLE, input("batch.name")),
          style: "title",
        },
      ],
    },
    {
      cells: [text(LIVE_WITH_ADDIN, "subtitle")],
    },
    gap,
    resultRow({
      name: "plan_worst",
      label: "Worst check",
      value: plan.worst,
      style: "key",
      judged: true,
      formula: worstOf(),
      note: "fine / look again / stop: see Checks",
    }),
    figure("Sugar to weigh for the tirage", "kg", "plan_tirageSugar_kg", tirage.sugarKg, FORMATS.two),
    figure("Bottles to have ready", "bottles", "plan_bottles", tirage.bottles, FORMATS.whole),
    figure(
      "Excess pressure at cellar temperature",
      "bar",
      "plan_pressure_cellar_bar",
      tirage.pressures.cellar.expected,
      FORMATS.two,
    ),
    figure(
      "Excess pressure on the hottest day, high",
      "bar",
      "plan_pressure_hottest_high_bar",
      tirage.pressures.hottest.high,
      FORMATS.two,
      "one bottle in forty may lie above",
    ),
    figure("Dosage a bottle", "mL", "plan_dosage_mL", dosage.eachMl, FORMATS.two),
    figure("Driest sweetness term permitted", "", "plan_term_1", dosage.terms[0]!, "General"),
    resultRow({
      label: "Planned disgorging",
      value: dates.disgorging,
      format: FORMATS.date,
      style: "key",
      formula: cell("plan_disgorging"),
    }),
    withNote(
      figure(
        "Cost of a saleable bottle",
        currencyUnit(batch),
        "plan_perBottle",
        costs.perBottle,
        FORMATS.two,
      ),
      {
        value: costs.unpriced > 0 ? UNPRICED : "",
        style: "note",
        formula: builtin("IFERROR", iff(operation(cell("plan_unpriced"), ">", 0), UNPRICED, ""), ""),
      },
    ),
  ];
};
