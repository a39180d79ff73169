import { WIDTH, boxOf } from "../../../src/taskpane/drawings/geometry-labels";
import { pressurePicture } from "../../../src/taskpane/drawings/geometry-pressure";
import { pressureCurve } from "../../../src/taskpane/drawings/pressure-curve";
import type { Point } from "../../../src/taskpane/drawings/svg";
import { randomBatches } from "../../support/random-batches";
import { EDGES, changed } from "./batches";
import { allFinite, expectApart } from "./layout";

describe("pressure", () => {
  const asItIs = { unit: "bar", shown: (kept: number) => kept, number: (shown: number) => shown.toFixed(1) };
  const fahrenheit = { ...asItIs, unit: "°F", shown: (kept: number) => kept * 1.8 + 32 };
  const pictureOf = ({ inputs, plan }: ReturnType<typeof changed>, temperature = asItIs) => {
    const { cellar_C, hottest_C, glassRating_bar: bar } = inputs.tirage;
    const { cellar, hottest } = plan.tirage.pressures;
    return pressurePicture({
      curve: pressureCurve(inputs, plan),
      cellar: { at_C: cellar_C, range: cellar, text: `${cellar.expected.toFixed(2)} bar` },
      hottest: { at_C: hottest_C, range: hottest, text: `${hottest.expected.toFixed(2)} bar` },
      finished_bar: plan.dosage.pressureAt20,
      rating: bar === null ? null : { bar, text: `Rating ${bar} bar` },
      leastText: "3.50 bar",
      temperature,
      pressure: asItIs,
    });
  };
  const batches = [...randomBatches(150, 7), ...Object.values(EDGES).map((edge) => edge())];

  test("all is finite and inside, no text over another, whatever the batch", () => {
    for (const batch of batches) {
      const picture = pictureOf(batch);
      expect(allFinite(picture)).toBe(true);
      expectApart(picture.values, picture.plot);
      expectApart(picture.quiet, { left: 0, top: 0, width: WIDTH, height: picture.height });
      const { left, top, width, height } = picture.plot;
      const marks: Point[] = [
        ...picture.low,
        ...picture.high,
        picture.finished,
        [picture.hottest.x, picture.hottest.high],
        ...(picture.least ? [picture.least] : []),
      ];
      for (const [x, y] of marks) {
        expect(x).toBeGreaterThanOrEqual(left - 1e-9);
        expect(x).toBeLessThanOrEqual(left + width + 1e-9);
        expect(y).toBeGreaterThanOrEqual(top - 1e-9);
        expect(y).toBeLessThanOrEqual(top + height + 1e-9);
      }
    }
  });

  test("the marks lie on the line and in the band", () => {
    const picture = pictureOf(changed({ tirage: { cellar_C: 13, hottest_C: 26 } }));
    // 0 to 28 °C in 24 steps: 14 °C is the twelfth, and 13 °C lies below it
    const [before, after] = [picture.expected[11]!, picture.expected[12]!];
    expect(picture.cellar.x).toBeGreaterThan(before[0]);
    expect(picture.cellar.x).toBeLessThan(after[0]);
    expect(picture.cellar.expected).toBeLessThan(before[1]);
    expect(picture.cellar.expected).toBeGreaterThan(after[1]);
    expect(picture.cellar.high).toBeLessThan(picture.cellar.expected);
    expect(picture.cellar.low).toBeGreaterThan(picture.cellar.expected);
  });

  test("a value stands nearer to its own mark than to the other, or is left to the words below", () => {
    for (const hottest_C of [13, 14, 16, 19, 24, 35]) {
      const batch = changed({ tirage: { cellar_C: 12, hottest_C } });
      const { cellar, hottest, values } = pictureOf(batch);
      const { pressures } = batch.plan.tirage;
      const nearest = (expected: number) => {
        const label = values.find(({ text }) => text === `${expected.toFixed(2)} bar`);
        if (!label) return null;
        const { left, width } = boxOf(label);
        const beyond = (x: number) => Math.min(Math.abs(x - left), Math.abs(x - left - width));
        return beyond(cellar.x) < beyond(hottest.x) ? "cellar" : "hottest";
      };
      expect(nearest(pressures.cellar.expected)).toBe("cellar");
      expect(nearest(pressures.hottest.expected)).toBe("hottest");
    }
  });

  test("other units change the scale and not the shape", () => {
    const batch = changed({});
    const [one, other] = [pictureOf(batch), pictureOf(batch, fahrenheit)];
    other.expected.forEach(([x, y], index) => {
      expect(x).toBeCloseTo(one.expected[index]![0], 6);
      expect(y).toBeCloseTo(one.expected[index]![1], 6);
    });
    expect(one.quiet.map(({ text }) => text)).toContain("20.0");
    expect(other.quiet.map(({ text }) => text)).toContain("70.0");
  });

  test("below zero the scale ends where the figures end", () => {
    const { low, plot, up } = pictureOf(EDGES["next to no dose"]!());
    expect(Math.max(...low.map(([, y]) => y))).toBeCloseTo(plot.top + plot.height, 9);
    expect(up.find(({ isZero }) => isZero)!.y).toBeLessThan(plot.top + plot.height);
  });

  test("a rating far above is not drawn, one nearby is", () => {
    expect(pictureOf(changed({ tirage: { glassRating_bar: 30 } })).ratingY).toBeNull();
    expect(pictureOf(changed({ tirage: { glassRating_bar: null } })).ratingY).toBeNull();
    const { ratingY, plot } = pictureOf(changed({ tirage: { glassRating_bar: 11 } }));
    expect(ratingY).toBeGreaterThan(plot.top);
  });

  test("where the band reaches the rating, it is the rating", () => {
    const batch = changed({ tirage: { glassRating_bar: 7.5 } });
    const { reached_C } = pressureCurve(batch.inputs, batch.plan);
    const there = changed({ tirage: { glassRating_bar: 7.5, hottest_C: reached_C } });
    expect(there.plan.tirage.pressures.hottest.high).toBeCloseTo(7.5, 9);
    expect(pressureCurve(...nothingTo(EDGES["a rating passed everywhere"]!())).reached_C).toBeNull();
    expect(pressureCurve(...nothingTo(EDGES["the highest rating"]!())).reached_C).toBeNull();
  });

  test("the least pressure is that of the rules and the bottle", () => {
    const least = (bottle_mL: number) => {
      const batch = changed({ batch: { bottle_mL } });
      return pressureCurve(batch.inputs, batch.plan).least_bar;
    };
    expect(least(750)).toBe(3.5);
    expect(least(200)).toBe(3);
  });

  function nothingTo({ inputs, plan }: ReturnType<typeof changed>) {
    return [inputs, plan] as const;
  }
});
