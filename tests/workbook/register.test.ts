/**
 * The sheet Register: every line's figures where they are looked for, its formulas for other batches and for what is
 * typed in, and the cells that are to be filled in.
 */
import {
  REGISTER_KEYS,
  registerLines,
  type RegisterKey,
  type RegisterLine,
} from "../../src/cellar/batch/register";
import { batchBook, type Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { calculatedSheets, differing, shownAs, typedOver, type Typing } from "../support/calculated-sheets";
import { situations } from "../support/situations";
import { cellAt, cellNamed, ruleNamed } from "../support/sheet-cells";

/** What each line is counted in. */
const UNITS: Readonly<Record<RegisterKey, string>> = {
  ...{ baseWine: "hL", starter: "L", tirageSugar: "kg", tirageLiqueurWine: "L", tirageLiqueur: "L" },
  ...{ yeast: "kg", nutrient: "kg", riddlingAid: "kg", fillingLoss: "hL", filling: "hL" },
  ...{ breakage: "bottles", disgorging: "bottles", disgorgingLoss: "L", dosageSugar: "kg", dosageWine: "L" },
  ...{ dosageLiqueur: "L", dosageLeft: "L", topUp: "L", finished: "bottles", release: "bottles" },
};
/** Lines whose actual figure the plan has a cell for. */
const IN_PLAN = {
  tirageSugar: "tirageSugar_kg",
  breakage: "bottlesBroken",
  disgorging: "bottlesDisgorged",
  finished: "bottlesFinished",
} as const;
const isInPlan = (key: RegisterKey): key is keyof typeof IN_PLAN => key in IN_PLAN;

const FIRST_LINE = 5;
/** As this engine tells an empty text. */
const EMPTY = null;
const registerOf = (sheets: readonly SheetData[]) => sheets.find(({ name }) => name.startsWith("Register"))!;
const batches = situations();
const withActuals = batches.find(({ inputs }) => inputs.actual.bottlesBroken !== null)!;

describe("as it is written", () => {
  // with a lot and without
  const lots = batches.map(({ inputs, plan }, index): Batch => {
    const lot = index % 2 === 0 ? `L-${index}` : "";
    return { inputs: { ...inputs, batch: { ...inputs.batch, lot } }, plan };
  });
  const written = lots.map((batch) => ({ ...batch, sheet: registerOf(batchBook([batch], []).sheets) }));

  test("every line has its day, what comes or goes in its unit, volume before and after, and bottles", () => {
    for (const { inputs, plan, sheet } of written) {
      const lines = registerLines(inputs, plan);
      REGISTER_KEYS.forEach((key, index) => {
        const line: RegisterLine = lines[key];
        const value = (what: string) => cellNamed(sheet, `register_${key}_${what}`)?.value;
        const row = FIRST_LINE + index;
        expect([key, value("planned")]).toEqual([key, line.date]);
        for (const [way, column] of [
          ["in", 4],
          ["out", 5],
        ] as const) {
          // what does not go this way has no cell
          expect([key, way, value(way)]).toEqual([key, way, line[way] === "" ? undefined : line[way]]);
          expect(cellAt(sheet, row, column)?.value).toBe(line[way] === "" ? undefined : line[way]);
        }
        expect([key, cellAt(sheet, row, 6)?.value]).toEqual([key, UNITS[key]]);
        expect(value("before_hL")).toBe(index === 0 ? 0 : lines[REGISTER_KEYS[index - 1]!].volumeHl);
        expect(value("after_hL")).toBe(line.volumeHl);
        expect([key, value("bottles")]).toEqual([key, line.bottles === "" ? undefined : line.bottles]);
        expect(cellAt(sheet, row, 3)?.value).toBe(inputs.batch.lot);
        for (const column of [1, 2]) expect(cellAt(sheet, row, column)?.value).toMatch(/\w/);
      });
    }
  });

  test("no two lines say the same, and the title and the head name batch and bottle", () => {
    for (const { inputs, sheet } of written) {
      const said = REGISTER_KEYS.map((_, index) => cellAt(sheet, FIRST_LINE + index, 1)?.value);
      expect(new Set(said).size).toBe(REGISTER_KEYS.length);
      expect(cellAt(sheet, 0, 0)?.value).toBe(`Register: ${inputs.batch.name}`);
      expect(cellAt(sheet, 4, 9)?.value).toBe(`Bottles of ${inputs.batch.bottle_mL} mL`);
      const heads = sheet.cells.filter(({ row, column }) => row === 4 && column !== 9);
      expect(heads.map(({ value }) => value).join(" | ")).toBe(
        "Planned | Operation | Product | Lot | In | Out | Unit | hL before | hL after | Done on | Actual | Difference | Note",
      );
      expect(cellAt(sheet, 1, 0)?.value).toContain(`“Plan · ${inputs.batch.name}”`);
      expect([sheet.frozenRows, sheet.landscape]).toEqual([5, true]);
    }
  });

  test("what is done is typed in: a day, a quantity from 0 unless the plan has it, a note", () => {
    const { sheet } = written[0]!;
    const rule = (name: string) => ruleNamed(sheet, name);
    for (const key of REGISTER_KEYS) {
      const name = (what: string) => `register_${key}_${what}`;
      expect(rule(name("done"))).toMatchObject({ kind: "date", allowBlank: true, title: "Day it was done" });
      expect(rule(name("note"))).toMatchObject({ kind: "textLength", max: 200, allowBlank: true });
      if (isInPlan(key))
        expect([rule(name("actual")), cellNamed(sheet, name("actual"))!.style]).toEqual([
          undefined,
          "result",
        ]);
      else expect(rule(name("actual"))).toMatchObject({ kind: "decimal", min: 0, allowBlank: true });
      for (const what of ["done", "note", ...(isInPlan(key) ? [] : ["actual"])])
        expect([key, what, cellNamed(sheet, name(what))!.style]).toEqual([key, what, "input"]);
      expect([cellNamed(sheet, name("done"))!.value, cellNamed(sheet, name("difference"))!.value]).toEqual([
        null,
        "",
      ]);
    }
  });

  test("what came of it, as the plan has it, and how far it is from what was planned", () => {
    const { inputs, plan } = withActuals;
    const sheet = registerOf(batchBook([withActuals], []).sheets);
    const lines = registerLines(inputs, plan);
    for (const key of REGISTER_KEYS.filter(isInPlan)) {
      const actual = inputs.actual[IN_PLAN[key]];
      const line = lines[key];
      const planned = line.in === "" ? line.out : line.in;
      expect(cellNamed(sheet, `register_${key}_actual`)!.value).toBe(actual ?? "");
      expect(cellNamed(sheet, `register_${key}_difference`)!.value).toBe(
        actual === null ? "" : actual - Number(planned),
      );
    }
    expect(cellNamed(sheet, "register_breakage_actual")!.value).toBe(60);
  });
});

describe("calculated", () => {
  const portable = (batch: Batch, planTyping: Typing = {}, typing: Typing = {}) => {
    const { sheets } = batchBook([batch], [], { formulas: "portable" });
    const register = registerOf(sheets);
    const [plan] = sheets;
    const typed = sheets.map((sheet) =>
      sheet === plan
        ? typedOver(sheet, sheet.name, planTyping)
        : sheet === register
          ? typedOver(sheet, sheet.name, typing)
          : sheet,
    );
    const shown = calculatedSheets(typed);
    return { register, shown, seen: (name: string) => shownAs(register, shown, register.name, name) };
  };

  test("every cell is the module's, with dry sugar and with liqueur, with and without dosage", () => {
    const forms = new Set(batches.map(({ inputs }) => `${inputs.tirage.sugarForm}`));
    expect([...forms].sort()).toEqual(["dry sugar", "liqueur"]);
    const kinds = batches.map(({ inputs }) => inputs.dosage.kind);
    expect([kinds.includes("none"), kinds.some((kind) => kind !== "none")]).toEqual([true, true]);
    const { sheets } = batchBook(batches, [], { formulas: "portable" });
    const shown = calculatedSheets(sheets);
    const registers = sheets.filter(({ name }) => name.startsWith("Register"));
    expect(registers).toHaveLength(batches.length);
    expect(registers.flatMap((sheet) => differing(sheet, shown, sheet.name)).slice(0, 10)).toEqual([]);
  });

  test("lot, size and what came of it follow the plan; what is typed into the register is compared", () => {
    const batch = batches[0]!;
    const { register, shown, seen } = portable(
      batch,
      { batch_lot: "L-7", batch_name: "Rosé", actual_bottlesBroken: 31, actual_tirageSugar_kg: 240 },
      { register_baseWine_actual: 99, register_topUp_actual: 0 },
    );
    const shownAt = (row: number, column: number) => shown(register.name, row, column);
    REGISTER_KEYS.forEach((_, index) => expect(shownAt(FIRST_LINE + index, 3)).toBe("L-7"));
    expect(shownAt(0, 0)).toBe("Register: Rosé");
    const lines = registerLines(batch.inputs, batch.plan);
    const difference = (key: RegisterKey) => Number(seen(`register_${key}_difference`));
    expect(difference("baseWine")).toBeCloseTo(99 - Number(lines.baseWine.in), 9);
    expect(difference("topUp")).toBeCloseTo(0 - Number(lines.topUp.in), 9);
    expect(seen("register_breakage_actual")).toBe(31);
    expect(difference("breakage")).toBeCloseTo(31 - Number(lines.breakage.out), 9);
    expect(difference("tirageSugar")).toBeCloseTo(240 - Number(lines.tirageSugar.in), 9);
    for (const name of ["finished_actual", "finished_difference", "yeast_difference"])
      expect([name, seen(`register_${name}`)]).toEqual([name, EMPTY]);
  });

  test("no lot in the plan is none in the register, not 0", () => {
    const { register, shown } = portable(batches[0]!, { batch_lot: null });
    REGISTER_KEYS.forEach((_, index) => expect(shown(register.name, FIRST_LINE + index, 3)).toBe(EMPTY));
  });
});
