/**
 * Needs, duty and hours of the batch that plan.test.ts works out: 100 hL, 13 536 bottles filled, 13 400 finished.
 */
import { materialKeys } from "../../../src/cellar/batch/materials";
import { expectPrinted } from "../../support/relative";
import { planOf, type Sections } from "./worked-batch";

const costsOf = (changes: Sections) => planOf(changes).costs;
const PRICED = Object.fromEntries(materialKeys.map((key) => [key, { price: 1 }]));
const IDLE = { tirage_hours: 0, riddling_hours: 0, disgorging_hours: 0, finishing_hours: 0 };

test("what is given by rate: 20, 30 and 40 g/hL of 100 hL are 2, 3 and 4 kg", () => {
  const { lines } = costsOf({ tirage: { yeast_gHL: 20, nutrient_gHL: 30, riddlingAid_gHL: 40 } });
  expect([lines.yeast.need, lines.nutrient.need, lines.riddlingAid.need]).toEqual([2, 3, 4]);
});

test("what has no rate is not needed", () => {
  const { lines } = costsOf({});
  expect([lines.yeast.need, lines.nutrient.need, lines.riddlingAid.need]).toEqual([0, 0, 0]);
});

test("sweet reserve wine is bought: 750·30/300 = 75 mL for each, 13 400 and 5 % more", () => {
  const reserve = { kind: "sweet reserve wine", target_gL: 30, strength_gL: 300, term: "" };
  const { lines } = costsOf({ dosage: reserve });
  expectPrinted(lines.dosageLiqueur.need, "1055.250");
  expect(lines.dosageSugar.need).toBe(0);
});

test("both other materials are paid for at finishing", () => {
  const costs = costsOf({
    materials: {
      other1: { name: "Dividers", need: 10, pack: 4, price: 3 },
      other2: { name: "Tissue", need: 5, pack: 5, price: 1 },
    },
  });
  // 3 packs of 4 at 3 each, a pack of 5 at 1 each
  expect([costs.lines.other1.cost, costs.lines.other2.cost]).toEqual([36, 5]);
  expect(costs.finishingMaterials).toBe(41);
});

test("duty by bottle and by volume: 13 400 · (0.1 + 2 · 0.75)", () =>
  expectPrinted(costsOf({ costs: { duty_perBottle: 0.1, duty_perL: 2 } }).duty, "21440.00"));

test("the wine in the tirage liqueur is paid for with that in the tank", () => {
  // 10 000·24/476 = 504.2017 L with 252.1008 kg, which take 157.5630 L: 346.6387 L of wine
  const costs = costsOf({ tirage: { sugarForm: "liqueur", liqueur_gL: 500 } });
  expectPrinted(costs.tirageWineL, "10346.64");
  expectPrinted(costs.baseWine, "20693.28");
});

describe("labour without a price", () => {
  const unpriced = (hours: Readonly<Record<string, number>>) =>
    costsOf({ materials: PRICED, costs: { labour_perHour: null, ...IDLE, ...hours } }).unpriced;

  test.each(["tirage_hours", "riddling_hours", "disgorging_hours", "finishing_hours"])(
    "is asked after where there is nothing but %s",
    (key) => expect(unpriced({ [key]: 1 })).toBe(1),
  );

  test("is not asked after where there is none to do", () => expect(unpriced({})).toBe(0));
});

test("no bottle held back leaves them all for sale", () => expect(costsOf({}).saleableBottles).toBe(13_400));

test("hours of riddling that are neither given nor worked out are none", () => {
  const { riddlingHours, riddlingLabour } = costsOf({ costs: { riddling_hours: null } });
  expect([riddlingHours, riddlingLabour]).toEqual([0, 0]);
});
