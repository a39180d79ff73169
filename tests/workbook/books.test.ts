/**
 * Sheets that are written together: which ones, in which order, under which names, and with which formulas.
 */
import { batchBook, seasonBook, seasonOf } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { frozen } from "../../src/workbook/frozen";
import { layOut } from "../../src/workbook/layout";
import { notesSheet } from "../../src/workbook/notes/sheet";
import { addressIn } from "../../src/workbook/linked-plan";
import { cellNamed, placeNamed } from "../support/sheet-cells";
import { situations } from "../support/situations";

const [first, second] = ["Pearl", "Pearl"].map((name, index) => {
  const { inputs, plan } = situations()[index]!;
  return { plan, inputs: { ...inputs, batch: { ...inputs.batch, name } } };
}) as [ReturnType<typeof situations>[0], ReturnType<typeof situations>[0]];
const names = (sheets: readonly SheetData[]) => sheets.map(({ name }) => name);
const formulasOf = (sheets: readonly SheetData[]) =>
  sheets.flatMap(({ cells }) => cells.flatMap(({ formula }) => (formula === undefined ? [] : [formula])));
const ours = (sheets: readonly SheetData[]) => formulasOf(sheets).filter((text) => text.includes("MOUSSE."));
const own = ["Plan · Pearl", "What-if · Pearl", "Register · Pearl"];

test("plan, what-if and register of each batch, then the notes", () =>
  expect(names(batchBook([first, second], []).sheets)).toEqual([
    ...own,
    ...own.map((name) => `${name} (2)`),
    "Notes",
  ]));

test("no name that is taken", () => {
  const taken = ["notes", "PLAN · Pearl"];
  expect(names(batchBook([first], taken).sheets)).toEqual(["Plan · Pearl (2)", own[1], own[2], "Notes (2)"]);
  expect(taken).toEqual(["notes", "PLAN · Pearl"]);
});

test("no second Notes sheet; lists and figures come from the one that is there", () => {
  const notes = notesSheet(["Notes"]);
  const places = new Map(notes.names.map((each) => [each.name, each]));
  const { sheets } = batchBook([first], [], { known: { sheet: "Mine", places }, formulas: "portable" });
  expect(names(sheets)).toEqual(own);
  expect(formulasOf(sheets).some((text) => text.includes("'Mine'!"))).toBe(true);
  const listed = sheets[0]!.validations.filter((rule) => rule.kind === "list" && rule.from);
  expect(listed.map((rule) => rule.kind === "list" && rule.from?.sheet)).toEqual(["Mine"]);
});

test("the list of designations stands on the Notes sheet written along", () => {
  const { sheets } = batchBook([first], ["Notes"]);
  const rules = sheets[0]!.validations.flatMap((rule) => (rule.kind === "list" && rule.from ? [rule] : []));
  const [{ from, options }] = rules as [(typeof rules)[0]];
  expect(from!.sheet).toBe("Notes (2)");
  const notes = sheets.find(({ name }) => name === "Notes (2)")!;
  const listed = notes.cells.filter(
    ({ row, column }) => column === from!.column && row >= from!.row && row <= from!.lastRow,
  );
  expect(listed.map(({ value }) => value)).toEqual([...options]);
});

test("linked plans say where the cells of their sheet are", () => {
  const { plans, sheets } = batchBook([first, second], []);
  expect(plans.map(({ sheet }) => sheet)).toEqual(["Plan · Pearl", "Plan · Pearl (2)"]);
  expect(plans.map(({ inputs }) => inputs)).toEqual([first.inputs, second.inputs]);
  plans.forEach((linked, index) => {
    const { row, column } = placeNamed(sheets[index * 3]!, "batch_lot")!;
    expect(linked.places.get("batch_lot")).toMatchObject({ row, column });
    expect(addressIn(linked, "batch_lot")).toBe(`'${linked.sheet}'!${"ABCDEFGH"[column]}${row + 1}`);
  });
});

describe("with our functions, for any program, or as values", () => {
  test("a batch", () => {
    expect(ours(batchBook([first], []).sheets).length).toBeGreaterThan(20);
    const { sheets } = batchBook([first], [], { formulas: "portable" });
    for (const sheet of sheets.slice(0, 3)) expect(formulasOf([sheet]).length).toBeGreaterThan(0);
    expect(ours(sheets)).toEqual([]);
    expect(formulasOf(sheets).some((text) => text.includes("'Notes'!"))).toBe(true);
    expect(formulasOf(batchBook([first], [], { formulas: "values" }).sheets)).toEqual([]);
  });
  test("a season", () => {
    const sheets = seasonBook([first, second]);
    expect(names(sheets)).toEqual(["Season", ...own, ...own.map((name) => `${name} (2)`), "Notes"]);
    expect(ours(sheets).length).toBeGreaterThan(40);
    expect(formulasOf(sheets.slice(0, 1)).some((text) => text.includes("'Plan · Pearl (2)'!"))).toBe(true);
    expect(ours(seasonBook([first], "portable"))).toEqual([]);
    expect(formulasOf(seasonBook([first], "portable").slice(0, 1)).length).toBeGreaterThan(20);
    expect(formulasOf(seasonBook([first], "values"))).toEqual([]);
  });
  test("a batch that is called as the season's sheet", () => {
    const named = { ...first, inputs: { ...first.inputs, batch: { ...first.inputs.batch, name: "Season" } } };
    expect(names(seasonBook([named]))).toEqual([
      ...["Season", "Plan · Season", "What-if · Season", "Register · Season", "Notes"],
    ]);
  });
});

describe("a season of plans that are there", () => {
  const { plans, sheets } = batchBook([first, second], []);
  const notes = { sheet: "Notes", places: new Map(sheets.at(-1)!.names.map((each) => [each.name, each])) };

  test("under a name that is free, first of all sheets", () => {
    const sheet = seasonOf(plans, ["SEASON"], notes, "add-in");
    expect([sheet.name, sheet.first]).toEqual(["Season (2)", true]);
    expect(formulasOf([sheet]).length).toBeGreaterThan(20);
    expect(formulasOf([seasonOf(plans, [], undefined, "add-in")])).toEqual(formulasOf([sheet]));
  });
  test("portable ones need the Notes sheet", () => {
    expect(() => seasonOf(plans, [], undefined, "portable")).toThrow(
      "The Notes sheet, which its formulas read, is gone.",
    );
    const sheet = seasonOf(plans, [], notes, "portable");
    expect([ours([sheet]), formulasOf([sheet]).length > 20]).toEqual([[], true]);
  });
  test("values", () => {
    for (const known of [undefined, notes])
      expect(formulasOf([seasonOf(plans, [], known, "values")])).toEqual([]);
  });
});

describe("values only", () => {
  const page = { frozenRows: 0, pagesTall: 0, landscape: false };
  const sheetWith = (cells: SheetData["cells"]) => ({
    ...layOut({ name: "S", rows: [], columnWidths: [], page }),
    cells,
  });
  const at = { row: 1, column: 2, style: "result", format: "0.0" } as const;
  const follows = { row: 0, column: 0, value: "follows its inputs", style: "subtitle" } as const;

  test("each result with its formula in a note, and the line below the title no longer says that it follows", () => {
    const plain = { ...at, value: "x", note: "kept" };
    const [sheet] = frozen([sheetWith([follows, { ...at, value: 7, formula: "A1+2" }, plain])]);
    expect(sheet!.cells.slice(1)).toStrictEqual([{ ...at, value: 7, note: "=A1+2" }, plain]);
    expect(sheet!.cells[0]).toMatchObject({ row: 0, column: 0, style: "subtitle" });
    expect(sheet!.cells[0]!.value).toMatch(/^Values only/);
  });
  test("a sheet without formulas is left as it is", () => {
    const sheet = sheetWith([follows]);
    expect(frozen([sheet])).toStrictEqual([sheet]);
  });
  test("what a plan says of a verdict stays", () => {
    const [live] = batchBook([first], []).sheets;
    const [still] = batchBook([first], [], { formulas: "values" }).sheets;
    expect(cellNamed(still!, "plan_worst")!.value).toBe(cellNamed(live!, "plan_worst")!.value);
    expect(cellNamed(still!, "plan_worst")!.note).toBe(`=${cellNamed(live!, "plan_worst")!.formula}`);
  });
});
