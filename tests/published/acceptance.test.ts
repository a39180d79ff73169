/**
 * Worked values that were agreed by hand before the functions were written, to the last digit as printed. No published
 * source; they come from the equations and constants that the other files here hold against theirs.
 */
import { serialFromDate } from "../../src/cellar/ageing";
import { sucroseDensity } from "../../src/cellar/sugar";
import { ageingEarliest } from "../../src/functions/ageing";
import { dosageVolume } from "../../src/functions/dosage";
import { pressureAt20C } from "../../src/functions/pressure";
import { sweetnessTerm } from "../../src/functions/sweetness";
import { tirageAlcohol, tirageLiqueur, tirageSugar } from "../../src/functions/tirage";
import { tiragePressure } from "../../src/functions/tirage-pressure";
import { expectPrinted } from "../support/relative";

test.each([
  ["TIRAGE.SUGAR(50, 24)", tirageSugar(50, 24), "121.83"],
  ["TIRAGE.SUGAR(50, 24, 1)", tirageSugar(50, 24, 1), "117.01"],
  ["TIRAGE.LIQUEUR(10, 24, 500)", tirageLiqueur(10, 24, 500), "50.420"],
  ["TIRAGE.PRESSURE(24, 10, 10.5)", tiragePressure(24, 10, 10.5), "5.25"],
  ["TIRAGE.PRESSURE(24, 20, 10.5)", tiragePressure(24, 20, 10.5), "7.56"],
  ["TIRAGE.ALCOHOL(10.5, 24)", tirageAlcohol(10.5, 24), "11.84"],
  ["DOSAGE.VOLUME(750, 1, 8, 600)", dosageVolume(750, 1, 8, 600), "8.765"],
  ["PRESSURE.AT20(4.5, 10)", pressureAt20C(4.5, 10), "6.12"],
  ["SUGAR.DENSITY(40)", sucroseDensity(40), "1176.5"],
])("%s", (_call, value, printed) => expectPrinted(value, printed));

test("sweetness terms at 12 g/L", () => {
  expect(sweetnessTerm(12)).toBe("extra dry");
  expect(sweetnessTerm(12, true, "OIV")).toBe("brut");
});

test("31 May 2024 and nine months on the lees end on the last day of February", () => {
  expect(ageingEarliest(serialFromDate(2024, 5, 31), "EU traditional method")).toBe(
    serialFromDate(2025, 2, 28),
  );
});
