/**
 * What the functions say of themselves in French: all of it is there, and says the same numbers, units and words to
 * type as the English.
 */
import { readFileSync } from "node:fs";
import { functionDocs } from "../../src/help/doc-comments";
import { ENGLISH } from "../../src/help/languages";
import { helpPages } from "../../src/help/pages";
import { frFunctions } from "../../src/words/fr-functions";
import { adapterFiles } from "../support/functions";

const docs = functionDocs(adapterFiles.map((file) => ({ file, text: readFileSync(file, "utf8") })));
const descriptions = new Set(
  docs.flatMap(({ description, parameters }) => [description, ...parameters.map(({ text }) => text)]),
);
const others = new Set(
  docs.flatMap(({ returns, equation, source, refuses = "", caution = "" }) => [
    returns,
    equation,
    source,
    refuses,
    caution,
  ]),
);
/** What the help pages say, docs and workings included. */
const said = new Set<string>();
const listening = { ...ENGLISH, say: (text: string) => (said.add(text), text) };
helpPages(docs, listening, [listening, ENGLISH]);

const french = Object.entries(frFunctions);
/** With a point for decimals, in order of size as text. */
const numbers = (text: string) =>
  [...text.matchAll(/\d+(?:[.,]\d+)?/gu)].map(([number]) => number.replace(",", ".")).sort();
const UNIT =
  /(?<![\p{L}\d/])(?:g\/L|kg\/L|L\/kg|kg\/m³|hL|mL|L|kg|bar|kPa|psi|atm|kgf\/cm2|kJ|kcal|% vol|%|°C|°Brix|°|mol|CO2)(?![\p{L}\d/'])/gu;
const units = (text: string) => (text.match(UNIT) ?? []).sort();
/** Words as they are typed, in straight quotes. A word may be explained after it in brackets. */
const quoted = (text: string) => (text.match(/"[^"]*"/gu) ?? []).sort();
const placeholders = (text: string) => (text.match(/\{\d+\}/gu) ?? []).sort();
const signs = (text: string) => (text.match(/[−-]\d|[<>≤≥±√^²]/gu) ?? []).sort();

test("every description of a function and of an argument is there", () => {
  expect(descriptions.size).toBeGreaterThan(155);
  expect([...descriptions].filter((text) => !(text in frFunctions))).toEqual([]);
});

test("everything else of the doc comments is there, but what is signs and units alone", () => {
  const missing = [...others].filter(
    (text) => !(text in frFunctions) && /\p{L}{3}/u.test(text.replaceAll(/% vol|°Brix/gu, "")),
  );
  expect(missing).toEqual([]);
});

test("nothing is there that nobody says", () => {
  const used = new Set([...descriptions, ...others, ...said]);
  // as typed in a formula; the other of TRUE
  const typed = new Set(["lees", "total", "TRUE", "FALSE"]);
  const unused = french.filter(
    ([english]) => !used.has(english) && !typed.has(english) && !english.startsWith("{0}"),
  );
  expect(unused.map(([english]) => english)).toEqual([]);
});

test.each([
  ["numbers", numbers],
  ["units", units],
  ["words in quotes", quoted],
  ["placeholders", placeholders],
  ["signs", signs],
])("%s are those of the English", (_what, found) => {
  const differing = french.filter(
    ([english, text]) => JSON.stringify(found(english)) !== JSON.stringify(found(text)),
  );
  expect(differing).toEqual([]);
});

test.each([
  ["more than 0, at most 100000", "plus de 0, au plus 100000"],
  ["0 to less than 100", "0 à moins de 100"],
  ["a whole number, 1 to 4", "nombre entier, 1 à 4"],
])("a range keeps its ends and how they are meant: %s", (english, text) => {
  const having = french.filter(([key]) => key.includes(`(${english})`));
  expect(having.length).toBeGreaterThan(0);
  for (const [key, value] of having) expect([key, value.includes(`(${text})`)]).toEqual([key, true]);
});

test("each kind of end of a range has one wording", () => {
  const wordings = [
    ["more than ", "plus de "],
    ["at most ", "au plus "],
    ["less than ", "moins de "],
    ["a whole number", "nombre entier"],
    ["blank = ", "vide\u00a0= "],
  ] as const;
  for (const text of descriptions)
    for (const [english, wording] of wordings) {
      if (!new RegExp(`[(;] ?(?:[^()]*, )?${english}`, "u").test(text)) continue;
      const plain = frFunctions[text]!.replaceAll("vide =", "vide\u00a0=");
      expect([text, plain.includes(wording)]).toEqual([text, true]);
    }
});

test("French signs: no break before : ; ? ! and within « »", () => {
  const wrong = french.filter(([, text]) => / [:;?!»]|« |[\p{L}\d)"][;?»]|\p{L}!(?!\/)/u.test(text));
  expect(wrong.map(([, text]) => text).filter((text) => !/#[A-Z]+!/u.test(text))).toEqual([]);
});

test("descriptions are sentences no longer than Excel shows", () => {
  for (const text of descriptions) {
    const value = frFunctions[text]!;
    expect([value, value.length <= 255, /^\S[^\r\n]*\.$/u.test(value)]).toEqual([value, true, true]);
  }
});
