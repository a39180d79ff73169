/**
 * Pressure classes: Regulation (EU) 1308/2013 annex VII part II (mixed read and memory), excess bar at 20 °C.
 * Limits: Delegated Regulation (EU) 2019/934 annex II, Delegated Regulation (EU) 2019/33 art. 44, Directive 2007/45/EC.
 */
import { legalLimits } from "../../src/cellar/rules/limits";
import { classLow, pressureClass, pressureRules } from "../../src/cellar/rules/pressure-classes";
import { fillErrorMl, labelAlcoholVerdict, labelAlcoholVol } from "../../src/cellar/label";
import { excessBar } from "../../src/cellar/units";

const JUST = 1e-9;

test.each([
  [1 - JUST, 750, "between classes"],
  [1, 750, "semi-sparkling wine"],
  [2.5, 750, "semi-sparkling wine"],
  [2.5 + JUST, 750, "between classes"],
  [3 - JUST, 750, "between classes"],
  [3, 750, "sparkling wine"],
  [3.5 - JUST, 750, "sparkling wine"],
  [3.5, 750, "quality sparkling wine"],
  // "less than 25 cl": the quarter bottle itself is not small
  [3, 250, "sparkling wine"],
  [3, 250 - JUST, "quality sparkling wine"],
  [3 - JUST, 200, "between classes"],
  [20, 750, "quality sparkling wine"],
  [-1, 750, "between classes"],
])("%d bar in %d mL: %s", (bar, bottleMl, expected) =>
  expect(pressureClass(excessBar(bar), bottleMl, "EU")).toBe(expected),
);

test("the low bound of the quality class by bottle", () => {
  const quality = pressureRules.EU.classes[0];
  expect([200, 250, 750].map((size) => classLow(quality, size))).toEqual([3, 3.5, 3.5]);
});

test("limits, each with its mark", () => {
  const { tirageRiseVol, dosageRiseVol, totalSo2MgL, labelToleranceVol, bottleSizes } = legalLimits.EU;
  expect([tirageRiseVol?.value, tirageRiseVol?.source.mark]).toEqual([1.5, "read"]);
  expect([dosageRiseVol?.value, dosageRiseVol?.source.mark]).toEqual([0.5, "secondary"]);
  expect([totalSo2MgL?.value, totalSo2MgL?.source.mark]).toEqual([185, "secondary"]);
  expect([labelToleranceVol?.value, labelToleranceVol?.source.mark]).toEqual([0.8, "read"]);
  expect(bottleSizes?.allowedMl).toEqual([125, 200, 375, 750, 1500]);
  expect(bottleSizes?.spanMl).toEqual([125, 1500]);
});

test.each([
  [11.84, 12],
  [11.74, 11.5],
  [11.76, 12],
  [12.25, 12.5],
  [12.24, 12],
  [0, 0],
])("%d %% vol goes on the label as %d (whole or half units, read)", (alcohol, label) =>
  expect(labelAlcoholVol(alcohol)).toBe(label),
);

test.each([
  [12, 11.2, "within tolerance"],
  [12, 12.8, "within tolerance"],
  [12, 11.19, "outside tolerance"],
  [12, 12.81, "outside tolerance"],
])("a label of %d and an analysis of %d %% vol: %s (0.8, read)", (label, measured, verdict) =>
  expect(labelAlcoholVerdict(label, measured, "EU")).toBe(verdict),
);

test.each([
  // Directive 76/211/EEC annex I, 2.4 (memory), the same table as FPackV § 9 (3) (read): percentages rounded up to 0.1 mL
  [50, 4.5],
  [100, 4.5],
  [200, 9],
  [300, 9],
  [375, 11.3],
  [500, 15],
  [750, 15],
  [1000, 15],
  [1500, 22.5],
  [10_000, 150],
  // OIML R 87 (memory)
  [15_000, 150],
  [30_000, 300],
])("%d mL may lack %d mL", (size, ml) => expect(fillErrorMl(size)).toBeCloseTo(ml, 12));
