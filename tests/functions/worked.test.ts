/**
 * Results worked by hand, and what no calculation may give.
 */
import { answer } from "../../src/functions/arguments";
import { adapters } from "../support/adapters";
import { inExcel } from "../support/in-excel";

const value = (id: string, ...args: unknown[]) =>
  inExcel(adapters.find((each) => each.id === id)!.calculate, args);

test("a result beyond all numbers is #N/A, never Infinity or NaN; a word is let through", () => {
  for (const result of [Number.POSITIVE_INFINITY, Number.NaN])
    expect(inExcel(() => answer(() => result), [])).toBe(
      "#N/A the result is not a finite number; give less extreme arguments",
    );
  expect(answer(() => "brut")).toBe("brut");
});

test("wine with liqueur, worked by hand; a liqueur of 0 g/L or none is dry sugar", () => {
  // 5000·24/(500 − 24) = 252.10 L; 5000·24/(1000 − 15)·0.625 = 76.14 L
  expect(value("TIRAGE.VOLUME", 50, 24, 500)).toBeCloseTo(52.521, 4);
  for (const none of [0, null, undefined, ""])
    expect(value("TIRAGE.VOLUME", 50, 24, none)).toBeCloseTo(50.7614, 4);
});

test("ageing from tirage to disgorging or to release, and the list of designations", () => {
  // 12 months on the lees, 15 or 36 in all
  expect(value("AGEING.MINIMUM", "Champagne vintage", "total")).toBe(36);
  expect(value("AGEING.MINIMUM", "Champagne vintage", "lees")).toBe(12);
  const rows = value("AGEING.DESIGNATIONS") as unknown[][];
  expect(rows.find(([name]) => name === "Champagne non-vintage")!.slice(0, 3)).toEqual([
    "Champagne non-vintage",
    12,
    15,
  ]);
  expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([4]));
  for (const row of rows) expect(String(row[3])).toMatch(/\((read|secondary|memory|practice)/u);
});
