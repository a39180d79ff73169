/**
 * A season's calendar, money and orders, by hand and by the laws that they keep.
 */
import * as formulajs from "@formulajs/formulajs";
import { isoFromSerial } from "../../../src/cellar/ageing";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch } from "../../../src/cellar/batch/plan";
import { seasonMonths } from "../../../src/cellar/season/calendar";
import { orderLines, orderOf } from "../../../src/cellar/season/orders";
import { SEVERAL_CURRENCIES, seasonTotals, type SeasonBatch } from "../../../src/cellar/season/season";
import { expectPrinted, expectRelative } from "../../support/relative";
import { changed, type Sections } from "../batch/worked-batch";

function batch(changes: Sections = {}): SeasonBatch {
  const parsed = parseBatchInputs(changed(changes));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
}

const worked = () => batch();
const magnums = () =>
  batch({ batch: { bottle_mL: 1500, tirageDate: "2024-08-15" }, lees: { lees_months: 12, rest_months: 4 } });

test("totals", () => {
  const [a, b] = [worked(), magnums()];
  const totals = seasonTotals([a, b]);
  expect([totals.volumeHl, totals.filled, totals.currency]).toEqual([200, 13_536 + 6768, "EUR"]);
  expectPrinted(totals.sugarKg, "487.31");
  expect(totals.cost).toBe(a.plan.costs.total + b.plan.costs.total);
  expect(totals.perBottle).toBe(totals.cost! / (13_400 + b.plan.costs.saleableBottles));
});

test("money in two currencies is not added", () => {
  const totals = seasonTotals([worked(), batch({ batch: { currency: "CHF" } })]);
  expect([totals.currency, totals.cost, totals.perBottle]).toEqual([SEVERAL_CURRENCIES, null, null]);
});

describe("the calendar", () => {
  test("work stands in its month", () => {
    const months = seasonMonths([worked()]);
    const at = (iso: string) => months.find(({ date }) => isoFromSerial(date) === iso)!;
    // tirage 31 May 2024, first turn 8 February 2025, disgorging 28 February, release 28 May
    // thirteen months, and three to spare
    expect(months).toHaveLength(16);
    expect(isoFromSerial(months[0]!.date)).toBe("2024-05-01");
    expect(at("2024-05-01")).toMatchObject({ tirageHl: 100, filled: 13_536, riddling: 0, hours: 10 });
    expect(at("2025-02-01")).toMatchObject({ riddling: 13_536, disgorging: 13_400, hours: 50, released: 0 });
    expect(at("2025-05-01")).toMatchObject({ released: 13_400, hours: 40, filled: 0 });
    expect(at("2024-12-01")).toMatchObject({ tirageHl: 0, filled: 0, disgorging: 0, hours: 0 });
  });

  test("what is paid and the interest of all months are the cost of the batches", () => {
    const batches = [worked(), magnums()];
    const months = seasonMonths(batches);
    const sum = months.reduce((total, { toPay, interest }) => total + toPay + interest, 0);
    // but for the rounding of the parts, half a cent each
    expect(Math.abs(sum - seasonTotals(batches).cost!)).toBeLessThan(0.01 * batches.length);
  });

  test("interest month by month is that of a spreadsheet's FV", () => {
    const one = worked();
    const { costs } = one.plan;
    const atTirage = costs.baseWine + costs.tirageMaterials + costs.tirageLabour;
    const atDisgorging =
      costs.finishingWine + costs.finishingMaterials + costs.riddlingLabour + costs.disgorgingLabour;
    const monthly = 1.21 ** (1 / 12) - 1;
    const grown = (amount: number, months: number) => formulajs.FV(monthly, months, 0, -amount) as number;
    const interest = seasonMonths([one]).reduce((total, month) => total + month.interest, 0);
    expectRelative(interest, grown(atTirage, 12) - atTirage + grown(atDisgorging, 3) - atDisgorging, 1e-9);
    // the money tied up in the last month has grown for eleven and for two
    expectRelative(seasonMonths([one])[12]!.tiedUp, grown(atTirage, 11) + grown(atDisgorging, 2), 1e-9);
  });

  test("a batch that is released in the month of its tirage is paid for at once", () => {
    const [only, ...more] = seasonMonths([batch({ lees: { lees_months: 0, rest_months: 0 } })]);
    expect(more.map(({ toPay, tiedUp }) => toPay + tiedUp)).toEqual([0, 0, 0]);
    expect([only!.interest, only!.tiedUp]).toEqual([0, 0]);
    const { costs } = batch({ lees: { lees_months: 0, rest_months: 0 } }).plan;
    expectRelative(only!.toPay, costs.total, 1e-9);
  });
});

describe("orders", () => {
  const orders = (batches: readonly SeasonBatch[]) =>
    orderLines(batches.map(({ inputs }) => inputs.batch.bottle_mL)).map((line) => ({
      ...line,
      ...orderOf(line, batches),
    }));
  const with25 = { materials: { tirageSugar: { pack: 25, price: 1, spare_pct: 2 } } };

  test("two batches that take 9.94 packs each order 20 together", () => {
    const sugar = orders([batch(with25), batch(with25)]).find(({ material }) => material === "tirageSugar")!;
    // 243.655·1.02 = 248.53 kg each, 9.94 packs and so 10; together 497.06 kg, 19.88 packs
    expectPrinted(sugar.needed, "497.06");
    expect([sugar.pack, sugar.packs, sugar.packsAlone, sugar.saved]).toEqual([25, 20, 20, 0]);
  });

  test("three that take 2.44 packs each take nine alone and eight together", () => {
    const pack = { materials: { tirageSugar: { pack: 100 } } };
    const sugar = orders([batch(pack), batch(pack), batch(pack)]).find(
      ({ material }) => material === "tirageSugar",
    )!;
    // 2.44 packs each: 3 alone; 7.31 together
    expect([sugar.packsAlone, sugar.packs, sugar.saved]).toEqual([9, 8, 1]);
  });

  test("bottles go by their size, labels by their batch, and packs that differ are not put together", () => {
    const found = orders([worked(), magnums()]);
    const bottles = found.filter(({ material }) => material === "bottles");
    expect(bottles.map(({ label, needed }) => [label, needed])).toEqual([
      ["Bottles, 750 mL", 13_536],
      ["Bottles, 1500 mL", 6768],
    ]);
    expect(found.find(({ material }) => material === "labels")!.together).toBe(false);
    const differing = orders([batch(with25), batch({ materials: { tirageSugar: { pack: 40 } } })])[0]!;
    expect([differing.material, differing.pack, differing.packs]).toEqual(["tirageSugar", "several", 17]);
  });

  test("what is ordered together covers the need, and is never more than batch by batch", () => {
    for (const order of orders([batch(with25), magnums(), batch({ baseWine: { volume_hL: 33 } })])) {
      expect(order.packs).toBeLessThanOrEqual(order.packsAlone);
      if (typeof order.pack === "number") {
        expect(order.packs * order.pack).toBeGreaterThanOrEqual(order.needed * (1 - 1e-9));
      }
    }
  });
});
