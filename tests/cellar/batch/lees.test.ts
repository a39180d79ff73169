/**
 * Riddling and gauge readings of the worked batch, by hand.
 */
import { isoFromSerial } from "../../../src/cellar/ageing";
import type { ReadingPlan } from "../../../src/cellar/batch/plan-lees";
import { expectPrinted } from "../../support/relative";
import { planOf } from "./worked-batch";

describe("riddling", () => {
  test("counted back from disgorging on 28 February 2025, a week to wait, a fortnight of turns", () => {
    const { riddling } = planOf({ riddling: { bottlesPerHour: 6000 } });
    expect([riddling.start, riddling.end].map(isoFromSerial)).toEqual(["2025-02-08", "2025-02-21"]);
    // 13 536/120 = 112.8 racks; 13 536·14/6000 h; 31 May 2024 to 8 February 2025
    expect([riddling.racks, riddling.turns, riddling.daysFromTirage]).toEqual([113, 14, 253]);
    expectPrinted(riddling.hours as number, "31.584");
  });

  test("cages, two turns a day, no wait", () => {
    const { riddling } = planOf({ riddling: { places: 504, days: 10, turnsPerDay: 2, wait_days: 0 } });
    expect([riddling.start, riddling.end].map(isoFromSerial)).toEqual(["2025-02-19", "2025-02-28"]);
    expect([riddling.racks, riddling.turns, riddling.hours, riddling.schedule.length]).toEqual([
      27,
      20,
      "",
      20,
    ]);
  });

  test("its hours are paid where none are given, and those given count where they are", () => {
    const byRate = { riddling: { bottlesPerHour: 6768 } };
    // 13 536·14/6768 = 28 h at 20
    expect(planOf({ ...byRate, costs: { riddling_hours: null } }).costs.riddlingLabour).toBe(560);
    expect(planOf(byRate).costs.riddlingLabour).toBe(400);
    expect(planOf({ costs: { riddling_hours: null } }).costs.riddlingLabour).toBe(0);
  });
});

describe("gauge readings", () => {
  const readings = (
    ...lines: readonly (readonly [date: string, bar: number | null, celsius: number | null])[]
  ) =>
    planOf({
      readings: Object.fromEntries(
        lines.map(([date, pressure_bar, at_C], index) => [`r${index + 1}`, { date, pressure_bar, at_C }]),
      ),
    }).readings;
  const states = (all: Readonly<Record<string, ReadingPlan>>) => Object.values(all).map(({ state }) => state);

  test("half the sugar fermented at 20 °C", () => {
    // 9.85 + 0.75054 % vol, 12.6316 g/L of sugar: kH = 1.951·0.753995·0.981811 = 1.44427; 5.86285 g/L of CO2 over
    // 1.44427 + 0.06019 make 3.89698 bar; with 0.79 of nitrogen, less the atmosphere, 3.67373
    const { r1 } = readings(["2024-06-10", 3.67373, 20]);
    expectPrinted(r1.share as number, "0.5000");
    expectPrinted(r1.at20 as number, "3.67373");
    expectPrinted(r1.at20ByTable as number, "3.67373");
    expect(r1.state).toBe("still working");
  });

  test("the table of the official method ends at 25 °C, the physics goes on", () => {
    const { r1 } = readings(["2024-06-10", 5, 26]);
    expect(r1.at20ByTable).toBeNull();
    expect(r1.at20 as number).toBeLessThan(5);
  });

  test("stuck: less than 2 points up in 14 days; a day less, or more of a rise, is still working", () => {
    const half = ["2024-06-10", 3.67373, 20] as const;
    // the pressure rises by some 0.0736 bar a hundredth of the share: 3.67373 + 0.147 is two points
    expect(states(readings(half, ["2024-06-24", 3.75, 20])).slice(0, 2)).toEqual(["still working", "stuck"]);
    expect(states(readings(half, ["2024-06-23", 3.75, 20])).slice(0, 2)).toEqual([
      "still working",
      "still working",
    ]);
    expect(states(readings(half, ["2024-06-24", 3.85, 20]))[1]).toBe("still working");
    // without its day a line cannot be compared
    expect(states(readings(half, ["", 3.75, 20]))[1]).toBe("still working");
    expect(states(readings(["", 3.67373, 20], ["2024-06-24", 3.75, 20]))[1]).toBe("still working");
  });

  test("stuck is seen through readings in between and lines left out", () => {
    const weekly = ["2024-06-10", "2024-06-17", "2024-06-24", "2024-07-01"].map(
      (day, week) => [day, 3.67 + week * 0.01, 20] as const,
    );
    expect(states(readings(...weekly)).slice(0, 4)).toEqual([
      "still working",
      "still working",
      "stuck",
      "stuck",
    ]);
    const apart = [
      ["2024-06-10", 3.67373, 20],
      ["", null, null],
      ["2024-06-24", 3.75, 20],
    ] as const;
    expect(states(readings(...apart))[2]).toBe("stuck");
  });

  test("a reading from before the tirage is asked after", () => {
    expect(states(readings(["2024-05-30", 7.2, 20]))[0]).toBe("check it");
    expect(states(readings(["2024-05-31", 7.2, 20]))[0]).toBe("finished");
  });

  test("finished from 95 % on, above all the dose explains too, but not above the spread", () => {
    // all of it makes 7.508 bar, and the spread of the bottles reaches 0.491 further
    expect(states(readings(["2024-09-01", 7.12, 20]))[0]).toBe("still working");
    expect(states(readings(["2024-09-01", 7.2, 20]))[0]).toBe("finished");
    const { r1, r2 } = readings(["2024-09-01", 7.95, 20], ["2024-09-02", 8.05, 20]);
    expect([r1.share, r1.state, r2.state]).toEqual(["above all", "finished", "too high"]);
  });

  test("a reading that this bottle cannot show is asked after", () => {
    const { r1 } = readings(["2024-06-10", -0.9, 20]);
    expect([r1.share, r1.state]).toEqual([null, "check it"]);
  });

  test("a pressure without its temperature is refused, and the other way round", () => {
    expect(() => readings(["2024-06-10", 4, null])).toThrow(/readings\.r1\.at_C.*a pressure means nothing/);
    expect(() => readings(["2024-06-10", null, 12])).toThrow(/readings\.r1\.pressure_bar/);
  });
});
