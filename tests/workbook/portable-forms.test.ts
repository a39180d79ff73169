/**
 * Each portable form by itself, calculated by a spreadsheet engine and held against our function, which is checked
 * against outside sources. The figures lie on both sides of every bound.
 */
import * as ageing from "../../src/functions/ageing";
import * as cost from "../../src/functions/cost";
import * as disgorging from "../../src/functions/disgorging";
import * as dosage from "../../src/functions/dosage";
import * as label from "../../src/functions/label";
import * as pressure from "../../src/functions/pressure";
import * as riddling from "../../src/functions/riddling";
import * as sugar from "../../src/functions/sugar";
import * as sweetness from "../../src/functions/sweetness";
import * as tirage from "../../src/functions/tirage";
import * as tiragePressure from "../../src/functions/tirage-pressure";
import * as readings from "../../src/functions/tirage-readings";
import type { CellValue } from "../../src/workbook/data";
import { forms } from "../../src/workbook/portable/render";
import { calculatedCalls, type Argument, type Call } from "../support/portable-calls";
import { CALLS } from "../support/portable-call-list";
import { isSame } from "../support/recalculated";

type Calculate = (...args: never[]) => unknown;
const FUNCTIONS: Readonly<Record<string, Calculate>> = {
  "AGEING.EARLIEST": ageing.ageingEarliest,
  "AGEING.MINIMUM": ageing.ageingMinimum,
  "COST.BOTTLE": cost.costBottle,
  "COST.HOLDING": cost.costHolding,
  "COST.PACKS": cost.costPacks,
  "DISGORGING.FREEZING": disgorging.disgorgingFreezing,
  "DISGORGING.SPACE": disgorging.disgorgingSpace,
  "DOSAGE.ALCOHOL": dosage.dosageAlcohol,
  "DOSAGE.BATCH": dosage.dosageBatch,
  "DOSAGE.RECIPE": dosage.dosageRecipe,
  "DOSAGE.STOCK": dosage.dosageStock,
  "DOSAGE.SUGAR": dosage.dosageSugar,
  "DOSAGE.TOPUP": dosage.dosageTopup,
  "DOSAGE.VOLUME": dosage.dosageVolume,
  "LABEL.ALCOHOL": label.labelAlcohol,
  "LABEL.ENERGY": label.labelEnergy,
  "PRESSURE.AT20": pressure.pressureAt20C,
  "PRESSURE.CLASS": pressure.pressureClass,
  "PRESSURE.SHIFT": pressure.pressureShift,
  "RIDDLING.HOURS": riddling.riddlingLabour,
  "RIDDLING.RACKS": riddling.riddlingRacks,
  "SUGAR.INVERT": sugar.sugarInvert,
  "SUGAR.SUCROSE": sugar.sugarSucrose,
  "SWEETNESS.CHECK": sweetness.sweetnessCheck,
  "SWEETNESS.MARGIN": sweetness.sweetnessMargin,
  "SWEETNESS.TERM": sweetness.sweetnessTerm,
  "SWEETNESS.TERMS": sweetness.sweetnessTerms,
  "TIRAGE.ALCOHOL": tirage.tirageAlcohol,
  "TIRAGE.BOTTLES": tirage.tirageBottles,
  "TIRAGE.DOSE": tiragePressure.tirageDose,
  "TIRAGE.LIQUEUR": tirage.tirageLiqueur,
  "TIRAGE.PRESSURE": tiragePressure.tiragePressure,
  "TIRAGE.PROGRESS": readings.tirageProgress,
  "TIRAGE.RANGE": tiragePressure.tirageRange,
  "TIRAGE.STARTER": tirage.tirageStarter,
  "TIRAGE.SUGAR": tirage.tirageSugar,
  "TIRAGE.VOLUME": tirage.tirageVolume,
};

/** What our function answers, an error where it refuses. */
function answered([id, ...args]: Call): readonly CellValue[] {
  try {
    return [(FUNCTIONS[id] as (...given: readonly Argument[]) => unknown)(...args)].flat(2) as CellValue[];
  } catch {
    return [null];
  }
}

// sixteen turns from 15° to 75°, each of them 60/15 = 4° steeper
const TURNS: Call = ["RIDDLING.SCHEDULE", 46_000, 4, 4];

const calculated = (() => {
  let known: CellValue[][] | undefined;
  return () => (known ??= calculatedCalls([TURNS, ...CALLS]));
})();

test("every form gives what our function gives, and an error where it refuses", () => {
  const differing = CALLS.flatMap((call, index) => {
    const expected = answered(call);
    return calculated()[index + 1]!.flatMap((found, column) => {
      // a row shorter than it may be ends in errors; a refusal is one in every cell
      const wanted = expected[0] === null ? null : (expected[column] ?? null);
      return isSame(found, wanted)
        ? []
        : [`${JSON.stringify(call)} ${column + 1}: ${String(wanted)}, there ${String(found)}`];
    });
  });
  // no more than can be read
  expect(differing.slice(0, 10)).toEqual([]);
});

test("the turns of riddling: each day its turns, an eighth and then quarters to and fro, steeper each time", () =>
  expect(calculated()[0]).toEqual([
    ...[46_000, 1, 1, 15],
    ...[46_000, 2, -2, 19],
    ...[46_000, 3, 2, 23],
    ...[46_003, 16, -2, 75],
  ]));

test("no form is left out above", () =>
  expect([...new Set(CALLS.map(([id]) => id))].sort()).toEqual(Object.keys(forms).sort()));
