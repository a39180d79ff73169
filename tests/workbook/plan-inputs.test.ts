/**
 * Every input of a batch has its cell in the plan: what was given stands in it, its label, unit and note beside it, and
 * the rule that refuses what the field does.
 */
import { serialFromIso } from "../../src/cellar/ageing";
import { placedFields, type PlacedField } from "../../src/cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../../src/cellar/batch/fields";
import { planSheet } from "../../src/workbook/plan/sheet";
import { situations } from "../support/situations";
import { cellAt, placeNamed, ruleNamed } from "../support/sheet-cells";

const batches = situations();
const ALL = placedFields(fields);
const sheets = batches.map(({ inputs, plan }) => planSheet(inputs, plan, []));
const sheet = sheets[0]!;
const at = (row: number, column: number, of = sheet) => cellAt(of, row, column);
const placeOf = ({ name }: PlacedField, of = sheet) => placeNamed(of, name)!;

/** Of what, in the currency of the worked batch. */
const MONEY: Readonly<Record<string, string>> = {
  "costs.baseWine_perL": "EUR a litre",
  "costs.labour_perHour": "EUR an hour",
  "costs.duty_perBottle": "EUR a bottle",
  "costs.duty_perL": "EUR a litre",
  "costs.storage_perBottleMonth": "EUR a bottle, month",
};

const given = (inputs: BatchInputs, { path, field }: PlacedField) => {
  const value = path.reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], inputs);
  if (value === "") return null;
  return field.kind === "date" ? serialFromIso(String(value)) : value;
};

test("each batch's inputs stand in their cells, as values", () => {
  batches.forEach(({ inputs }, index) => {
    for (const placed of ALL) {
      const { row, column } = placeOf(placed, sheets[index]);
      const cell = at(row, column, sheets[index])!;
      expect([placed.dotted, cell.value]).toEqual([placed.dotted, given(inputs, placed)]);
      expect([placed.dotted, cell.style, cell.formula]).toEqual([placed.dotted, "input", undefined]);
    }
  });
});

test("days look like days, counts like counts, and what would run over its cell is shown to four decimals", () => {
  const formatOf = (dotted: string, of = sheet) => {
    const { row, column } = placeOf(
      ALL.find((each) => each.dotted === dotted)!,
      of,
    );
    return at(row, column, of)!.format;
  };
  expect(formatOf("batch.tirageDate")).toBe("yyyy-mm-dd");
  expect(formatOf("riddling.places")).toBe("#,##0");
  expect(["batch.name", "batch.rules", "baseWine.volume_hL"].map((dotted) => formatOf(dotted))).toEqual([
    ...[undefined, undefined, undefined],
  ]);
  const { inputs, plan } = batches[0]!;
  const volume = (volume_hL: number) => {
    const other = { ...inputs, baseWine: { ...inputs.baseWine, volume_hL } };
    return formatOf("baseWine.volume_hL", planSheet(other, plan, []));
  };
  expect([10 / 3, 1234.5678, 123.4567].map(volume)).toEqual(["0.0000", "0.0000", undefined]);
});

test("each has its own cell and a rule", () => {
  const places = ALL.map((placed) => placeOf(placed)).map(({ row, column }) => `${row} ${column}`);
  expect(new Set(places).size).toBe(ALL.length);
  for (const placed of ALL) {
    expect([placed.dotted, ruleNamed(sheet, placed.name)?.title]).toEqual([
      placed.dotted,
      placed.field.label,
    ]);
  }
});

describe("in the second column", () => {
  const listed = ALL.filter((placed) => placeOf(placed).column === 1);
  const beside = (placed: PlacedField) =>
    [0, 2, 3].map((column) => at(placeOf(placed).row, column)?.value ?? undefined);
  const LONG_LIST = 5;

  test("label and unit stand beside", () => {
    const labelled = listed.filter((placed) => beside(placed)[0] === placed.field.label);
    // a reading's line has its number, other materials the name that is typed, an actual figure the planned one's label
    expect(listed.filter((placed) => !labelled.includes(placed)).map(({ dotted }) => dotted)).toEqual([
      ...[1, 2, 3, 4, 5, 6].map((number) => `readings.r${number}.date`),
      ...["materials.other1.need", "materials.other2.need", "actual.pressure_bar"],
    ]);
    expect(labelled.length).toBeGreaterThan(60);
    for (const { field, ...placed } of labelled) {
      const [, unit] = beside({ field, ...placed });
      const own = "unit" in field ? field.unit : "";
      if (!(placed.dotted in MONEY)) expect([placed.dotted, unit]).toEqual([placed.dotted, own]);
    }
  });

  test("what a field notes is said; so are the options of a short list", () => {
    const noted = listed.filter(({ field }) => field.note !== "");
    expect(noted.length).toBeGreaterThan(10);
    for (const placed of noted)
      expect([placed.dotted, beside(placed)[2]]).toEqual([placed.dotted, placed.field.note]);
    const choices = listed.filter(({ field }) => field.kind === "choice" && field.note === "");
    for (const placed of choices) {
      const options = "options" in placed.field ? placed.field.options : [];
      const wanted = options.length <= LONG_LIST ? `one of: ${options.join(", ")}` : undefined;
      expect([placed.dotted, beside(placed)[2]]).toEqual([placed.dotted, wanted]);
    }
    expect(choices.some(({ field }) => "options" in field && field.options.length <= LONG_LIST)).toBe(true);
  });
});

test.each(Object.entries(MONEY))("%s is in the currency of the plan: %s", (dotted, unit) => {
  const cell = at(placeOf(ALL.find((each) => each.dotted === dotted)!).row, 2)!;
  expect([cell.value, cell.formula !== undefined]).toEqual([unit, true]);
});
