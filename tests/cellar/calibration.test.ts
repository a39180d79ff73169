import { pressureCurve, shareFermented, yieldFromReading } from "../../src/cellar/calibration";
import { expectedPressure, pressureAtShare } from "../../src/cellar/carbonation";
import { convertPressure } from "../../src/cellar/pressure-units";
import { racksNeeded, riddlingHours, riddlingSchedule } from "../../src/cellar/riddling";
import { excessBar, sucroseGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

const wine = { baseAlcoholVol: 10.5, headspacePct: 10 / 3, dissolvedCo2GL: 0.4 };
const fill = { ...wine, dose: sucroseGL(24), yieldShare: 0.95 };

test("the share fermented is found again from its pressure, both ends included", () => {
  for (const t of [-5, 12, 45])
    for (let share = 0; share <= 1; share += 0.05)
      expect(shareFermented(pressureAtShare(fill, t, share), t, fill)).toBeCloseTo(share, 10);
});

test("a reading that the bottle cannot show is refused", () => {
  const all = expectedPressure(fill, 12);
  expectRefusal(() => shareFermented(excessBar(all + 0.01), 12, fill), {
    argument: "reading_bar",
    given: all + 0.01,
    remedy: `to ${all.toFixed(2)} bar at 12 °C, from no sugar fermented to all`,
  });
  expect(() => shareFermented(excessBar(-0.9), 12, fill)).toThrow(/^reading_bar is -0.9; this bottle shows/u);
});

test("the yield is found again from the pressure it makes, both ends included", () => {
  for (let t = -5; t <= 45; t += 0.5)
    for (const yieldShare of [0.5, 0.87, 1]) {
      const reading = expectedPressure({ ...fill, yieldShare }, t);
      expect(yieldFromReading(reading, t, { ...wine, dose: sucroseGL(24) })).toBeCloseTo(yieldShare, 10);
    }
});

test("no yield explains too high a reading, nor any reading without sugar", () => {
  expect(() => yieldFromReading(excessBar(9), 10, fill)).toThrow(
    /^reading_bar is 9; yields of 0.5 to 1 give/u,
  );
  expectRefusal(() => yieldFromReading(excessBar(0), 10, { ...wine, dose: sucroseGL(0) }), {
    argument: "dose_gL",
    given: 0,
    remedy: "give more than 0",
  });
});

test("the curve takes both ends, and counts a step that misses the last by a float's tail", () => {
  const celsius = (from: number, to: number, step: number) =>
    pressureCurve(fill, from, to, step).map(([degrees]) => degrees);
  expect(celsius(0, 30, 5)).toEqual([0, 5, 10, 15, 20, 25, 30]);
  expect(celsius(0, 0.3, 0.1)).toHaveLength(4);
  expect(celsius(0, 12, 5)).toEqual([0, 5, 10]);
  expect(celsius(7, 7, 5)).toEqual([7]);
  expect(celsius(0, 19.9, 0.1)).toHaveLength(200);
  expectRefusal(() => celsius(0, 20, 0.1), {
    argument: "step_C",
    given: 0.1,
    remedy: "201 rows, at most 200",
  });
  expectRefusal(() => celsius(10, 9, 1), { argument: "to_C", given: 9, remedy: "the lower end, 10 °C" });
  for (const [degrees, pressure] of pressureCurve(fill, 0, 30, 5))
    expect(pressure).toBe(expectedPressure(fill, degrees));
});

test("pressure units: exact definitions", () => {
  // 1 psi = 6894.757 Pa, 1 kgf/cm² = 98066.5 Pa, 1 atm = 101325 Pa
  expectPrinted(convertPressure(1, "psi", "kPa"), "6.894757");
  expectPrinted(convertPressure(1, "kgf/cm2", "bar"), "0.980665");
  expectPrinted(convertPressure(1, "atm", "kPa"), "101.325");
  expectPrinted(convertPressure(6, "bar", "BAR ABS"), "7.01325");
  expectPrinted(convertPressure(5, "atm abs", "bar"), "4.05300");
  expectRelative(convertPressure(convertPressure(6, "bar", "psi abs"), "psi abs", "bar"), 6, 1e-14);
  expect(convertPressure(0, "bar abs", "atm")).toBeCloseTo(-1, 14);
  expectRefusal(() => convertPressure(-0.1, "kPa abs", "bar"), {
    argument: "value",
    given: -0.1,
    remedy: "below vacuum",
  });
  expectRefusal(() => convertPressure(1, "bar", "Pa"), {
    argument: "to_unit",
    given: "Pa",
    remedy: "give one of: bar, kPa, atm, psi, kgf/cm2",
    kind: "domain",
  });
});

test("riddling: an eighth, then quarters to and fro, from nearly flat to nearly upright", () => {
  const turns = riddlingSchedule(46_000, 4, 2);
  expect(turns.map(({ eighths }) => eighths)).toEqual([1, -2, 2, -2, 2, -2, 2, -2]);
  expect(turns.map(({ mark }) => mark)).toEqual([1, -1, 1, -1, 1, -1, 1, -1]);
  expect(turns.map(({ date }) => date - 46_000)).toEqual([0, 0, 1, 1, 2, 2, 3, 3]);
  expect(turns.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  const angles = turns.map(({ rackDegrees }) => rackDegrees);
  for (let turn = 1; turn < 8; turn++) expectRelative(angles[turn]! - angles[turn - 1]!, 60 / 7, 1e-12);
  expect([angles[0], angles[7]]).toEqual([15, 75]);
});

test("racks and hours", () => {
  expect([racksNeeded(120, 120), racksNeeded(121, 120), racksNeeded(0, 120)]).toEqual([1, 2, 0]);
  expectRelative(riddlingHours(6600, 14, 6000), 15.4, 1e-14);
});
