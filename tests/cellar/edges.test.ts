/**
 * The last value that still counts and the first that does not, where a test of the function's own has other aims.
 */
import { addMonths, isoFromSerial, serialFromDate, serialFromIso } from "../../src/cellar/ageing";
import { shareFermented, yieldFromReading } from "../../src/cellar/calibration";
import {
  expectedPressure,
  pressureAtShare,
  pressureRange,
  shiftPressure,
  type Fill,
} from "../../src/cellar/carbonation";
import { packsToOrder } from "../../src/cellar/costing";
import { fillErrorRow } from "../../src/cellar/label";
import { convertPressure } from "../../src/cellar/pressure-units";
import { isRefusal, wordGiven } from "../../src/cellar/refusal";
import { riddlingHours } from "../../src/cellar/riddling";
import { bisect } from "../../src/cellar/root";
import { lowestSparkling } from "../../src/cellar/rules/pressure-classes";
import { sweetnessRules } from "../../src/cellar/rules/sweetness-bands";
import { pressureSlopes } from "../../src/cellar/spread";
import { brixFromStrength, strengthFromBrix } from "../../src/cellar/sugar";
import { sweetnessVerdict } from "../../src/cellar/sweetness";
import { excessBar, invertGL, sucroseGL } from "../../src/cellar/units";
import { expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

const fill: Fill = {
  dose: sucroseGL(24),
  baseAlcoholVol: 10.5,
  yieldShare: 0.95,
  headspacePct: 10 / 3,
  dissolvedCo2GL: 0.4,
};

describe("dates", () => {
  // ISO 8601 writes a year in four digits
  test("a year before 1000 keeps its zero", () => {
    expect(isoFromSerial(serialFromDate(987, 7, 3))).toBe("0987-07-03");
    expect(serialFromIso("0987-07-03")).toBe(serialFromDate(987, 7, 3));
  });

  test("the last day of the calendar can end a period", () =>
    expect(isoFromSerial(addMonths(serialFromDate(9999, 11, 30), 1))).toBe("9999-12-30"));

  test("no months after the last day is the last day", () => expect(addMonths(2_958_465, 0)).toBe(2_958_465));

  test("a month later lies beyond it", () =>
    expectRefusal(() => addMonths(2_958_465, 1), {
      argument: "tirage_date",
      given: 2_958_465,
      remedy: /^1 months later lies beyond the calendar; give an earlier date$/u,
    }));
});

describe("readings", () => {
  test("those of no sugar fermented and of all are 0 and 1 exactly", () => {
    for (const t of [-5, 12, 45]) {
      expect(shareFermented(pressureAtShare(fill, t, 0), t, fill)).toBe(0);
      expect(shareFermented(pressureAtShare(fill, t, 1), t, fill)).toBe(1);
    }
  });

  test("one too high says what to look at and where to go on", () =>
    expectRefusal(() => shareFermented(excessBar(15), 12, fill), {
      argument: "reading_bar",
      given: 15,
      remedy: /; check the temperature and the dose, or take TIRAGE\.YIELD if it has finished$/u,
    }));

  test("one that no yield explains says what to look at", () =>
    expectRefusal(() => yieldFromReading(excessBar(15), 12, fill), {
      argument: "reading_bar",
      given: 15,
      remedy: / bar at 12 °C; check the temperature, the dose and whether it has finished$/u,
    }));
});

describe("a closed bottle", () => {
  const empty = { headspacePct: 5, nitrogenBar: 0 };

  test("without CO2 and nitrogen stays at vacuum, warm or cold", () => {
    for (const toC of [-5, 20, 45])
      expect(shiftPressure(excessBar(-1.01325), 20, toC, 12, invertGL(0), empty)).toBe(-1.01325);
  });

  test("cannot hold less than its nitrogen", () =>
    // 0.79 bar at 20 °C, less the atmosphere
    expectRefusal(
      () => shiftPressure(excessBar(-0.23), 20, 10, 12, invertGL(0), { headspacePct: 5, nitrogenBar: 0.79 }),
      {
        argument: "pressure_bar",
        given: -0.23,
        remedy: /^the nitrogen alone makes -0\.22 bar at 20 °C; give at least that$/u,
      },
    ));
});

describe("numbers beyond what a number can hold", () => {
  test("packs", () =>
    expectRefusal(() => packsToOrder(1e12, 1e-300, 0), {
      argument: "pack_size",
      given: 1e-300,
      remedy: /^more packs than can be counted; give a larger pack$/u,
    }));

  test("hours of riddling", () =>
    expectRefusal(() => riddlingHours(1e8, 1e4, 1e-300), {
      argument: "bottles_per_hour",
      given: 1e-300,
      remedy: /^more hours than can be counted; give a higher rate$/u,
    }));
});

describe("units of pressure", () => {
  test("a raised two is a two", () =>
    expect(convertPressure(3, "kgf/cm²", "bar")).toBe(convertPressure(3, "kgf/cm2", "bar")));

  test.each([
    ["from_unit", () => convertPressure(1, "torr", "bar"), "torr"],
    ["to_unit", () => convertPressure(1, "bar", "torr"), "torr"],
    ["from_unit", () => convertPressure(1, 5, "bar"), 5],
    ["from_unit", () => convertPressure(1, null, "bar"), null],
  ])("%s that is none is refused by its own name", (argument, call, given) =>
    expectRefusal(call, {
      argument,
      given,
      remedy: /^give one of: bar, kPa, atm, psi, kgf\/cm2; with " abs" after it/u,
      kind: "domain",
    }),
  );

  test("the lowest pressure is told in the unit given: an atmosphere is 14.69595 psi", () =>
    // 101 325 Pa over 6894.757 Pa, from the definitions
    expectRefusal(() => convertPressure(-15, "psi", "bar"), {
      argument: "value",
      given: -15,
      remedy: /^that is below vacuum; give at least -14\.69595 in this unit$/u,
    }));
});

describe("refusals", () => {
  test("a text of forty characters is quoted whole", () =>
    expect(wordGiven("x".repeat(40))).toBe(`"${"x".repeat(40)}"`));

  test("another error is none, though it carries the same parts", () =>
    expect(isRefusal(Object.assign(new Error("a"), { remedy: "", kind: "domain" }))).toBe(false));
});

describe("bisection", () => {
  // a bound whose last bit is set, so that rounding to even would leave it for its neighbour
  const ODD = 1 + Number.EPSILON;

  test("a root at or below the lower bound gives that bound and not its neighbour", () => {
    expect(bisect((x) => x - ODD, ODD, 2)).toBe(ODD);
    expect(bisect((x) => x, ODD, 2)).toBe(ODD);
  });

  test("a root at or above the upper bound gives that bound and not its neighbour", () => {
    expect(bisect((x) => x - ODD, 0, ODD)).toBe(ODD);
    expect(bisect((x) => x - 3, 0, ODD)).toBe(ODD);
  });
});

test("the strongest solution that has a °Brix is the one of 85", () =>
  expect(brixFromStrength(strengthFromBrix(85))).toBe(85));

test("a size at the end of a row of the directive's errors belongs to that row", () => {
  for (const size of [50, 100, 200, 300, 500, 1000, 10_000, 15_000])
    expect(fillErrorRow(size).uptoMl).toBe(size);
});

test.each([
  ["EU", 750, 3],
  ["EU", 200, 3],
  ["OIV", 750, 3.5],
  ["OIV", 249, 3],
  ["OIV", 250, 3.5],
  // still wine up to 3.92 g/L is no sparkling wine, nor is semi-sparkling wine from 1 bar
  ["US", 750, 3.92],
  ["AU", 750, 5],
] as const)("%s in %d mL is sparkling from %d on", (rules, bottleMl, low) =>
  expect(lowestSparkling(rules, bottleMl)).toBe(low),
);

describe("sweetness without a tolerance", () => {
  const medium = sweetnessRules.OIV.bands[3]!;

  test("a bound that belongs to the term is permitted, and a trace more is not", () => {
    expect(sweetnessVerdict(medium, invertGL(50), true)).toBe("permitted");
    expect(sweetnessVerdict(medium, invertGL(50.001), true)).toBe("not permitted");
  });

  test("a bound that does not belong to it is not permitted either", () =>
    expect(sweetnessVerdict({ ...medium, highIncluded: false }, invertGL(50), true)).toBe("not permitted"));
});

describe("the spread of the pressure", () => {
  const STEP = 1e-4;
  /** The slope through two points on either side, of a function without that formula. */
  const slope = (at: (step: number) => number) => (at(STEP) - at(-STEP)) / (2 * STEP);

  test.each([0, 12, 30])("each slope at %d °C is that of the pressure, its sign too", (celsius) => {
    const slopes = pressureSlopes(fill, celsius);
    const pressure = (change: Partial<Fill>, warmer = 0) =>
      expectedPressure({ ...fill, ...change }, celsius + warmer);
    const tolerance = 1e-6;
    expectRelative(
      slopes.perDose,
      slope((step) => pressure({ dose: sucroseGL(24 + step) })),
      tolerance,
    );
    expectRelative(
      slopes.perYield,
      slope((step) => pressure({ yieldShare: 0.95 + step })),
      tolerance,
    );
    expectRelative(
      slopes.perKelvin,
      slope((step) => pressure({}, step)),
      tolerance,
    );
    expectRelative(
      slopes.perHeadspacePct,
      slope((step) => pressure({ headspacePct: 10 / 3 + step })),
      tolerance,
    );
  });

  test("one that would reach below vacuum is refused", () =>
    // without sugar 0.79 bar of nitrogen stand above vacuum; 10 g/L of deviation are some 0.3·10·1.96 bar
    expectRefusal(
      () =>
        pressureRange({ ...fill, dose: sucroseGL(0), dissolvedCo2GL: 0 }, 20, {
          doseGL: 10,
          yieldShare: 0,
          temperatureC: 0,
          headspacePct: 0,
        }),
      {
        argument: "doseSd_gL",
        given: 10,
        remedy: /^the spread reaches below vacuum; give smaller standard deviations$/u,
      },
    ));

  test("one as wide as the pressure is high, but above vacuum, is given", () => {
    const { low, high } = pressureRange({ ...fill, dose: sucroseGL(0), dissolvedCo2GL: 0 }, 20, {
      doseGL: 1,
      yieldShare: 0,
      temperatureC: 0,
      headspacePct: 0,
    });
    // 0.79 − 1.01325 in the middle, and not below it by more than the 0.79
    expectRelative((low + high) / 2, -0.22325, 1e-12);
    expect(low).toBeGreaterThan(-1.01325);
  });
});
