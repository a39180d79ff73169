/**
 * What is typed for an argument, as it comes into a formula or is sent back; the list and its search.
 */
import { readFileSync } from "node:fs";
import { misplaced, sheetText, typedArgument, type Argument } from "../../src/taskpane/function-argument";
import { callFormula, typedFor } from "../../src/taskpane/function-formula";
import {
  TRADE_WORDS,
  defaultIn,
  familiesOf,
  firstSentence,
  isFound,
  unitAndRest,
  type ListedFunction,
} from "../../src/taskpane/function-search";
import { functionDocs } from "../../src/help/doc-comments";
import { adapterFiles, allFunctions } from "../support/functions";

let functions: readonly ListedFunction[];
beforeAll(async () => {
  functions = (JSON.parse((await allFunctions()).json) as { functions: readonly ListedFunction[] }).functions;
});

const argument = (rest: Partial<Argument>): Argument => ({
  name: "x",
  description: "",
  type: "number",
  ...rest,
});
const KINDS = {
  number: argument({}),
  date: argument({ description: "Day, a spreadsheet date (1 March 1900 on)." }),
  text: argument({ type: "string" }),
  truth: argument({ type: "boolean" }),
  range: argument({ dimensionality: "matrix" }),
  optional: argument({ optional: true }),
};
const typed = (kind: keyof typeof KINDS, text: string) => typedArgument(KINDS[kind], text);

test.each([
  ["number", "50", "50"],
  ["number", " 10,5 ", "10.5"],
  ["number", "−5", "-5"],
  ["number", "0,500", "0.5"],
  ["number", "b7", "B7"],
  ["number", "=B7", "B7"],
  ["number", "$b$7", "$B$7"],
  ["number", "xfd1048576", "XFD1048576"],
  ["number", "Sheet1!B7", "Sheet1!B7"],
  ["number", "'Plan · Brut'!B7", "'Plan · Brut'!B7"],
  ["number", "Plan · Brut!$B$7", "'Plan · Brut'!$B$7"],
  ["number", "'Bob''s'!A1", "'Bob''s'!A1"],
  ["number", "2026!A1", "'2026'!A1"],
  ["number", "B7:B7", "B7:B7"],
  ["date", "2024-05-31", "DATE(2024, 5, 31)"],
  ["date", "45443", "45443"],
  ["date", "C2", "C2"],
  ["text", "brut", '"brut"'],
  ["text", '"brut"', '"brut"'],
  ["text", "B7", "B7"],
  ["text", '"B7"', '"B7"'],
  ["text", 'so "sec"', '"so ""sec"""'],
  ["text", '"a ""b"" c"', '"a ""b"" c"'],
  ["text", "CA-QC", '"CA-QC"'],
  ["text", "12", '"12"'],
  ["truth", "true", "TRUE"],
  ["truth", "No", "FALSE"],
  ["truth", "D4", "D4"],
  ["range", "b2:b9", "B2:B9"],
  ["range", "Trials!B2:B9", "Trials!B2:B9"],
  ["range", "B2", "B2"],
  ["range", "8", "{8}"],
  ["range", "8; 10,5; 12", "{8;10.5;12}"],
  ["range", "{8; 10}", "{8;10}"],
  ["optional", " ", ""],
] as const)("as a %s %j is %j in a formula", (kind, text, formula) =>
  expect(typed(kind, text)).toMatchObject({ formula }),
);

test.each([
  ["number", "", "x is blank; give a number or a cell such as B7"],
  ["number", "ten", 'x is "ten"; give a number or a cell such as B7'],
  ["number", "1,000", 'x is "1,000"; write numbers without marks for thousands: 1250, or 1.25'],
  ["number", "B2:B9", 'x is "B2:B9"; give one cell, such as B7'],
  ["number", "B0", 'x is "B0"; give a number or a cell such as B7'],
  ["number", "XFE1", 'x is "XFE1"; give a number or a cell such as B7'],
  ["number", "A1048577", 'x is "A1048577"; give a number or a cell such as B7'],
  ["number", "A1*2", 'x is "A1*2"; give a number or a cell such as B7'],
  ["number", "[Book]S!A1", 'x is "[Book]S!A1"; give a number or a cell such as B7'],
  ["date", "2024-02-30", 'x is "2024-02-30"; give a date as 2026-03-31 or a cell such as B7'],
  ["date", "31.5.2024", 'x is "31.5.2024"; give a date as 2026-03-31 or a cell such as B7'],
  ["text", "", "x is blank; give a word or a cell such as B7"],
  ["text", '"brut', 'x is ""brut"; close the quotation mark'],
  ["text", "=A1&B1", 'x is "=A1&B1"; a formula belongs in a cell of its own; refer to that cell'],
  ["truth", "maybe", 'x is "maybe"; give TRUE, FALSE or a cell such as B7'],
  ["range", "8, 10", 'x is "8, 10"; give a range such as B2:B9, or numbers with ; between them'],
  ["range", "8;;9", 'x is "8;;9"; give a range such as B2:B9, or numbers with ; between them'],
  ["optional", "ten", 'x is "ten"; give a number or a cell such as B7'],
] as const)("as a %s %j is sent back: %s", (kind, text, problem) =>
  expect(typed(kind, text)).toEqual({ problem }),
);

test("a text is at most as long as a formula can hold", () => {
  expect(typed("text", "x".repeat(255))).toHaveProperty("formula");
  expect(typed("text", "x".repeat(256))).toEqual({
    problem: `x is "${"x".repeat(40)}…"; give at most 255 characters`,
  });
});

test("a sheet's name that reads as a cell, or has more than letters, digits and _, is put in quotes", () => {
  const names = ["Sheet1", "_x", "A1", "R1C1", "c", "Bob's", "2026", "Plan · Brut"];
  expect(names.map(sheetText)).toEqual([
    // Sheet1 is no cell: its letters are too many
    "Sheet1",
    "_x",
    "'A1'",
    "'R1C1'",
    "'c'",
    "'Bob''s'",
    "'2026'",
    "'Plan · Brut'",
  ]);
});

describe("where the call goes", () => {
  const into = { sheet: "Sheet1", address: "B7" };
  const wrong = (text: string) => {
    const found = typed("range", text);
    return misplaced("reference" in found ? found.reference! : (undefined as never), into, [
      "Sheet1",
      "Plan",
    ]);
  };
  test.each(["B7", "$B$7", "sheet1!b7", "A1:C9", "C9:A1"])("%s would refer to itself", (text) =>
    expect(wrong(text)).toMatch(/^B7 is the cell that the call goes into; /u),
  );
  test.each(["B8", "A7", "Plan!B7", "plan!B7", "A1:A9", "B1:B6"])("%s does not", (text) =>
    expect(wrong(text)).toBeUndefined(),
  );
  test("a sheet that is not there is named", () =>
    expect(wrong("Season!B7")).toBe("there is no sheet “Season”; give one of those in the workbook"));
});

test("arguments left out at the end are left away, those before stay empty", () => {
  expect(callFormula("TIRAGE.SUGAR", ["50", "24", ""])).toBe("=MOUSSE.TIRAGE.SUGAR(50, 24)");
  expect(callFormula("TIRAGE.VOLUME", ["50", "24", "", "", "20"])).toBe(
    "=MOUSSE.TIRAGE.VOLUME(50, 24, , , 20)",
  );
  expect(callFormula("AGEING.DESIGNATIONS", [])).toBe("=MOUSSE.AGEING.DESIGNATIONS()");
});

test("every documented example can be typed, and comes back as it is documented", () => {
  const docs = functionDocs(adapterFiles.map((file) => ({ file, text: readFileSync(file, "utf8") })));
  expect(docs.length).toBe(functions.length);
  for (const { id, example } of docs) {
    const { parameters } = functions.find((each) => each.id === id)!;
    const call = example.slice(0, example.lastIndexOf(" = "));
    const inner = /^INDEX\((.*), 1, 1\)$/u.exec(call)?.[1];
    const fields = typedFor(id, parameters, inner ? `=INDEX(MOUSSE.${inner}, 1, 1)` : `=MOUSSE.${call}`);
    const args = fields.map((text, index) => typedArgument(parameters[index]!, text));
    expect([id, args.filter((each) => "problem" in each)]).toEqual([id, []]);
    const formula = callFormula(
      id,
      args.map((each) => ("formula" in each ? each.formula : "")),
    );
    expect(formula).toBe(`=MOUSSE.${inner ?? call}`);
  }
});

test("an example is typed as people would", () => {
  const fields = (id: string, formula: string) =>
    typedFor(id, functions.find((each) => each.id === id)!.parameters, formula);
  expect(fields("AGEING.EARLIEST", '=MOUSSE.AGEING.EARLIEST(DATE(2024, 5, 31), "Cava, Reserva")')).toEqual([
    "2024-05-31",
    "Cava, Reserva",
    "",
  ]);
  expect(fields("DOSAGE.TRIAL", "=MOUSSE.DOSAGE.TRIAL(750, 0, 600, {8})")).toEqual(["750", "0", "600", "8"]);
  // a word that would be taken for a cell keeps its marks
  expect(fields("SWEETNESS.LIMITS", '=MOUSSE.SWEETNESS.LIMITS("EU1")')).toEqual(['"EU1"', ""]);
});

const search = (text: string) => functions.filter((each) => isFound(each, text)).map(({ id }) => id);

test("families hold every function once, in the order of the work", () => {
  const families = familiesOf(functions);
  expect(families.map(({ title }) => title).slice(0, 3)).toEqual(["Tirage", "Pressure", "Ageing"]);
  const ids = families.flatMap((family) => family.functions.map(({ id }) => id));
  expect(ids.sort()).toEqual(functions.map(({ id }) => id).sort());
  const strange = { id: "NEW.THING", description: "", parameters: [] };
  expect(familiesOf([strange, ...functions]).at(-1)).toEqual({ title: "New", functions: [strange] });
});

test.each([
  ["", 52],
  ["  ", 52],
  ["remuage", 3],
  ["dégorgement", 2],
  ["DEGORGEMENT", 2],
  ["demi sec", 5],
  ["calories", 1],
  ["no such thing", 0],
])("a search for %j finds %d", (text, many) => expect(search(text)).toHaveLength(many));

test("a search takes ids, words of descriptions, names of arguments, and all of several words", () => {
  expect(search("tirage.sugar")).toEqual(["TIRAGE.SUGAR"]);
  expect(search("tirage sugar weigh")).toEqual(["TIRAGE.SUGAR"]);
  expect(search("target_Mcells_mL")).toEqual(["TIRAGE.STARTER"]);
  expect(search("liqueur carrier kilograms")).toEqual(["DOSAGE.RECIPE"]);
});

test("the trade's words are all somebody's", () => {
  for (const key of Object.keys(TRADE_WORDS))
    expect([key, functions.some(({ id }) => id === key || id.startsWith(`${key}.`))]).toEqual([key, true]);
});

test("a description's first sentence, its unit, and what blank means", () => {
  expect(firstSentence("Sugar, g/L. Both as sucrose.")).toBe("Sugar, g/L.");
  expect(firstSentence("A share of 0.5 or more.")).toBe("A share of 0.5 or more.");
  expect(unitAndRest("Base wine in the tank, hL (more than 0, at most 100000).")).toEqual({
    unit: "hL",
    rest: "Base wine in the tank (more than 0, at most 100000).",
  });
  expect(unitAndRest("Bottles filled (a whole number, 0 to 100000000).").unit).toBe("");
  expect(["blank = 0.95.", 'x; blank = "EU". y', "blank = dry sugar.", "needed"].map(defaultIn)).toEqual([
    "0.95",
    '"EU"',
    "dry sugar",
    undefined,
  ]);
});

test("every optional argument says what it is left blank for", () => {
  const optional = functions.flatMap(({ parameters }) => parameters.filter((each) => each.optional));
  expect(optional.length).toBeGreaterThan(40);
  expect(optional.filter(({ description }) => defaultIn(description) === undefined)).toEqual([]);
});
