import fc from "fast-check";
import { LEAST_SHARE, costPicture, costShares } from "../../../src/taskpane/drawings/geometry-cost";
import { WIDTH, isInside } from "../../../src/taskpane/drawings/geometry-labels";
import { NECK_AREA, NECK_FRAME, neckPicture, stacked } from "../../../src/taskpane/drawings/geometry-neck";
import { timelinePicture } from "../../../src/taskpane/drawings/geometry-timeline";
import type { Point } from "../../../src/taskpane/drawings/svg";
import { PART_KEYS, type Part } from "../../../src/workbook/plan/cost-parts";
import { allFinite, expectApart } from "./layout";
import { SEED } from "../../support/fuzz";

/** By the shoelace formula. */
const areaOf = (points: readonly Point[]) =>
  Math.abs(
    points.reduce((sum, [x, y], index) => {
      const [nextX, nextY] = points[(index + 1) % points.length]!;
      return sum + x * nextY - nextX * y;
    }, 0),
  ) / 2;

describe("neck", () => {
  const texts = {
    nameOf: String,
    valueOf: (ml: number) => `${ml.toFixed(2)} mL`,
    room: "Room",
    noRoom: "No room",
  };
  const ml = fc.double({ min: 0.01, max: 999, noNaN: true });
  const zeroOr = fc.oneof(fc.constant(0), ml);
  const given = fc.record({ room_mL: fc.oneof(fc.constant(null), zeroOr), dosage_mL: zeroOr });

  test("areas are as the volumes, to a thousand millionth", () => {
    fc.assert(
      fc.property(given, (volumes) => {
        const picture = neckPicture(volumes, texts);
        const total = Math.max(volumes.room_mL ?? 0, volumes.dosage_mL);
        for (const { corners, volume_mL } of picture.volumes) {
          expect(Math.abs(areaOf(corners) / NECK_AREA - volume_mL / total)).toBeLessThan(1e-9);
        }
        if (total > 0)
          expect(picture.volumes.reduce((sum, each) => sum + areaOf(each.corners), 0)).toBeCloseTo(
            NECK_AREA,
            6,
          );
      }),
      { seed: SEED },
    );
  });

  test("all is finite and inside, no text over another", () => {
    fc.assert(
      fc.property(given, (volumes) => {
        const picture = neckPicture(volumes, texts);
        expect(allFinite(picture)).toBe(true);
        const labels = picture.volumes.flatMap(({ name, value }) => [name, value]);
        expectApart([...labels, ...picture.spanTexts], NECK_FRAME);
      }),
      { seed: SEED },
    );
  });

  test("the fill wanted is where the room ends: above the wine for top-up, below what does not fit", () => {
    const fits = neckPicture({ room_mL: 18, dosage_mL: 9 }, texts);
    expect(fits.volumes.map(({ part }) => part)).toEqual(["dosage", "topUp"]);
    expect(Math.min(...fits.volumes[1]!.corners.map(([, y]) => y))).toBeCloseTo(fits.fillY, 9);
    const not = neckPicture({ room_mL: 5, dosage_mL: 9 }, texts);
    expect(not.volumes.map(({ part }) => part)).toEqual(["dosage", "tooMuch"]);
    expect(Math.max(...not.volumes[1]!.corners.map(([, y]) => y))).toBeCloseTo(not.fillY, 9);
  });

  test("what has no volume is left out", () => {
    expect(stacked({ room_mL: 18, dosage_mL: 0 })).toEqual([{ part: "topUp", volume_mL: 18 }]);
    expect(stacked({ room_mL: 9, dosage_mL: 9 })).toEqual([{ part: "dosage", volume_mL: 9 }]);
    expect(stacked({ room_mL: null, dosage_mL: 9 })).toEqual([{ part: "tooMuch", volume_mL: 9 }]);
    expect(stacked({ room_mL: 0, dosage_mL: 0 })).toEqual([]);
  });
});

describe("cost", () => {
  const money = fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 1e6, noNaN: true }));
  const costs = fc
    .tuple(...PART_KEYS.map(() => money))
    .map(
      (all) => Object.fromEntries(PART_KEYS.map((key, index) => [key, all[index]])) as Record<Part, number>,
    );

  test("the shares are all of it, the greatest first, the small ones together and last", () => {
    fc.assert(
      fc.property(costs, (given) => {
        const shares = costShares(given, 100);
        const total = Object.values(given).reduce((sum, each) => sum + each, 0);
        if (total === 0) return expect(shares).toEqual([]);
        expect(shares.reduce((sum, each) => sum + each.share, 0)).toBeCloseTo(1, 9);
        expect(shares.reduce((sum, each) => sum + each.perBottle, 0) / total).toBeCloseTo(1 / 100, 9);
        const named = shares.filter(({ part }) => part !== "other");
        named.forEach(({ share }, index) => {
          expect(share).toBeGreaterThanOrEqual(LEAST_SHARE);
          if (index > 0) expect(share).toBeLessThanOrEqual(named[index - 1]!.share);
        });
        expect(shares.slice(0, -1).some(({ part }) => part === "other")).toBe(false);
      }),
      { seed: SEED },
    );
  });

  test("the bar is cut as the shares are, and its numbers stand apart", () => {
    fc.assert(
      fc.property(costs, (given) => {
        const shares = costShares(given, 100);
        const { pieces, height } = costPicture(shares);
        expect(allFinite(pieces)).toBe(true);
        const whole = pieces.reduce((sum, { box }) => sum + box.width * box.height, 0);
        pieces.forEach(({ box }, index) => {
          expect(Math.abs((box.width * box.height) / whole - shares[index]!.share)).toBeLessThan(1e-9);
          expect(isInside(box, { left: 0, top: 0, width: WIDTH, height })).toBe(true);
        });
        expectApart(
          pieces.map(({ number }) => number),
          { left: 0, top: 0, width: WIDTH, height },
        );
      }),
      { seed: SEED },
    );
  });
});

describe("timeline", () => {
  const day = fc.integer({ min: 0, max: 36_500 });
  const wishes = fc.record({
    days: fc.array(day, { minLength: 1, maxLength: 11 }),
    span: fc.tuple(day, day),
    months: fc.integer({ min: 0, max: 1200 }),
  });

  test("all is finite and inside, in order, no text over another", () => {
    fc.assert(
      fc.property(wishes, ({ days, span: [from, to], months }) => {
        const events = [...days]
          .sort((a, b) => a - b)
          .map((each) => ({ day: each, name: "Earliest disgorging", date: "14 de set. de 2027" }));
        const last = Math.max(...days, from, to);
        const picture = timelinePicture({
          events,
          spans: [{ name: "lees", from, to }],
          dayOfMonth: (month) => (months === 0 ? 0 : (month / months) * last),
          months,
          unit: "Months",
          number: String,
        });
        const frame = { left: 0, top: 0, width: WIDTH, height: picture.height };
        expect(allFinite(picture)).toBe(true);
        const texts = picture.events.flatMap(({ name, date }) => [name, date]);
        expectApart([...texts, ...picture.tickNames], frame);
        const inBar = ({ y }: { y: number }) =>
          y >= picture.bar.top && y <= picture.bar.top + picture.bar.height + 1e-9;
        expect(picture.events.every(inBar)).toBe(true);
        picture.events.forEach(({ y }, index) => {
          if (index > 0) expect(y).toBeGreaterThanOrEqual(picture.events[index - 1]!.y);
        });
      }),
      { seed: SEED },
    );
  });

  test("days are to scale", () => {
    const picture = timelinePicture({
      events: [0, 30, 60].map((each) => ({ day: each, name: "", date: "" })),
      spans: [{ name: "lees", from: 0, to: 15 }],
      dayOfMonth: (month) => month * 30,
      months: 2,
      unit: "Months",
      number: String,
    });
    const [first, middle, last] = picture.events.map(({ y }) => y);
    expect(middle! - first!).toBeCloseTo(last! - middle!, 9);
    expect(picture.spans[0]!.height).toBeCloseTo((last! - first!) / 4, 9);
    expect(picture.ticks.map(({ y }) => y)).toEqual([first, middle, last]);
  });
});
