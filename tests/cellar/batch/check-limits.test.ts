/**
 * What a check shows beside its verdict, and verdicts at the very limit, on the batch that plan.test.ts works out.
 */
import { checkFound } from "../../../src/cellar/batch/check-words";
import { NO_LIMIT, NO_ROOM } from "../../../src/cellar/batch/checks";
import { NO_TERM } from "../../../src/cellar/batch/plan-dosage";
import { planOf, type Sections } from "./worked-batch";

const checksOf = (changes: Sections) => planOf(changes).checks;

test("SO2 that was not given shows its limit, where the rules have one", () => {
  const blank = { baseWine: { totalSO2_mgL: null } };
  expect(checksOf(blank).totalSo2).toEqual({ value: "", limit: 185, verdict: "look again" });
  expect(checksOf({ ...blank, batch: { rules: "OIV" } }).totalSo2.limit).toBe(NO_LIMIT);
});

test("a bath just as cold as the wine freezes is not too warm", () => {
  const { freezingPointC } = planOf().dosage;
  expect(checksOf({ disgorging: { neckBath_C: freezingPointC } }).neckBath.verdict).toBe("look again");
});

test("where more wine is left than is wanted there is no room, and what the dosage takes is shown", () => {
  const { checks, dosage } = planOf({ disgorging: { filled_mL: 771 } });
  expect(checks.room).toEqual({ value: dosage.eachMl, limit: NO_ROOM, verdict: "stop" });
});

test("a batch without a dosage still has no room where more wine is left than is wanted", () => {
  const { checks } = planOf({ disgorging: { filled_mL: 771 }, dosage: { kind: "none", term: "" } });
  expect(checks.room).toEqual({ value: 0, limit: NO_ROOM, verdict: "stop" });
});

test("without a term there is no margin to show, only what is asked of one", () =>
  expect(checksOf({ dosage: { term: "" } }).termMargin).toEqual({
    value: NO_TERM,
    limit: 1,
    verdict: "look again",
  }));

test("a cellar at 0 °C is still in the range of the model", () =>
  expect(checksOf({ tirage: { cellar_C: 0 } }).modelRange.verdict).toBe("fine"));

test("exactly 3 bar are sparkling, so only the class of the low end is asked after", () => {
  const under = planOf().tirage.pressures.at20.expected;
  const { dosage, checks } = planOf({ disgorging: { pressureLost_bar: under - 3 } });
  expect(dosage.pressureAt20).toBe(3);
  expect(checks.pressureClass.verdict).toBe("look again");
});

test("each check of a section's inputs finds none at fault", () =>
  expect(checksOf({}).costsInputs).toEqual({ value: 0, limit: 0, verdict: "fine" }));

describe("the state of the readings", () => {
  const read = (...lines: readonly (readonly [date: string, pressure_bar: number])[]) =>
    checksOf({
      readings: Object.fromEntries(
        lines.map(([date, pressure_bar], index) => [`r${index + 1}`, { date, pressure_bar, at_C: 20 }]),
      ),
    }).readingsState;

  test("is none before a gauge was read", () =>
    expect(read()).toEqual({ value: "none yet", limit: NO_LIMIT, verdict: "fine" }));

  test("is that of the latest line", () =>
    // half the sugar makes 3.674 bar, all of it 7.508 (lees.test.ts)
    expect(read(["2024-06-10", 3.67373], ["2024-09-01", 7.4])).toMatchObject({
      value: "finished",
      verdict: "fine",
    }));

  test("is to be looked at where the fermentation is stuck", () =>
    // a point more after a fortnight
    expect(read(["2024-06-10", 3.67373], ["2024-06-24", 3.75])).toMatchObject({
      value: "stuck",
      verdict: "look again",
    }));
});

test.each([
  [9.3882, 9.387, "stop", "9.39"],
  [9.3952, 9.398, "fine", "9.395"],
  [9.3921, 9.39, "stop", "9.392"],
  [9.39, 9.39, "fine", "9.39"],
  [3.14159, 9, "stop", "3.14"],
] as const)("%d against %d is shown on its side of the limit", (value, limit, verdict, shown) =>
  expect(checkFound("room", { value, limit, verdict })).toBe(
    `Liqueur a bottle, room in the neck for ${limit} mL: ${shown}`,
  ),
);
