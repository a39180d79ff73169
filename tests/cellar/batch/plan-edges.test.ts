/**
 * Ends of the plan: what cannot be planned and why, and the last that still can. The worked batch is that of plan.test.ts.
 */
import { UnplannableBatch } from "../../../src/cellar/batch/attempt";
import type { Problem } from "../../../src/cellar/batch/problem";
import { invertGL, invertToSucrose } from "../../../src/cellar/units";
import { expectPrinted } from "../../support/relative";
import { planOf, type Sections } from "./worked-batch";

function problemsOf(changes: Sections): readonly Problem[] {
  try {
    planOf(changes);
  } catch (error) {
    if (error instanceof UnplannableBatch) return error.problems;
    throw error;
  }
  throw new Error("it was planned");
}

describe("tirage", () => {
  const byPressure = (pressure_bar: number) => ({ goal: "pressure", pressure_bar, pressureAt_C: 20 });

  test("a pressure that takes less sugar than the wine holds names the pressure", () => {
    const [problem, ...more] = problemsOf({ baseWine: { sugar_gL: 30 }, tirage: byPressure(3) });
    expect(more).toEqual([]);
    expect([problem!.field, problem!.given]).toEqual(["tirage.pressure_bar", 3]);
    // 30/1.05263 = 28.50
    expect(problem!.remedy).toMatch(
      /^that takes \d+\.\d\d g\/L of sugar, and the wine already holds 28\.50 g\/L as sucrose; aim for more pressure or take a drier wine$/u,
    );
  });

  test("the sugar it takes is told: that which gives the pressure as a dose", () => {
    const { remedy } = problemsOf({ baseWine: { sugar_gL: 30 }, tirage: byPressure(3) })[0]!;
    const dose = Number(/takes ([\d.]+) g/u.exec(remedy)![1]);
    const { expected } = planOf({ tirage: { dose_gL: dose } }).tirage.pressures.at20;
    // half a hundredth of a g/L is some 0.0016 bar
    expect(Math.abs(expected - 3)).toBeLessThan(0.002);
  });

  test("a pressure that takes just the sugar of the wine needs none", () => {
    // no sugar at all: 0.79 bar of nitrogen at 20 °C, less 1.01325
    const { tirage } = planOf({ tirage: byPressure(-0.22325), disgorging: { pressureLost_bar: 0 } });
    expect([tirage.dose, tirage.sugarKg, tirage.volumeHl]).toEqual([0, 0, 100]);
  });

  test("a liqueur weaker than its own wine is named, though none of it is needed", () => {
    // the dose is the wine's own sugar, 20 · 342.297/360.312 g/L as sucrose
    const dose_gL = invertToSucrose(invertGL(20));
    const tirage = { dose_gL, sugarForm: "liqueur", liqueur_gL: 10 };
    const problems = problemsOf({ baseWine: { sugar_gL: 20 }, tirage });
    expect(problems.map(({ field, given }) => [field, given])).toEqual([["tirage.liqueur_gL", 10]]);
    expect(problems[0]!.remedy).toMatch(
      /^the carrier alone has 19\.00003 g\/L; give a strength of at least that$/u,
    );
  });

  test("wine lost at filling fills no bottles: 10 152.284 L · 0.98/0.75 L", () =>
    // 13 265.65
    expect(planOf({ tirage: { loss_pct: 2 } }).tirage.bottles).toBe(13_265));
});

test("a batch that ends after the last day of the calendar names its tirage", () =>
  expect(problemsOf({ batch: { tirageDate: "9999-12-31" } })).toEqual([
    {
      field: "batch.tirageDate",
      given: "9999-12-31",
      remedy: "9 months later lies beyond the calendar; give an earlier date",
    },
  ]));

describe("disgorging", () => {
  test("more pressure lost than there is above vacuum is refused", () =>
    // 7.508 bar of excess pressure and 1.013 of the atmosphere
    expect(problemsOf({ disgorging: { pressureLost_bar: 9 } })).toEqual([
      {
        field: "disgorging.pressureLost_bar",
        given: 9,
        remedy: "only 7.51 bar are there at 20 °C; give less",
      },
    ]));

  test("as long as something is above vacuum it is planned, and below the range of classes without one", () => {
    // 7.508 − 8.51 = −1.002 bar, and classes are asked from −1 bar
    const { dosage } = planOf({ disgorging: { pressureLost_bar: 8.51 } });
    expectPrinted(dosage.pressureAt20, "-1.002");
    expect(dosage.pressureClass).toBeNull();
  });

  test("a liqueur that needs more than the room leaves nothing to top up", () =>
    // 9.500 mL into 9 mL
    expect(planOf({ disgorging: { lost_mL: 9 } }).dosage.topUpMl).toBeNull());
});

describe("a stock of liqueur", () => {
  test("by hand: 10 L at 9.5 mL dose 1052 bottles", () =>
    // 10 000/9.500 = 1052.6
    expect(planOf({ dosage: { stock_L: 10 } }).dosage.stockBottles).toBe(1052));

  test("that was not given limits nothing", () =>
    expect(planOf({ dosage: { stock_L: null } }).dosage.stockBottles).toBeNull());

  test("limits nothing where none of it is needed", () =>
    expect(planOf({ dosage: { stock_L: 10, residual_gL: 8 } }).dosage.stockBottles).toBeNull());

  test("of nothing doses no bottle", () =>
    expect(planOf({ dosage: { stock_L: 0 } }).dosage.stockBottles).toBe(0));

  test("that doses more bottles than a number can hold is named", () =>
    expect(problemsOf({ dosage: { stock_L: 1e7, target_gL: 1e-300 } })).toEqual([
      {
        field: "dosage.stock_L",
        given: 1e7,
        remedy: "a bottle takes next to nothing; give a higher target",
      },
    ]));
});

test("a target that is the wine's own sweetness takes no liqueur, and no sugar was added", () => {
  const { dosage } = planOf({ dosage: { residual_gL: 8 } });
  expect([dosage.eachMl, dosage.batchL, dosage.sugarGL, dosage.sugarAdded]).toEqual([0, 0, 8, false]);
});

describe("riddling", () => {
  test("that would begin before the calendar has no turns to list", () =>
    // 1 March 1900 less the 20 days of waiting and turning
    expect(
      planOf({ batch: { tirageDate: "1900-03-01" }, lees: { lees_months: 0, rest_months: 0 } }).riddling
        .schedule,
    ).toEqual([]));
});

describe("readings", () => {
  const stateOf = (...lines: readonly (readonly [date: string, pressure_bar: number])[]) =>
    Object.values(
      planOf({
        readings: Object.fromEntries(
          lines.map(([date, pressure_bar], index) => [
            `r${index + 1}`,
            { date, pressure_bar, at_C: 20 } as const,
          ]),
        ),
      }).readings,
    ).map(({ state }) => state);

  test("one that the bottle cannot show is nothing to compare a later one with", () =>
    // a fortnight later some 0.06 bar above the nitrogen's −0.223, so less than 2 points: not stuck, for the
    // first could have been anything
    expect(stateOf(["2024-06-10", -0.9], ["2024-06-24", -0.16]).slice(0, 2)).toEqual([
      "check it",
      "still working",
    ]));

  test("the same pressure after one that could be read is stuck", () =>
    expect(stateOf(["2024-06-10", -0.17], ["2024-06-24", -0.16])[1]).toBe("stuck"));

  test("one at the high end of the bottles is not too high, a trace more is", () => {
    const { high } = planOf().tirage.pressures.at20;
    expect(stateOf(["2024-09-01", high])[0]).toBe("finished");
    expect(stateOf(["2024-09-01", high + 1e-9])[0]).toBe("too high");
  });
});

describe("planned and actual", () => {
  test("a temperature without its pressure is refused", () =>
    expect(() => planOf({ actual: { pressureAt_C: 20 } })).toThrow(/actual\.pressure_bar/));

  test("a cost alone, or bottles alone, make no cost of a bottle", () => {
    expect(planOf({ actual: { cost: 40_000 } }).actual.perBottle.actual).toBe("");
    expect(planOf({ actual: { bottlesFinished: 13_300 } }).actual.perBottle.actual).toBe("");
  });
});
