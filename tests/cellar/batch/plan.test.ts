/**
 * The worked batch by hand: 100 hL of 10 % vol, 24 g/L of dry sugar, 8 g/L of dosage from 600 g/L of sugar in wine.
 */
import { isoFromSerial } from "../../../src/cellar/ageing";
import { UnplannableBatch } from "../../../src/cellar/batch/attempt";
import { expectPrinted } from "../../support/relative";
import { planOf, type Sections } from "./worked-batch";

test("tirage", () => {
  const { tirage } = planOf();
  // 10 000 L · 24/(1000 − 15) = 243.655 kg; · 0.625 L/kg = 152.284 L; 10 152.284 L/0.75 L = 13 536.4
  expectPrinted(tirage.sugarKg, "243.655");
  expectPrinted(tirage.volumeHl, "101.52284");
  expect(tirage.bottles).toBe(13_536);
  expect([tirage.dose, tirage.wineHl, tirage.starterL, tirage.liqueurL]).toEqual([24, 100, 0, 0]);
  // 10·0.985 + 24·1.05263/16.83 = 9.85 + 1.50108
  expectPrinted(tirage.alcoholAfterVol, "11.3511");
  expectPrinted(tirage.alcoholRiseVol, "1.3511");
  // c = 24·0.514284·0.95 = 11.7257; kH = 1.951·0.746489 = 1.45640, and 529.31/30/293.15 = 0.06019 in the headspace
  // 11.7257/1.51659 + 0.79 − 1.01325
  expectPrinted(tirage.pressures.at20.expected, "7.508");
  expect(tirage.pressures.hottest.high).toBeGreaterThan(tirage.pressures.hottest.expected);
  // the table's 1.36 at 10 °C
  expectPrinted(tirage.at20ByTable / tirage.pressures.at10.expected, "1.36");
});

test("disgorging and dosage", () => {
  const { dosage } = planOf();
  // 13 536 · 0.99 = 13 400.6
  expect(dosage.bottlesFinished).toBe(13_400);
  // 600 g/L weighed analyse as 631.578; 750·8/631.578 = 9.500 mL of the 20 mL lost
  expectPrinted(dosage.liqueurGL, "631.58");
  expectPrinted(dosage.eachMl, "9.500");
  expect([dosage.filledMl, dosage.spaceMl]).toEqual([750, 20]);
  expectPrinted(dosage.topUpMl!, "10.500");
  // 13 400 · 9.5 mL · 1.05 = 133.665 L, of which 0.6 kg/L sugar and 1 − 0.375 wine
  expectPrinted(dosage.batchL, "133.665");
  expectPrinted(dosage.sugarKg, "80.199");
  expectPrinted(dosage.wineL, "83.541");
  // 12 % vol in 0.625 L of wine; (740.5·11.35108 + 9.5·7.5)/750
  expectPrinted(dosage.liqueurVol, "7.5");
  expectPrinted(dosage.alcoholVol, "11.3023");
  expectPrinted(dosage.alcoholRiseVol, "-0.0488");
  expectPrinted(dosage.sugarGL, "8.000000000");
  expect([dosage.terms, dosage.termVerdict]).toEqual([["brut"], "permitted"]);
  expectPrinted(dosage.termMarginGL!, "4.000000");
  expectPrinted(dosage.pressureAt20, "6.508");
  expect([dosage.pressureClass, dosage.labelVol]).toEqual(["quality sparkling wine", 11.5]);
  // 1.94465 mol of ethanol over 0.884894 kg of water
  expectPrinted(dosage.freezingPointC, "-4.088");
  // 11.3023·0.78924·29 + 0.8·17 + 0.6·13, and 11.3023·0.78924·7 + 0.8·4 + 0.6·3
  expectPrinted(dosage.energyKj, "280.09");
  expectPrinted(dosage.energyKcal, "67.44");
});

test("dates: nine months from 31 May end on the last of February, three more on the 28th", () => {
  const { dates } = planOf();
  expect([dates.disgorging, dates.earliestDisgorging, dates.release].map(isoFromSerial)).toEqual([
    "2025-02-28",
    "2025-02-28",
    "2025-05-28",
  ]);
});

test("costs", () => {
  const { costs } = planOf({
    materials: {
      tirageSugar: { pack: 25, price: 1 },
      bottles: { pack: 1000, spare_pct: 2, price: 0.5 },
      labels: { pack: 1000, price: 0.2 },
      other1: { name: "Dividers", need: 10, pack: 4, price: 3 },
    },
  });
  // 243.655/25, 13 536·1.02/1000, 13 400/1000, 10/4, each rounded up; 13 400/6 = 2233.3
  const { tirageSugar, bottles, labels, other1, cartons } = costs.lines;
  expect([tirageSugar, bottles, labels, other1].map(({ packs, cost }) => [packs, cost])).toEqual([
    [10, 250],
    [14, 7000],
    [14, 2800],
    [3, 36],
  ]);
  expect(cartons.need).toBe(2234);
  // caps, bidules, dosage sugar, corks, muselets, capsules, cartons
  expect(costs.unpriced).toBe(7);
  // 10 000 L in the tank; 83.541 L for the liqueur and 10.5 mL · 13 400 = 140.7 L to top up; at 2 a litre
  expectPrinted(costs.tirageWineL, "10000.00");
  expectPrinted(costs.finishingWineL, "224.24");
  expectPrinted(costs.baseWine, "20000.00");
  expectPrinted(costs.finishingWine, "448.48");
  expect([costs.tirageMaterials, costs.finishingMaterials]).toEqual([7250, 2836]);
  expect([costs.tirageLabour, costs.riddlingLabour, costs.disgorgingLabour, costs.finishingLabour]).toEqual([
    200, 400, 600, 800,
  ]);
  // 13 400·0.1; 13 536 bottles · 0.01 · 12 months
  expectPrinted(costs.duty, "1340.00");
  expectPrinted(costs.storage, "1624.32");
  // a year at 21 % on 27 450, and 1.21^(1/4) − 1 = 0.0488088 on 448.48 + 2836 + 400 + 600
  expectPrinted(costs.moneyTiedUp, "5973.62");
  // 20 448.48 + 7250 + 2836 + 2000 + 1340 + 1624.32 + 5973.62
  expectPrinted(costs.total, "41472.42");
  expectPrinted(costs.perBottle, "3.0950");
  expectPrinted(costs.perCase, "18.570");
});

test("by liqueur, with a starter", () => {
  const { tirage } = planOf({
    tirage: { sugarForm: "liqueur", liqueur_gL: 500, starterTarget_Mcells_mL: 2, starter_Mcells_mL: 102 },
  });
  // 10 000·2/100 = 200 L; 10 200·24/476 = 514.286 L with 257.143 kg in 353.571 L; 10 714.286 L/0.75 L = 14 285.7
  expect([tirage.starterL, tirage.wineHl]).toEqual([200, 102]);
  expectPrinted(tirage.liqueurL, "514.286");
  expectPrinted(tirage.sugarKg, "257.143");
  expectPrinted(tirage.liqueurWineL, "353.571");
  expectPrinted(tirage.volumeHl, "107.14286");
  expect(tirage.bottles).toBe(14_285);
});

test("by pressure: the dose found gives that pressure at that temperature", () => {
  const { tirage } = planOf({ tirage: { goal: "pressure", pressure_bar: 6, pressureAt_C: 12 } });
  expectPrinted(tirage.pressures.cellar.expected, "6.000000000");
});

test("a concentrate is bought, not made: 750·8/800 mL", () => {
  const { dosage, costs } = planOf({ dosage: { kind: "concentrate", strength_gL: 800, liqueur_vol: 0 } });
  expectPrinted(dosage.eachMl, "7.5");
  expect([dosage.sugarKg, dosage.wineL, costs.lines.dosageSugar.need]).toEqual([0, 0, 0]);
  // 13 400·7.5·1.05
  expectPrinted(costs.lines.dosageLiqueur.need, "105.525");
});

test("no dosage: the wine keeps its sugar, and none was added", () => {
  const { dosage, costs } = planOf({ dosage: { kind: "none", residual_gL: 2, term: "pas dosé" } });
  expect([dosage.eachMl, dosage.batchL, dosage.sugarGL, dosage.sugarAdded]).toEqual([0, 0, 2, false]);
  expect([dosage.terms[0], dosage.termVerdict, dosage.topUpMl]).toEqual(["brut nature", "permitted", 20]);
  expect(costs.lines.dosageSugar.need + costs.lines.dosageLiqueur.need).toBe(0);
});

const LIQUEUR = { sugarForm: "liqueur", liqueur_gL: 500 };
const UNPLANNABLE: readonly (readonly [string, Sections, string, unknown, RegExp])[] = [
  [
    "pressure out of reach",
    { tirage: { goal: "pressure", pressure_bar: 20, pressureAt_C: 5 } },
    "tirage.pressure_bar",
    20,
    /give a pressure between/u,
  ],
  [
    "sweeter than the dose",
    { baseWine: { sugar_gL: 30 } },
    "tirage.dose_gL",
    24,
    /give a dose of at least that/u,
  ],
  [
    "the same by liqueur",
    { baseWine: { sugar_gL: 30 }, tirage: LIQUEUR },
    "tirage.dose_gL",
    24,
    /give a dose of at least that/u,
  ],
  [
    "tirage liqueur too weak",
    { tirage: { ...LIQUEUR, liqueur_gL: 24 } },
    "tirage.liqueur_gL",
    24,
    /stronger than the dose/u,
  ],
  [
    "starter too weak",
    { tirage: { starterTarget_Mcells_mL: 2, starter_Mcells_mL: 2 } },
    "tirage.starter_Mcells_mL",
    2,
    /more than the 2 million/u,
  ],
  [
    "no full bottle",
    { baseWine: { volume_hL: 0.001 } },
    "baseWine.volume_hL",
    0.001,
    /enough to fill a bottle of 750 mL/u,
  ],
  ["sweeter than the target", { dosage: { residual_gL: 9 } }, "dosage.target_gL", 8, /already holds 9 g\/L/u],
  [
    "dosage liqueur too weak",
    { dosage: { strength_gL: 7 } },
    "dosage.strength_gL",
    7,
    /at least the 8 g\/L wanted/u,
  ],
  [
    "weaker than its wine",
    { dosage: { strength_gL: 20, carrier_gL: 30 } },
    "dosage.strength_gL",
    20,
    /the carrier alone has/u,
  ],
  [
    "nothing left to sell",
    { baseWine: { volume_hL: 0.01 }, costs: { breakage_pct: 1 } },
    "costs.breakage_pct",
    1,
    /no bottle is left to sell/u,
  ],
];

test.each(UNPLANNABLE)("%s: the field to mend is named", (_what, changes, field, given, remedy) => {
  let thrown: unknown;
  try {
    planOf(changes);
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(UnplannableBatch);
  const { problems, message } = thrown as UnplannableBatch;
  expect(problems.map((problem) => [problem.field, problem.given])).toEqual([[field, given]]);
  expect(problems[0]!.remedy).toMatch(remedy);
  expect(message).toBe(`${field}: ${problems[0]!.remedy}`);
});
