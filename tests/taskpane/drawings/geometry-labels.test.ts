import fc from "fast-check";
import {
  apart,
  boxOf,
  isInside,
  overlap,
  placed,
  type Label,
} from "../../../src/taskpane/drawings/geometry-labels";
import { SEED } from "../../support/fuzz";

const pixels = fc.double({ min: -400, max: 700, noNaN: true });
const label: fc.Arbitrary<Label> = fc.record({
  text: fc.string({ maxLength: 20 }),
  x: pixels,
  y: pixels,
  anchor: fc.constantFrom("start", "middle", "end"),
});

describe("things in a row", () => {
  const row = fc.array(pixels, { maxLength: 12 }).map((wishes) => [...wishes].sort((a, b) => a - b));

  test("none is nearer to the next than its size, and all are between the ends", () => {
    fc.assert(
      fc.property(row, (wishes) => {
        const places = apart(wishes, 20, 0, 300);
        expect(places).toHaveLength(wishes.length);
        places.forEach((place, index) => {
          expect(place).toBeGreaterThanOrEqual(10 - 1e-9);
          expect(place).toBeLessThanOrEqual(290 + 1e-9);
          if (index > 0) expect(place - places[index - 1]!).toBeGreaterThanOrEqual(20 - 1e-9);
        });
      }),
      { seed: SEED },
    );
  });

  test("what has room stays where it was wished", () => {
    expect(apart([30, 60, 200], 20, 0, 300)).toEqual([30, 60, 200]);
  });

  test("what has none gives way to both sides alike", () => {
    expect(apart([100, 100, 250], 20, 0, 300)).toEqual([90, 110, 250]);
    expect(apart([100, 100, 115], 20, 0, 300)).toEqual([85, 105, 125]);
  });

  test("at an end it gives way inwards", () => {
    expect(apart([0, 0], 20, 0, 300)).toEqual([10, 30]);
    expect(apart([300, 300], 20, 0, 300)).toEqual([270, 290]);
  });
});

describe("labels", () => {
  const frame = { left: 0, top: 0, width: 300, height: 200 };
  const taken = [{ left: 100, top: 100, width: 50, height: 20 }];

  test("none over another or over what was there, none outside", () => {
    fc.assert(
      fc.property(fc.array(fc.array(label, { maxLength: 4 }), { maxLength: 10 }), (wishes) => {
        const boxes = placed(wishes, frame, taken).map(boxOf);
        boxes.forEach((box, index) => {
          expect(isInside(box, frame)).toBe(true);
          for (const other of [...taken, ...boxes.slice(0, index)]) expect(overlap(box, other)).toBe(false);
        });
      }),
      { seed: SEED },
    );
  });

  test("the first place that is free is taken, and who comes first has the choice", () => {
    const at = (text: string, x: number): Label => ({ text, x, y: 50, anchor: "start" });
    const found = placed([[at("one", 10)], [at("two", 12), at("two", 80)], [at("three", 11)]], frame);
    expect(found).toEqual([at("one", 10), at("two", 80)]);
  });

  test("a text grows from its anchor", () => {
    const left = (anchor: Label["anchor"]) => boxOf({ text: "5.20 bar", x: 100, y: 50, anchor }).left;
    const { width } = boxOf({ text: "5.20 bar", x: 100, y: 50, anchor: "start" });
    expect([left("start"), left("middle"), left("end")]).toEqual([100, 100 - width / 2, 100 - width]);
  });
});
