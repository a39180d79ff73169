/**
 * Every number that the cellar exports, by itself or in a table.
 */
import * as carbonation from "../../src/cellar/carbonation";
import * as basic from "../../src/cellar/constants";
import { MONTHS_PER_YEAR } from "../../src/cellar/costing";
import { CRYOSCOPIC_CONSTANT } from "../../src/cellar/disgorging";
import { GLASS_ML } from "../../src/cellar/dosage";
import { RATIO_TO_20C } from "../../src/cellar/gauge-table";
import { ENERGY_PER_G, fillErrorRow } from "../../src/cellar/label";
import { BAR_PER_UNIT } from "../../src/cellar/pressure-units";
import { FLATTEST_DEGREES, RACK_PLACES, STEEPEST_DEGREES } from "../../src/cellar/riddling";
import { legalLimits } from "../../src/cellar/rules/limits";
import { DENSITY_COEFFICIENTS } from "../../src/cellar/sugar";

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** Figures of the fill table by a size of each row. */
const fillRows = [50, 100, 200, 300, 500, 1000, 10_000, 15_000, 30_000].map(fillErrorRow);

export const cellarNumbers: ReadonlySet<number> = new Set(
  numbersIn([
    { ...basic },
    { ...carbonation },
    MONTHS_PER_YEAR,
    CRYOSCOPIC_CONSTANT,
    GLASS_ML,
    RATIO_TO_20C,
    ENERGY_PER_G,
    fillRows,
    BAR_PER_UNIT,
    [FLATTEST_DEGREES, STEEPEST_DEGREES, RACK_PLACES],
    legalLimits,
    DENSITY_COEFFICIENTS,
  ]),
);
