/**
 * The sheet Register · batch: the lines an inspector asks for, planned ones filled in, actual ones to fill.
 */
import { date, optional, text as textField } from "../../cellar/batch/field-kinds";
import {
  REGISTER_KEYS,
  registerLines,
  type RegisterKey,
  type RegisterLine,
} from "../../cellar/batch/register";
import { domains } from "../../cellar/domains";
import type { SheetData } from "../data";
import { builtin, cell, iff, isBlank, isNumber, minus } from "../formula";
import { layOut, type CellSpec, type Row, type Rendering } from "../layout";
import { addressIn, type LinkedPlan } from "../linked-plan";
import { FORMATS, columnHeads, input, resultCell, text } from "../plan/rows";
import { freeSheetName } from "../sheet-names";
import { registerRules } from "./lines";

const COLUMN_WIDTHS = [12, 30, 27, 14, 11, 11, 8, 12, 12, 12, 12, 12, 12, 36] as const;
const PAGE = { frozenRows: 5, pagesTall: 1, landscape: true };
const TITLE = "Register: ";

const dayField = date("Day it was done", { blank: "" });
const amountField = optional("Quantity as it was", domains.quantity);
const noteField = textField("Note", { maxLength: 200, blank: "" });
const blankInput = (name: string, field: CellSpec["field"], format: string): CellSpec => ({
  value: null,
  style: "input",
  name,
  format,
  ...(field && { field }),
});

const UNIT_FORMATS = { hL: FORMATS.two, L: FORMATS.two, kg: FORMATS.two, bottles: FORMATS.whole } as const;

export function registerSheet(
  linked: LinkedPlan,
  takenNames: readonly string[],
  rendering?: Rendering,
): SheetData {
  const { inputs, plan } = linked;
  const lines = registerLines(inputs, plan);
  const rows: Row[] = [
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
      cells: [
        text(
          `Planned lines follow the sheet “${linked.sheet}”; fill in the boxed cells as the work is done. The forms your authority asks for decide.`,
          "subtitle",
        ),
      ],
    },
    {
      cells: [
        text(
          "Yeast and aids are counted as no volume. What the plan's own section Planned and actual holds is read from there.",
          "note",
        ),
      ],
    },
    { cells: [] },
    headRow(inputs.batch.bottle_mL),
    ...REGISTER_KEYS.map((key, index) => registerRow(key, REGISTER_KEYS[index - 1], lines, linked)),
  ];
  return layOut({
    name: freeSheetName("Register", inputs.batch.name, takenNames),
    rows,
    columnWidths: COLUMN_WIDTHS,
    page: PAGE,
    ...(rendering && { rendering }),
    elsewhere: (name) => addressIn(linked, name),
  });
}

/** The size of the bottles stands in the head of their column. */
function headRow(bottleMl: number): Row {
  const { cells } = columnHeads(
    "Planned",
    "Operation",
    "Product",
    "Lot",
    ">In",
    ">Out",
    "~Unit",
    ">hL before",
    ">hL after",
    "",
    ">Done on",
    ">Actual",
    ">Difference",
    "Note",
  );
  const bottles: CellSpec = {
    value: `Bottles of ${bottleMl} mL`,
    formula: builtin("CONCATENATE", "Bottles of ", input("batch.bottle_mL"), " mL"),
    style: "numberHead",
  };
  return { cells: cells.map((each, column) => (column === 9 ? bottles : each)), lines: 2 };
}

function registerRow(
  key: RegisterKey,
  before: RegisterKey | undefined,
  lines: Readonly<Record<RegisterKey, RegisterLine>>,
  { inputs }: LinkedPlan,
): Row {
  const line = lines[key];
  const rules = registerRules[key];
  const format = UNIT_FORMATS[rules.unit];
  const name = (which: string, of: RegisterKey = key) => `register_${of}_${which}`;
  const amount = resultCell({
    name: name(rules.way),
    value: line[rules.way],
    formula: rules.amount,
    format,
  });
  const lot = inputs.batch.lot;
  const known = knownActual(rules.actual, inputs);
  const actualName = name("actual");
  return {
    cells: [
      resultCell({
        name: name("planned"),
        value: line.date,
        formula: rules.date,
        format: FORMATS.date,
        style: "unit",
      }),
      text(rules.operation, "label"),
      text(rules.product, "label"),
      {
        value: lot,
        // read from the plan once, then from the line above
        formula: before
          ? cell(name("lot", before))
          : iff(isBlank(input("batch.lot")), "", input("batch.lot")),
        style: "label",
        key: name("lot"),
      },
      rules.way === "in" ? amount : undefined,
      rules.way === "out" ? amount : undefined,
      text(rules.unit, "unit"),
      resultCell({
        name: name("before_hL"),
        value: before ? lines[before].volumeHl : 0,
        formula: before ? cell(name("after_hL", before)) : { kind: "literal", value: 0 },
        format: FORMATS.two,
      }),
      resultCell({
        name: name("after_hL"),
        value: line.volumeHl,
        formula: rules.volumeHl,
        format: FORMATS.two,
      }),
      rules.bottles &&
        resultCell({
          name: name("bottles"),
          value: line.bottles,
          formula: rules.bottles,
          format: FORMATS.whole,
        }),
      blankInput(name("done"), dayField, FORMATS.date),
      rules.actual === undefined
        ? blankInput(actualName, amountField, format)
        : resultCell({
            name: actualName,
            value: known,
            formula: iff(isBlank(cell(rules.actual)), "", cell(rules.actual)),
            format,
          }),
      resultCell({
        name: name("difference"),
        value: typeof known === "number" ? known - Number(line[rules.way]) : "",
        formula: iff(isNumber(cell(actualName)), minus(cell(actualName), cell(name(rules.way))), ""),
        format,
      }),
      { ...blankInput(name("note"), noteField, "General"), value: rules.note ?? null },
    ],
  };
}

/** What the plan already holds of it; "" where nothing. */
function knownActual(name: string | undefined, { actual }: LinkedPlan["inputs"]): number | "" {
  if (name === undefined) return "";
  const key = name.slice("actual_".length) as keyof typeof actual;
  return actual[key] ?? "";
}
