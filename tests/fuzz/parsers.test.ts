/**
 * What reads texts that people type or programs hand over: any text, no exception, in time that hardly grows with it.
 */
import fc from "fast-check";
import { fold } from "../../src/cellar/matching";
import { explain } from "../../src/explain/explain";
import { readCall } from "../../src/explain/call";
import { callsIn, referencesIn } from "../../src/explain/formula-calls";
import { readFormula } from "../../src/explain/formula-tree";
import { asTyped } from "../../src/hosts/excel/contents";
import { placeIn } from "../../src/hosts/reference";
import { storedFormula } from "../../src/hosts/xlsx/formula";
import { legalText, storedText } from "../../src/hosts/xlsx/text";
import { sheetText, typedArgument } from "../../src/taskpane/function-argument";
import { typedFor } from "../../src/taskpane/function-formula";
import { isFound, unitAndRest } from "../../src/taskpane/function-search";
import { isAmbiguous, typedNumber } from "../../src/taskpane/typed-numbers";
import { cut } from "../../src/workbook/rule-text";
import { freeSheetName } from "../../src/workbook/sheet-names";
import { fr } from "../../src/words/fr";
import { translator } from "../../src/words/translate";
import { HOSTILE_TEXTS, UNHOLDABLE_TEXTS, always, fastest, repeated, runsMade } from "../support/fuzz";

jest.setTimeout(600_000);
afterAll(() => process.stdout.write(`parsers: ${runsMade()} runs\n`));

const translate = translator(fr);
const cellsOf = (reference: string) => (reference.length % 5 === 0 ? undefined : [[1, "a"], [null]]);
const kinds = [
  { type: "number" },
  { type: "string" },
  { type: "boolean" },
  { type: "number", description: "a spreadsheet date" },
  { dimensionality: "matrix" },
].map((kind) => ({ name: "x", description: "", ...kind }));
const listed = { id: "TIRAGE.SUGAR", description: "Sugar, kg (0 to 9).", parameters: kinds };

/** A formula that is too long for a file is refused in words. */
function refusing(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError && error.message.includes("at most")) return undefined;
    throw error;
  }
}

const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  readFormula,
  referencesIn,
  callsIn: (text) => callsIn(text, cellsOf, (id) => (id.length % 2 ? 1 : undefined)),
  "callsIn, within a call": (text) => callsIn(`=MOUSSE.A.B(${text}`, cellsOf, () => "x"),
  readCall,
  "readCall, within a call": (text) => readCall(`MOUSSE.A(${text}`),
  typedNumber,
  isAmbiguous,
  typedArgument: (text) => kinds.map((kind) => typedArgument(kind, text)),
  typedFor: (text) => typedFor(listed.id, kinds, `MOUSSE.${listed.id}(${text})`),
  sheetText,
  unitAndRest,
  isFound: (text) => isFound(listed, text),
  // a formula has no longer name in it
  explain: (text) => explain(text.slice(0, 8192), [text, 1]),
  fold,
  placeIn: (text) => [placeIn("x", text), placeIn("x", `'${text}'!A1`)],
  asTyped: (text) => [asTyped(text), asTyped(`a${text}`)],
  storedText,
  storedFormula: (text) => refusing(() => storedFormula(`MOUSSE.A(${text}`, "A1")),
  // no batch has a name of more than 60 characters
  freeSheetName: (text) => freeSheetName("Plan", text.slice(0, 5000), []),
  cut: (text) => cut(text, 32),
  translate,
};

const PIECES = [
  ...["(", ")", "{", "}", "1;", "1,", "-", "+", "@", "%", "^", "<>", "&", "=", "A(", "IF(", "MAX(", "DATE("],
  ...[
    "'",
    "''",
    "'a'!",
    '"',
    '""',
    '"a"',
    "A1",
    "$A$1:",
    "A1:B2",
    "XFD1048577",
    "1",
    "1.",
    ".1",
    "1e",
    "1E+9",
  ],
  ...["MOUSSE.", "MOUSSE.A.B(", "TRUE", "#REF!", "[1]", "Table1[#All]", " ", "\t", "\n", "\u00a0", "\u2028"],
  ...[
    "a",
    "é",
    "e\u0301",
    "\u0301",
    "🍾",
    "\ud83c",
    "\u0000",
    "\\",
    "/",
    ".",
    ",",
    ":",
    "_x0041_",
    "{0}",
    "of ",
  ],
  ...[" is ", "; ", "“a” ", "→ ", "not ", "1,000", "0,5", "−"],
];
const texts = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }).map((pieces) => pieces.join("")),
  fc.constantFrom(...HOSTILE_TEXTS, ...UNHOLDABLE_TEXTS),
);

test.each(Object.keys(READERS))("%s takes any text", (name) => {
  always(texts, (text) => void READERS[name]!(text));
});

/** As long as a cell's text. */
const LONG = 32_767;
const ENOUGH_MS = 300;

test.each(Object.keys(READERS))("%s takes long texts of one piece in bounded time", (name) => {
  for (const piece of PIECES) {
    for (const end of ["", '"☃']) {
      const text = repeated(piece, LONG) + end;
      const took = fastest(() => READERS[name]!(text), ENOUGH_MS);
      expect([piece, end, took <= ENOUGH_MS]).toEqual([piece, end, true]);
    }
  }
});

test("whatever a formula can hold: a whole column, nothing, deep brackets", () => {
  const column = Array.from({ length: 300_000 }, (_, row) => [row]);
  const args = (formula: string) =>
    callsIn(
      formula,
      () => column,
      () => 1,
    )[0];
  expect(args("=MOUSSE.A(MAX(A:A))")).toMatchObject({ unknown: expect.stringContaining("A:A") as string });
  expect(args("=MOUSSE.A(MAX(A1:A9), MIN(A1:A9), SUM(A1:A2))")).toMatchObject({
    args: [299_999, 0, (299_999 * 300_000) / 2],
  });
  expect(args("=MOUSSE.A(MAX(), IF(), 1)")).toMatchObject({ unknown: "IF has no condition" });
  expect(readFormula(`${"(".repeat(60)}1${")".repeat(60)}`)).toEqual({ kind: "value", value: 1 });
  expect(readFormula("-".repeat(5000) + "1")).toBeUndefined();
  expect(readCall(`A(${"{".repeat(5000)}`)).toBeUndefined();
});

test("a text that hardly fits one of the catalogue's patterns", () => {
  for (const english of Object.keys(fr)) {
    const parts = english.split(/\{\d+\}/u);
    if (parts.length < 3) continue;
    for (const unit of [parts.slice(1, -1).join("x"), parts[1]!, parts.at(-2)!]) {
      if (unit === "") continue;
      const text = `${parts[0]}x${repeated(`${unit}x`, 3000)}☃`;
      const took = fastest(() => translate(text), 1000);
      expect([english, took <= 1000]).toEqual([english, true]);
    }
  }
});

test("a translation keeps what stands round a text, and any text that is nobody's", () => {
  always(texts, (text) => {
    const answer = translate(text);
    expect(answer.startsWith(text.slice(0, text.length - text.trimStart().length))).toBe(true);
    if (!/\p{L}/u.test(text)) expect(answer).toBe(text);
  });
});

test("typed numbers are finite, or the text itself", () =>
  always(texts, (text) => {
    const typed = typedNumber(text);
    if (typeof typed === "number") expect(Number.isFinite(typed)).toBe(true);
    else expect([null, text.trim().replace(/^[−–]/, "-")]).toContain(typed);
  }));

test("what goes into XML is legal there, and a sheet's name legal everywhere", () =>
  always(texts, (text) => {
    expect(legalText(text)).not.toMatch(/[^\t\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u);
    const name = freeSheetName("Plan", text, ["Plan ·", "plan"]);
    expect(name.length).toBeLessThanOrEqual(31);

    expect(name).not.toMatch(/[[\]:*?/\\\u0000-\u001f]|^'|'$/);
  }));
