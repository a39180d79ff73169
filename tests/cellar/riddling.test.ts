/**
 * Riddling by hand, worked from the trade's description: a mark at six o'clock; first an eighth one way, then a quarter
 * the other way and back, turn after turn, while the rack goes from nearly flat to nearly upright (common practice).
 */
import { riddlingSchedule } from "../../src/cellar/riddling";
import { riddlingLabour, riddlingRacks, riddlingScheduleRows } from "../../src/functions/riddling";
import { expectRefusal } from "./refusing";

test("four days, a turn a day: an eighth, then quarters back and forth; 15°, 35°, 55°, 75°", () => {
  expect(riddlingScheduleRows(46_000, 4)).toEqual([
    [46_000, 1, 1, 1, 15],
    [46_001, 2, -2, -1, 35],
    [46_002, 3, 2, 1, 55],
    [46_003, 4, -2, -1, 75],
  ]);
});

test("two turns a day: both fall on the same date", () => {
  const turns = riddlingSchedule(46_000, 5, 2);
  expect(turns.map(({ date }) => date - 46_000)).toEqual([0, 0, 1, 1, 2, 2, 3, 3, 4, 4]);
  expect(turns.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
});

test.each([4, 14, 60])(
  "%d days: the mark is never more than an eighth off six o'clock, and the rack only rises",
  (days) => {
    const turns = riddlingSchedule(46_000, days, 1);
    expect(turns).toHaveLength(days);
    let mark = 0;
    for (const [index, turn] of turns.entries()) {
      mark += turn.eighths;
      expect(turn.mark).toBe(mark);
      expect(Math.abs(mark)).toBe(1);
      expect(Math.abs(turn.eighths)).toBe(index === 0 ? 1 : 2);
      if (index > 0) expect(turn.rackDegrees).toBeGreaterThan(turns[index - 1]!.rackDegrees);
    }
    expect([turns[0]!.rackDegrees, turns.at(-1)!.rackDegrees]).toEqual([15, 75]);
  },
);

test("left blank: fourteen days, one turn a day", () => {
  expect(riddlingScheduleRows(46_000)).toHaveLength(14);
});

test("the last day lies in the calendar, or the start is refused", () => {
  expect(riddlingSchedule(2_958_465 - 3, 4, 1).at(-1)!.date).toBe(2_958_465);
  expectRefusal(() => riddlingSchedule(2_958_465 - 2, 4, 1), {
    argument: "start_date",
    given: 2_958_463,
    remedy: "4 days later lies beyond the calendar; give an earlier date",
  });
});

test("racks of 120 (read), cages of 504 (read): a rest takes one more", () => {
  expect([riddlingRacks(6600), riddlingRacks(6601), riddlingRacks(0), riddlingRacks(120)]).toEqual([
    55, 56, 0, 1,
  ]);
  expect([riddlingRacks(504, 504), riddlingRacks(505, 504)]).toEqual([1, 2]);
});

test("hours: 6600 bottles · 14 turns at 6000 an hour", () => {
  expect(riddlingLabour(6600, 14, 6000)).toBeCloseTo(15.4, 12);
  expect(riddlingLabour(6600, 0, 6000)).toBe(0);
});
