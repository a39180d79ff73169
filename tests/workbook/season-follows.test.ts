/**
 * A season follows its plans in every figure: with the inputs of other batches typed into them it shows what a season
 * written for those batches holds. Calculated by a spreadsheet engine.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { seasonBook, type Batch } from "../../src/workbook/book";
import { cellAddress } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { calculatedSheets, differing, typedOver, type Typing } from "../support/calculated-sheets";
import { inputsOf, sampleInputs, sampleJson } from "../support/samples";
import { figuresOf } from "../support/season-faults";
import { cellAt } from "../support/sheet-cells";

const batch = (inputs: ReturnType<typeof inputsOf>): Batch => ({ inputs, plan: planBatch(inputs) });
const BRUT = "oxlip-hill-brut.json";
const ROSE = "oxlip-hill-rose.json";

/** A sample with some fields of some sections changed. */
function sampleWith(file: string, changes: Readonly<Record<string, object>>): Batch {
  const sample = sampleJson(file);
  for (const [section, fields] of Object.entries(changes)) {
    sample[section] = { ...sample[section], ...fields };
  }
  return batch(inputsOf(sample));
}

/** All that its plan asks for, as somebody would type it. */
function typingOf({ inputs, plan }: Batch): Typing {
  const sheet = planSheet(inputs, plan, []);
  return Object.fromEntries(
    sheet.names.flatMap(({ name, row, column }) => {
      const { style, value } = cellAt(sheet, row, column)!;
      return style === "input" ? [[name, value]] : [];
    }),
  );
}

/** What differs between a season of some batches with others typed over them, and one written for the others. */
function followed(written: readonly Batch[], typed: readonly Batch[]): string[] {
  const [before, after] = [written, typed].map((batches) => seasonBook(batches, "portable"));
  const overtyped = [...before!];
  // the season, then a plan, a What-if and a register for each batch
  typed.forEach((each, index) => {
    const at = 1 + index * 3;
    overtyped[at] = typedOver(overtyped[at]!, overtyped[at]!.name, typingOf(each));
  });
  const shown = calculatedSheets(overtyped);
  return after!
    .flatMap((sheet, index) => differing(figuresOf(sheet), shown, before![index]!.name))
    .slice(0, 10);
}

// sizes the other way round, both two months later, so that months and orders are as many
const brut = {
  batch: {
    name: "Oxlip Hill lot 7",
    bottle_mL: 375,
    tirageDate: "2026-06-14",
    currency: "CHF",
    bottlesPerCase: 12,
  },
  baseWine: { volume_hL: 31, alcohol_vol: 10.4 },
  costs: {
    ...{ baseWine_perL: 3.1, labour_perHour: 27, tirage_hours: 21, riddling_hours: 34, disgorging_hours: 55 },
    ...{ finishing_hours: 44, duty_perBottle: 0.3, storage_perBottleMonth: 0.02, interest_pct: 6.5 },
  },
  materials: {
    tirageSugar: { spare_pct: 1, pack: 10, price: 1.3 },
    bottles: { spare_pct: 2, pack: 1000, price: 0.71 },
    corks: { spare_pct: 3, pack: 700, price: 0.3 },
    labels: { spare_pct: 5, pack: 500, price: 0.2 },
    other1: { name: "Dividers", need: 1300, spare_pct: 3, pack: 100, price: 0.11 },
    other2: { name: "Tape", need: 7.5, spare_pct: 0, pack: 2, price: 4 },
  },
  disgorging: { filled_mL: 370, lost_mL: 9 },
  dosage: { stock_L: 90, target_gL: 11, label_vol: 12 },
  actual: { bottlesFinished: 7900, cost: 31_000 },
};
const rose = {
  batch: { name: "Oxlip Hill lot 8", bottle_mL: 750, tirageDate: "2026-07-05", currency: "CHF" },
  tirage: { dose_gL: 21 },
  dosage: { target_gL: 8, term: "", stock_L: null },
  costs: { riddling_hours: null, interest_pct: 3, duty_perL: 0.4 },
  materials: {
    corks: { spare_pct: 2, pack: 1000, price: null },
    other2: { name: "Wax", need: 12, spare_pct: 10, pack: 5, price: 2 },
  },
};

const samples = () => [BRUT, ROSE].map((file) => batch(sampleInputs(file)));
const others = () => [sampleWith(BRUT, brut), sampleWith(ROSE, rose)];

test("other batches typed into the plans, of each other's bottle size and in another currency", () =>
  expect(followed(samples(), others())).toEqual([]));

test("the other way round, so that what was given is blank, and one of them in a currency of its own", () => {
  const [first, second] = samples();
  const inCHF = sampleWith(BRUT, { batch: { currency: "CHF" } });
  expect(first!.inputs.batch.currency).not.toBe("CHF");
  expect(followed(others(), [inCHF, second!])).toEqual([]);
});

test("no number is fixed: what is not an input follows a formula", () => {
  const sheets = seasonBook(others());
  const [season, , firstWhatIf, , , secondWhatIf] = sheets;
  const fixed = [season!, firstWhatIf!, secondWhatIf!].flatMap(({ name, cells }) =>
    cells
      .filter(({ value, formula, style }) => typeof value === "number" && style !== "input" && !formula)
      .map(({ row, column, value }) => `${name} ${cellAddress(row, column)}: ${value}`),
  );
  expect(fixed).toEqual([]);
});
