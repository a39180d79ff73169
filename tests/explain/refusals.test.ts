/**
 * Whatever stands in the cells: explained, or refused in the words of the cell's own message. Never thrown.
 */
import fc from "fast-check";
import { cells } from "../support/any-cell";
import { isRefusal } from "../../src/cellar/refusal";
import { explain } from "../../src/explain/explain";
import type { Refused, Working } from "../../src/explain/types";
import { VALID_CALLS } from "../functions/valid-calls";
import { allFunctions, type AllFunctions } from "../support/functions";

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

const SEED = 20_261_125;
const IDS = Object.keys(VALID_CALLS).sort();

/** Fails unless the explanation says what the function says. */
function expectSame(id: string, args: readonly unknown[]): boolean {
  const explanation = explain(id, args);
  let result: unknown;
  try {
    result = all.implementations.get(id)!(...args);
  } catch (error) {
    if (!isRefusal(error)) throw error;
    const { kind, argument, given, remedy, message } = error;
    expect(explanation).toMatchObject({ kind, argument, remedy, sentence: message });
    expect((explanation as Refused).given).toBe(given);
    expect((explanation as Refused).error).toBe(kind === "domain" ? "#VALUE!" : "#N/A");
    return false;
  }
  expect((explanation as Working).result).toStrictEqual(result);
  return true;
}

test.each(IDS)("%s: any cells in all arguments, and any cell in one of a call that works", (id) => {
  const valid = VALID_CALLS[id]!;
  let refusals = 0;
  const count = (same: boolean) => (refusals += same ? 0 : 1);
  fc.assert(
    fc.property(fc.array(cells, { maxLength: valid.length + 1 }), (args) => void count(expectSame(id, args))),
    { seed: SEED, numRuns: 200 },
  );
  if (valid.length === 0) return;
  fc.assert(
    fc.property(fc.nat(valid.length - 1), cells, (at, cell) => {
      count(
        expectSame(
          id,
          valid.map((arg, index) => (index === at ? cell : arg)),
        ),
      );
    }),
    { seed: SEED, numRuns: 400 },
  );
  expect(refusals).toBeGreaterThan(100);
});

test("an argument out of its range: the cell's words, and what #VALUE! means", () => {
  expect(explain("TIRAGE.PRESSURE", [24, 85, 10.5])).toEqual({
    kind: "domain",
    call: "MOUSSE.TIRAGE.PRESSURE(24, 85, 10.5)",
    argument: "temperature_C",
    given: 85,
    remedy: "give -5 to 45 °C",
    sentence: "temperature_C is 85; give -5 to 45 °C",
    error: "#VALUE!",
    meaning: "#VALUE! means that an argument lies outside what the function allows, or is not of its kind.",
  });
});

test("a question with no answer: #N/A, and what would make one possible", () => {
  const refusal = explain("DOSAGE.VOLUME", [750, 1, 8, 600, 5]) as Refused;
  // 750·7/599 = 8.76 mL do not fit in 5
  expect(refusal).toMatchObject({ kind: "unanswerable", argument: "space_mL", given: 5, error: "#N/A" });
  expect(refusal.sentence).toMatch(/^space_mL is 5; the dosage takes 8\.8 mL; /u);
  expect(refusal.meaning).toMatch(/^#N\/A means/u);
});

test.each([
  ["TIRAGE.SUGER", /near it: TIRAGE\.SUGAR$/u],
  ["PRESURE.AT20", /near it: PRESSURE\.AT20/u],
  ["TIRAGESUGAR", /near it: TIRAGE\.SUGAR/u],
  ["DOSAGE.SOMETHINGELSE", /that family: DOSAGE\.VOLUME, .*DOSAGE\.TRIAL$/u],
  [
    "VLOOKUP",
    /families: TIRAGE, PRESSURE, AGEING, RIDDLING, DISGORGING, DOSAGE, SWEETNESS, SUGAR, LABEL, COST$/u,
  ],
  ["", /families: /u],
  ["constructor", /families: /u],
])("no function %p: names near it, or families", (id, remedy) => {
  const unknown = explain(id, [1, "x"]) as Refused;
  expect(unknown).toMatchObject({ kind: "unknown", error: "#NAME?", given: id.toUpperCase() });
  expect(unknown.remedy).toMatch(remedy);
  expect(unknown.sentence).toContain(unknown.remedy);
});

test("an id is known with its namespace and in small letters, as it is typed", () => {
  expect(explain("=mousse.tirage.sugar", [50, 24])).toEqual(explain("TIRAGE.SUGAR", [50, 24]));
});
