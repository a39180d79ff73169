/**
 * Some workings read whole, with numbers worked out by hand.
 */
import { explain } from "../../src/explain/explain";
import { readOut } from "../../src/explain/read-out";
import type { Step, Working } from "../../src/explain/types";

const working = (id: string, ...args: unknown[]) => explain(id, args) as Working;
const lines = (id: string, ...args: unknown[]) =>
  readOut(working(id, ...args)).map((line) => line.replaceAll("\u00a0", " "));
const step = (of: Working, symbol: string): Step => of.steps.find((each) => each.symbol === symbol)!;

/*
 * By hand: 50 hL·100 = 5000 L. Missing 24 − 0 = 24 g/L. 24 g take 24·0.625 = 15 mL of a litre, which leaves 985.
 * 5000·24 = 120 000; 120 000/985 = 121.827… kg.
 */
test("TIRAGE.SUGAR(50, 24) reads like a careful colleague's working", () => {
  expect(lines("TIRAGE.SUGAR", 50, 24)).toEqual([
    "MOUSSE.TIRAGE.SUGAR(50, 24)",
    "Base wine in the tank: 50 hL (V).",
    "Sugar wanted in the filled bottle: 24 g/L as sucrose (s).",
    "Left blank, so the default. Glucose + fructose already in the wine: 0 g/L (S).",
    "The wine's own sugar as sucrose: 0 g/L (S0).",
    "The wine brings 0 g/L, so 24 g/L are missing: M = s − S0 = 24 − 0 = 24 g/L as sucrose.",
    "50 hL are 5 000 L: V0 = V·100 = 50·100 = 5000 L.",
    "Each kg of dissolved sugar takes 0.625 L, so a litre of filled bottle holds 15 mL of sugar and, beside it: b = 1000 − s·d = 1000 − 24·0.625 = 985 mL.",
    "Sucrose to weigh: m = V0·(s − S0)/(1000 − s·d) = 5000·(24 − 0)/(1000 − 24·0.625) = 121.83 kg of sucrose.",
    "d = 0.625 L/kg, liquid displaced by dissolved sugar: trade handbooks (0.625 and 0.63); 0.617 to 0.631 derived from ICUMSA (read).",
    "Sources: mass balance (derived).",
  ]);
  const { result } = working("TIRAGE.SUGAR", 50, 24);
  expect(Math.abs((result as number) - 120_000 / 985)).toBeLessThan(1e-11);
});

/*
 * By hand: S0 = 1·342.297/360.312 = 0.95000. Missing 23.050. 5000·23.050/985 = 117.005 kg.
 */
test("the wine's own sugar is first counted as sucrose", () => {
  const own = working("TIRAGE.SUGAR", 50, 24, 1);
  expect(step(own, "S0")).toMatchObject({ equation: "S0 = S/inv", numbers: "1/1.0526", shown: "0.95000" });
  expect(step(own, "m")).toMatchObject({ numbers: "5000·(24 − 0.95000)/(1000 − 24·0.625)", shown: "117.01" });
});

/*
 * By hand at 20 °C, where the exponent is 0: c = 24·0.514285·0.95 = 11.7257; A = 10.5·0.985 + 24·1.05263/16.83 =
 * 11.8436; kH = 1.951·(0.86 − 0.118436) = 1.44679; H = 529.31/30/293.15 = 0.060186; p = 11.7257/1.50698 = 7.7810;
 * P = 7.7810 + 0.79 − 1.01325 = 7.5577.
 */
test("TIRAGE.PRESSURE(24, 20, 10.5) from the dose to the gauge", () => {
  const pressure = working("TIRAGE.PRESSURE", 24, 20, 10.5);
  const by = (symbol: string) => Number(step(pressure, symbol).result);
  expect(by("c")).toBeCloseTo(11.7257, 3);
  expect(by("A")).toBeCloseTo(11.8436, 3);
  expect(by("kH")).toBeCloseTo(1.44679, 4);
  expect(by("H")).toBeCloseTo(0.060186, 5);
  expect(by("p")).toBeCloseTo(7.781, 3);
  expect(step(pressure, "P").numbers).toMatch(/^7\.78\d+ \+ 0\.79 − 1\.01325$/u);
  expect(by("P")).toBeCloseTo(7.5577, 3);
  expect(pressure.constants.map(({ symbol }) => symbol)).toEqual(
    expect.arrayContaining(["Y", "h", "y0", "inv", "F", "d", "N20", "Patm", "ΔH", "k20"]),
  );
  expect(pressure.constants.find(({ symbol }) => symbol === "F")!.source.mark).toBe("memory");
  expect(pressure.caution).toMatch(/glass maker's own rating/u);
  expect(pressure.caution).not.toMatch(/interpolation/u);
  expect(working("TIRAGE.PRESSURE", 24, 35, 10.5).caution).toMatch(
    /interpolation, sure from 0 to 30 °C; 35 °C/u,
  );
});

test("answers that are a root say so, and the root is put back in", () => {
  const brix = working("SUGAR.BRIX", 470.6);
  expect(step(brix, "B").what).toMatch(/found by bisection/u);
  expect(step(brix, "s").what).toMatch(/put back in/u);
  expect(Number(step(brix, "s").result)).toBeCloseTo(470.6, 9);
  const progress = working("TIRAGE.PROGRESS", 4, 12, 24, 11);
  expect(step(progress, "x").what).toMatch(/root of a square equation/u);
  const last = progress.steps.at(-1)!;
  expect(last.what).toMatch(/which is the reading/u);
  expect(Number(last.result)).toBeCloseTo(4, 9);
});

test("inverses are put back in, too", () => {
  const check = (id: string, ...args: unknown[]) =>
    working(id, ...args).steps.find(({ what }) => what.startsWith("Check"))!;
  expect(Number(check("TIRAGE.DOSE", 6, 12, 11).result)).toBeCloseTo(6, 9);
  expect(Number(check("TIRAGE.YIELD", 5.25, 10, 24, 10.5).result)).toBeCloseTo(5.25, 9);
});

test("one page, however long the curve or the range", () => {
  expect(working("TIRAGE.CURVE", 24, 10.5, -5, 45, 0.26).steps.length).toBeLessThan(40);
  const targets = Array.from({ length: 500 }, (_, index) => [index / 10]);
  expect(working("DOSAGE.TRIAL", 750, 0, 600, targets).steps.length).toBeLessThan(60);
});
