/**
 * The geometry of the grid's charts, worked by hand: scales with round numbers, lines, bars, what is left out.
 */
import fc from "fast-check";
import { numberIn, scaleOf } from "../../src/hosts/grid/chart-scale";
import type { ChartReading } from "../../src/hosts/grid/chart-cells";
import { barMarks, barsOf, lineMarks } from "../../src/hosts/grid/chart-marks";
import { chartSvg } from "../../src/hosts/grid/chart-svg";
import { cut, widthOf } from "../../src/hosts/grid/chart-text";
import type { SvgNode } from "../../src/hosts/grid/svg";
import type { CellValue, ChartData } from "../../src/workbook/data";
import { bars, lines, stages } from "../support/charts";
import { SEED } from "../support/fuzz";

const shown = (value: number, format: string) => `${format}|${value}`;
const BOX = { width: 200, height: 100 };

const reading = (
  chart: ChartData,
  categories: readonly CellValue[],
  ...series: readonly (readonly CellValue[])[]
): ChartReading => ({ chart, categories, series });

function all(drawing: SvgNode): SvgNode[] {
  return [drawing, ...(drawing.children ?? []).flatMap(all)];
}
const texts = (drawing: SvgNode) => all(drawing).flatMap(({ text }) => text ?? []);
const tagged = (drawing: SvgNode, tag: string) => all(drawing).filter((each) => each.tag === tag);

describe("scales", () => {
  test.each([
    ["0 to 10 in five steps", [0, 10], {}, 5, [0, 2, 4, 6, 8, 10]],
    ["0 to 1.4 in five", [0.62, 1.4, 0.21, 0.09], {}, 5, [0, 0.5, 1, 1.5]],
    ["sums of tenths read as such", [0, 0.3], {}, 3, [0, 0.1, 0.2, 0.3]],
    ["0 is left out where all numbers lie far from it", [96, 100], {}, 4, [96, 97, 98, 99, 100]],
    ["below 0 and above", [-3, 7], {}, 5, [-4, -2, 0, 2, 4, 6, 8]],
    ["all below 0", [-8, -2], {}, 4, [-8, -6, -4, -2, 0]],
    ["one number", [5], {}, 5, [0, 1, 2, 3, 4, 5]],
    ["no number", [], {}, 5, [0, 0.2, 0.4, 0.6, 0.8, 1]],
    ["ends that are given", [3, 4], { min: 0, max: 35 }, 7, [0, 5, 10, 15, 20, 25, 30, 35]],
    ["an odd beginning", [3, 9], { min: 1 }, 4, [2, 4, 6, 8, 10]],
    ["an end below the numbers", [10, 12], { max: 5 }, 5, [0, 1, 2, 3, 4, 5]],
  ])("%s", (_name, numbers, axis, steps, ticks) => {
    expect(scaleOf(numbers, axis, { steps }).ticks).toEqual(ticks);
  });

  test("given ends are kept", () => {
    expect(scaleOf([3, 9], { min: 1, max: 9.5 }, { steps: 4 })).toMatchObject({ min: 1, max: 9.5 });
  });

  test("bars begin at 0 though their lengths are alike", () => {
    expect(scaleOf([96, 100], {}, { steps: 4, fromZero: true }).min).toBe(0);
  });

  test("whatever the numbers, few marks, even and rising, within the ends", () => {
    const any = fc.double({ noNaN: true, min: -1e99, max: 1e99 });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 6 }), fc.integer({ min: 1, max: 12 }), (numbers, steps) => {
        const { min, max, ticks } = scaleOf(numbers, {}, { steps });
        expect(max).toBeGreaterThan(min);
        for (const each of numbers) {
          expect((each - min) / (max - min)).toBeGreaterThanOrEqual(-1e-9);
          expect((each - min) / (max - min)).toBeLessThanOrEqual(1 + 1e-9);
        }
        expect(ticks.length).toBeGreaterThan(0);
        expect(ticks.length).toBeLessThanOrEqual(steps + 3);
        const apart = ticks.slice(1).map((tick, index) => (tick - ticks[index]!) / (max - min));
        for (const each of apart) expect(each).toBeCloseTo(apart[0]!, 6);
        if (apart.length > 0) expect(apart[0]).toBeGreaterThan(0.01);
      }),
      { seed: SEED },
    );
  });

  test.each([["7"], [""], [null], [true], [NaN], [Infinity]])("%p is no number", (value) => {
    expect(numberIn(value)).toBeUndefined();
  });
});

describe("lines", () => {
  const one: ChartData = { ...lines, series: lines.series.slice(0, 1) };
  const x = { min: 0, max: 20, ticks: [] };
  const y = { min: 0, max: 10, ticks: [] };
  const points = (xs: readonly CellValue[], ys: readonly CellValue[]) =>
    lineMarks(reading(one, xs, ys), x, y, BOX).map(({ tag, attributes }) =>
      tag === "circle" ? [attributes.cx, attributes.cy] : attributes.points,
    );

  test("the least at the left and below", () => {
    expect(points([0, 10, 20], [0, 5, 10])).toEqual(["0.0,100.0 100.0,50.0 200.0,0.0"]);
  });

  test("broken where a number is missing, on either side; a point alone is a dot", () => {
    expect(points([0, 5, 10, 15, 20], [0, "", 5, 5, 10])).toEqual([
      [0, 100],
      "100.0,50.0 150.0,50.0 200.0,0.0",
    ]);
    expect(points([0, "?", 20], [1, 2, 3])).toEqual([
      [0, 90],
      [200, 70],
    ]);
  });

  test("dashes differ, a gap is not drawn", () => {
    const series = (["solid", "dashed", "dotted", "gap"] as const).map((look) => ({
      ...lines.series[0]!,
      look,
    }));
    const row = [0, 1];
    const drawn = lineMarks(reading({ ...lines, series }, row, row, row, row, row), x, y, BOX);
    const dashes = drawn.map(({ attributes }) => attributes["stroke-dasharray"]);
    expect(dashes[0]).toBeUndefined();
    expect(new Set(dashes).size).toBe(3);
  });
});

describe("bars", () => {
  const x = { min: 0, max: 100, ticks: [] };
  const rects = (drawn: readonly SvgNode[]) =>
    drawn.map(({ attributes: { x: left, width, y } }) => [left, width, y] as const);

  test("one below the other, the first on top, as long as their numbers", () => {
    const drawn = rects(barMarks(reading(bars, ["a", "b"], [50, 25]), x, BOX));
    expect(drawn.map(([left, width]) => [left, width])).toEqual([
      [0, 100],
      [0, 50],
    ]);
    expect(Number(drawn[0]![2])).toBeLessThan(Number(drawn[1]![2]));
  });

  test("no number, no bar, and the others keep their places", () => {
    const whole = rects(barMarks(reading(bars, ["a", "b", "c"], [5, 6, 7]), x, BOX));
    const some = rects(barMarks(reading(bars, ["a", "b", "c"], [5, "", 7]), x, BOX));
    expect(some).toEqual([whole[0], whole[2]]);
  });

  test("several beside one another do not overlap, nor leave their category", () => {
    const two: ChartData = { ...bars, series: [bars.series[0]!, { ...bars.series[0]!, look: "light" }] };
    const drawn = barMarks(reading(two, ["a", "b"], [50, 50], [50, 50]), x, BOX).map(({ attributes }) => ({
      top: Number(attributes.y),
      foot: Number(attributes.y) + Number(attributes.height),
    }));
    const sorted = [...drawn].sort((one, other) => one.top - other.top);
    sorted
      .slice(1)
      .forEach(({ top }, index) => expect(top).toBeGreaterThanOrEqual(sorted[index]!.foot - 0.2));
    expect(sorted[1]!.foot).toBeLessThanOrEqual(50);
    expect(sorted[2]!.top).toBeGreaterThanOrEqual(50);
  });

  test("stacked end to end; a gap takes room and is not drawn", () => {
    const stacked = reading(stages, ["a", "b"], [10, 20], [30, null], [5, 40]);
    expect(rects(barMarks(stacked, x, BOX)).map(([left, width]) => [left, width])).toEqual([
      [20, 60],
      [80, 10],
      [40, 80],
    ]);
  });

  test("what lies below 0 goes the other way, from 0", () => {
    const ends = barsOf(reading(stages, ["a"], [10], [-4], [-2])).map(({ from, to }) => [from, to]);
    expect(ends).toEqual([
      [0, 10],
      [0, -4],
      [-4, -6],
    ]);
  });

  test("cut off at the ends of the axis", () => {
    const drawn = rects(barMarks(reading(bars, ["a"], [400]), { min: 50, max: 100, ticks: [] }, BOX));
    expect(drawn.map(([left, width]) => [left, width])).toEqual([[0, 200]]);
  });
});

describe("the whole drawing", () => {
  const size = { width: 480, height: 300 };
  const pressures = reading(lines, [0, 10, 20], [4, 6, 8], [2, 3, 4], [9, 9, 9]);

  test("is a picture with title and description for those who cannot see it", () => {
    const { attributes } = chartSvg(pressures, size, shown);
    expect(attributes.role).toBe("img");
    expect(attributes["aria-label"]).toBe(`${lines.title}. ${lines.description}`);
  });

  test("title, titles of the axes, numbers in their formats, names of the series", () => {
    const found = texts(chartSvg(pressures, size, shown));
    expect(found).toEqual(
      expect.arrayContaining([
        "Pressure & temperature",
        "Temperature, °C",
        "Pressure, bar",
        "0|20",
        "0.0|12",
        "Planned",
        "Half <dose>",
        "Rating",
      ]),
    );
  });

  test("names stand beside their bars; a gap has no entry in the legend, a single series no legend", () => {
    const drawing = chartSvg(reading(stages, ["Tirage", "Lees"], [0, 2], [2, 0], [60, 500]), size, shown);
    expect(texts(drawing)).toEqual(expect.arrayContaining(["Tirage", "Lees", "Work", "Rest"]));
    expect(texts(drawing)).not.toContain("Begins");
    expect(texts(chartSvg(reading(bars, ["a"], [1]), size, shown))).not.toContain("Cost");
  });

  test("bar and name are level", () => {
    const drawing = chartSvg(reading(bars, ["Glass", "Wine"], [1, 2]), size, shown);
    const [bar] = tagged(drawing, "rect").slice(1);
    const name = tagged(drawing, "text").find(({ text }) => text === "Glass")!;
    const middle = Number(bar!.attributes.y) + Number(bar!.attributes.height) / 2;
    expect(Math.abs(Number(name.attributes.y) - middle)).toBeLessThan(6);
  });

  test("every bar is named while there is room, then every so many", () => {
    const names = Array.from({ length: 12 }, (_, index) => `part ${index + 1}`);
    const named = (height: number) =>
      texts(
        chartSvg(
          reading(
            bars,
            names,
            names.map(() => 1),
          ),
          { width: 480, height },
          shown,
        ),
      ).filter((text) => text.startsWith("part"));
    expect(named(240)).toEqual(names);
    const some = named(140);
    expect(some.length).toBeLessThan(8);
    expect(some[0]).toBe("part 1");
  });

  test("numbers below do not run into one another", () => {
    const wide = (value: number) => `${value}`.padStart(9, "0");
    const drawing = chartSvg(reading(bars, ["a"], [16_000]), size, wide);
    const below = tagged(drawing, "text").filter(({ text }) => /^0\d{8}$/.test(text ?? ""));
    const places = below.map(({ attributes }) => Number(attributes.x));
    expect(places.length).toBeGreaterThan(1);
    places
      .slice(1)
      .forEach((at, index) => expect(at - places[index]!).toBeGreaterThan(widthOf("000000000", 12)));
  });

  test("without numbers it says so", () => {
    const empty = chartSvg(reading(lines, [0, 1], ["#N/A", ""], [], []), size, shown);
    expect(texts(empty)).toContain("No numbers to draw");
    expect(texts(chartSvg(pressures, size, shown))).not.toContain("No numbers to draw");
  });

  test("a long title is cut to its room", () => {
    const long = "Excess pressure ".repeat(20);
    const found = texts(chartSvg({ ...pressures, chart: { ...lines, title: long } }, size, shown));
    const title = found.find((text) => text.startsWith("Excess"))!;
    expect(title).toMatch(/…$/);
    expect(widthOf(title, 14)).toBeLessThan(size.width);
    expect(cut("short", 100, 10)).toBe("short");
  });

  test("whatever the cells hold and however small the place, no attribute is broken", () => {
    const value = fc.oneof(
      fc.double(),
      fc.integer({ min: -1000, max: 1000 }),
      fc.constantFrom<CellValue>(null, "", "#VALUE!", true),
    );
    const row = fc.array(value, { maxLength: 6 });
    const place = fc.record({
      width: fc.integer({ min: 1, max: 900 }),
      height: fc.integer({ min: 1, max: 600 }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(lines, bars, stages),
        row,
        row,
        row,
        row,
        place,
        (chart, x, a, b, c, box) => {
          for (const { attributes } of all(chartSvg(reading(chart, x, a, b, c), box, shown))) {
            for (const [name, value] of Object.entries(attributes)) {
              if (name === "aria-label") continue;
              expect(`${name}=${value}`).not.toMatch(/NaN|Infinity|undefined/);
              if (name === "width" || name === "height") expect(String(value)).not.toMatch(/^-/);
            }
          }
        },
      ),
      { seed: SEED },
    );
  });
});
