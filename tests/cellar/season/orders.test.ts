/**
 * Orders and totals of a season at their ends. The worked batch is that of batch/plan.test.ts.
 */
import { isoFromSerial } from "../../../src/cellar/ageing";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { materialKeys, materials } from "../../../src/cellar/batch/materials";
import { planBatch } from "../../../src/cellar/batch/plan";
import { batchMoney, seasonMonths } from "../../../src/cellar/season/calendar";
import { orderLines, orderOf, type Order } from "../../../src/cellar/season/orders";
import { seasonTotals, type SeasonBatch } from "../../../src/cellar/season/season";
import { changed, type Sections } from "../batch/worked-batch";

function batch(changes: Sections = {}): SeasonBatch {
  const parsed = parseBatchInputs(changed(changes));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
}
function orderFor(material: string, batches: readonly SeasonBatch[]): Order {
  const line = orderLines([750]).find((each) => each.material === material)!;
  return orderOf(line, batches);
}

describe("lines", () => {
  test("of what goes by size stand smallest first, each size once", () => {
    const bottles = orderLines([750, 1500, 375, 750]).filter(({ material }) => material === "bottles");
    expect(bottles.map(({ sizeMl, label }) => [sizeMl, label])).toEqual([
      [375, "Bottles, 375 mL"],
      [750, "Bottles, 750 mL"],
      [1500, "Bottles, 1500 mL"],
    ]);
  });

  test("of everything else stand once, without a size", () => {
    const lines = orderLines([375, 750]);
    const bySize = materialKeys.filter((key) => materials[key].together === "size");
    // bottles, capsules and cartons twice, the other eleven and the two others once
    expect(bySize).toEqual(["bottles", "capsules", "cartons"]);
    expect(lines).toHaveLength(6 + 11 + 2);
    const labels = lines.find(({ material }) => material === "labels")!;
    expect([labels.label, labels.sizeMl, labels.together]).toEqual(["Labels", null, false]);
  });

  test("of the others are numbered, and are each batch's own", () => {
    const others = orderLines([750]).slice(-2);
    expect(others.map(({ label, unit, together }) => [label, unit, together])).toEqual([
      ["Other 1", "", false],
      ["Other 2", "", false],
    ]);
  });
});

describe("an order", () => {
  const yeast = { tirage: { yeast_gHL: 20 }, materials: { yeast: { pack: 0.5 } } };

  test("goes by the pack of those who need it: 2 kg in packs of 0.5", () => {
    // the other batch has packs of 1 and no yeast
    const order = orderFor("yeast", [batch(yeast), batch()]);
    expect([order.needed, order.pack, order.packs, order.packsAlone]).toEqual([2, 0.5, 4, 4]);
  });

  test("of what nobody needs has no pack and no packs", () =>
    expect(orderFor("yeast", [batch(), batch()])).toEqual({
      needed: 0,
      pack: "",
      packs: 0,
      packsAlone: 0,
      saved: 0,
      cost: 0,
      first: "",
    }));

  test("is first needed at the earliest tirage or disgorging that it serves", () => {
    const later = { batch: { tirageDate: "2024-08-15" } };
    const day = (material: string) =>
      isoFromSerial(Number(orderFor(material, [batch(later), batch()]).first));
    expect([day("bottles"), day("corks")]).toEqual(["2024-05-31", "2025-02-28"]);
  });

  test("costs what its batches pay: ten packs of 25 kg at 1 each", () => {
    const sugar = { materials: { tirageSugar: { pack: 25, price: 1 } } };
    expect(orderFor("tirageSugar", [batch(sugar), batch(sugar)]).cost).toBe(500);
  });

  test("of bottles leaves out those of another size", () => {
    const magnums = batch({ batch: { bottle_mL: 1500 } });
    expect(orderFor("bottles", [magnums])).toMatchObject({ needed: 0, pack: "", packs: 0, cost: 0 });
  });
});

describe("totals", () => {
  test("the worst of the batches is that of the season", () => {
    // eight months on the lees where nine are asked; without prices the worked batch is to be looked at
    const short = batch({ lees: { lees_months: 8 } });
    expect(seasonTotals([batch(), short]).worst).toBe("stop");
    expect(seasonTotals([batch()]).worst).toBe("look again");
  });

  test("of no batches are nothing, in no currency", () =>
    expect(seasonTotals([])).toMatchObject({ volumeHl: 0, filled: 0, currency: "", cost: 0, worst: "fine" }));
});

describe("the money of a batch", () => {
  const priced = () =>
    batch({
      materials: { bottles: { price: 0.5 }, corks: { price: 0.2 } },
      costs: { storage_perBottleMonth: 0 },
    });

  test("is paid where the work is: materials of the tirage with it, those of the finishing at disgorging", () => {
    const money = batchMoney(priced());
    // 20 000 of wine, 13 536 · 0.5, 10 h at 20; 448.48 of wine, 13 400 · 0.2, 30 h at 20
    expect(money.paidAtTirage).toBeCloseTo(20_000 + 6768 + 200, 6);
    expect(money.paidAtRiddling).toBe(400);
    expect(money.paidAtDisgorging).toBeCloseTo(448.48 + 2680 + 600, 6);
    // 40 h at 20 and the duty, 13 400 · 0.1
    expect(money.paidAtRelease).toBeCloseTo(800 + 1340, 6);
  });

  test("lies for so many days: 31 May to 28 February, and on to 28 May", () => {
    const { leesDays, restDays } = batchMoney(batch());
    // June 30, July 31, August 31, September 30, October 31, November 30, December 31, January 31, February 28
    expect([leesDays, restDays]).toEqual([273, 31 + 30 + 28]);
  });

  test("with materials too, what is paid and the interest make the cost", () => {
    const one = priced();
    const sum = seasonMonths([one]).reduce((total, { toPay, interest }) => total + toPay + interest, 0);
    expect(Math.abs(sum - one.plan.costs.total)).toBeLessThan(0.01);
  });
});
