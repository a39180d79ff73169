/**
 * Energy: Regulation (EU) 1169/2011 annex XIV (read). Each gram in kJ and kcal; ethanol 0.78924 kg/L at 20 °C (memory).
 */
import { energyPer100Ml } from "../../src/cellar/label";
import { expectPrinted, expectRelative } from "../support/relative";

test.each([
  // 10 g/L is 1 g in 100 mL
  ["carbohydrate (except polyols)", [0, 10, 0, 0], "17", "4"],
  ["organic acids", [0, 0, 10, 0], "13", "3"],
  ["polyols", [0, 0, 0, 10], "10", "2.4"],
] as const)(
  "1 g of %s (alcohol, sugar, acids, glycerol %j): %s kJ, %s kcal",
  (_name, [alcohol, sugar, acid, glycerol], kJ, kcal) => {
    expectRelative(energyPer100Ml(alcohol, sugar, acid, glycerol, "kJ"), Number(kJ), 1e-14, "read");
    expectRelative(energyPer100Ml(alcohol, sugar, acid, glycerol, "kcal"), Number(kcal), 1e-14, "read");
  },
);

test("1 g of alcohol: 29 kJ, 7 kcal; 1 % vol is 0.78924 g in 100 mL", () => {
  expectRelative(energyPer100Ml(1 / 0.78924, 0, 0, 0, "kJ"), 29, 1e-14, "read");
  expectRelative(energyPer100Ml(1 / 0.78924, 0, 0, 0, "kcal"), 7, 1e-14, "read");
});

test("a wine of 12 % vol, 8 g/L of sugar, 6 g/L of acids and 5 g/L of glycerol", () => {
  // 9.47088·29 + 0.8·17 + 0.6·13 + 0.5·10 = 274.656 + 13.6 + 7.8 + 5
  expectPrinted(energyPer100Ml(12, 8, 6, 5, "kJ"), "301.06", "by hand");
  // 9.47088·7 + 0.8·4 + 0.6·3 + 0.5·2.4 = 66.296 + 3.2 + 1.8 + 1.2
  expectPrinted(energyPer100Ml(12, 8, 6, 5, "kcal"), "72.50", "by hand");
});

test("the two tables are rounded apart: kJ over kcal runs from 4.14 to 4.33, not 4.184", () => {
  const ratio = (grams: readonly [number, number, number, number]) =>
    energyPer100Ml(...grams, "kJ") / energyPer100Ml(...grams, "kcal");
  expectRelative(ratio([1, 0, 0, 0]), 29 / 7, 1e-14);
  expectRelative(ratio([0, 1, 0, 0]), 4.25, 1e-14);
  expectRelative(ratio([0, 0, 1, 0]), 13 / 3, 1e-14);
});
