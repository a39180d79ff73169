/**
 * The register of the batch that plan.test.ts works out: each line by hand, and what goes in and out adds up.
 */
import { isoFromSerial } from "../../../src/cellar/ageing";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch } from "../../../src/cellar/batch/plan";
import {
  REGISTER_KEYS,
  registerLines,
  type RegisterKey,
  type RegisterLine,
} from "../../../src/cellar/batch/register";
import { expectPrinted, expectRelative } from "../../support/relative";
import { changed, type Sections } from "./worked-batch";

function registerOf(changes: Sections = {}): Record<RegisterKey, RegisterLine> {
  const parsed = parseBatchInputs(changed(changes));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return registerLines(parsed.inputs, planBatch(parsed.inputs));
}

const LIQUEUR = {
  tirage: { sugarForm: "liqueur", liqueur_gL: 500, starterTarget_Mcells_mL: 2, starter_Mcells_mL: 102 },
};
const RATES = { tirage: { yeast_gHL: 20, nutrient_gHL: 30, riddlingAid_gHL: 40 } };
const BATCHES: readonly (readonly [string, Sections])[] = [
  ["dry sugar", {}],
  ["liqueur and starter", LIQUEUR],
  ["magnums, a loss at filling", { batch: { bottle_mL: 1500 }, tirage: { loss_pct: 2 } }],
  ["no dosage", { dosage: { kind: "none", term: "" } }],
  ["stock held back", { costs: { heldBack_bottles: 400, breakage_pct: 3 } }],
];

test("every line of the list, and no other", () =>
  expect(Object.keys(registerOf()).sort()).toEqual([...REGISTER_KEYS].sort()));

test("a line goes one way: in, or out", () => {
  for (const [key, line] of Object.entries(registerOf())) {
    const ways = [line.in, line.out].filter((amount) => amount !== "");
    expect([key, ways.length]).toEqual([key, 1]);
  }
});

describe("into the tank", () => {
  test("wine and dry sugar: 100 hL and the 152.284 L that 243.655 kg take", () => {
    const { baseWine, starter, tirageSugar, tirageLiqueur } = registerOf();
    expect([baseWine.in, baseWine.volumeHl]).toEqual([100, 100]);
    expect([starter.in, starter.volumeHl]).toEqual([0, 100]);
    expectPrinted(tirageSugar.in as number, "243.655");
    expectPrinted(tirageSugar.volumeHl, "101.52284");
    expect(tirageLiqueur.in).toBe(0);
    expect(tirageLiqueur.volumeHl).toBe(tirageSugar.volumeHl);
  });

  test("a liqueur: its sugar is in it, so the volume grows with its own line", () => {
    const { starter, tirageSugar, tirageLiqueur } = registerOf(LIQUEUR);
    // 10 000·2/100 = 200 L; 10 200·24/476 = 514.286 L with 257.143 kg
    expect([starter.in, starter.volumeHl]).toEqual([200, 102]);
    expectPrinted(tirageSugar.in as number, "257.143");
    expect(tirageSugar.volumeHl).toBe(102);
    expectPrinted(tirageLiqueur.in as number, "514.286");
    expectPrinted(tirageLiqueur.volumeHl, "107.14286");
  });

  test("yeast, nutrient and riddling aid by their rates; they are not counted as volume", () => {
    const { yeast, nutrient, riddlingAid } = registerOf(RATES);
    expect([yeast.in, nutrient.in, riddlingAid.in]).toEqual([2, 3, 4]);
    for (const line of [yeast, nutrient, riddlingAid]) expectPrinted(line.volumeHl, "101.52284");
  });

  test("bottles are not counted before they are filled", () => {
    const { baseWine, tirageSugar, fillingLoss } = registerOf();
    expect([baseWine.bottles, tirageSugar.bottles, fillingLoss.bottles]).toEqual(["", "", ""]);
  });
});

describe("into bottles", () => {
  test("13 536 of 750 mL are 101.52 hL, and 0.00284 hL are left over", () => {
    const { filling, fillingLoss } = registerOf();
    expectPrinted(filling.out as number, "101.520000");
    expect(filling.bottles).toBe(13_536);
    expectPrinted(fillingLoss.out as number, "0.00284");
    expectPrinted(fillingLoss.volumeHl, "101.520000");
  });

  test.each(BATCHES)("%s: what was in the tank is lost or filled", (_what, changes) => {
    const { tirageLiqueur, fillingLoss, filling } = registerOf(changes);
    expectRelative((fillingLoss.out as number) + (filling.out as number), tirageLiqueur.volumeHl, 1e-12);
    expect(fillingLoss.out as number).toBeGreaterThanOrEqual(0);
    expect(filling.volumeHl).toBe(filling.out);
  });
});

describe("through disgorging", () => {
  test("by hand: 136 broken, 268 L lost, 127.3 L of liqueur and 140.7 L of wine put in", () => {
    const lines = registerOf();
    expect([lines.breakage.out, lines.breakage.bottles, lines.disgorging.out]).toEqual([136, 13_400, 13_400]);
    // 13 400 · 0.75 L; less 13 400 · 20 mL; 9.5 and 10.5 mL back
    for (const line of [lines.breakage, lines.disgorging, lines.finished])
      expectPrinted(line.volumeHl, "100.500000");
    expectPrinted(lines.disgorgingLoss.out as number, "268.000");
    expectPrinted(lines.disgorgingLoss.volumeHl, "97.8200");
    expectPrinted(lines.dosageSugar.in as number, "80.199");
    expectPrinted(lines.dosageSugar.volumeHl, "97.8200");
    expectPrinted(lines.dosageLiqueur.in as number, "127.30");
    expectPrinted(lines.dosageLiqueur.volumeHl, "99.0930");
    expectPrinted(lines.topUp.in as number, "140.70");
    expectPrinted(lines.topUp.volumeHl, "100.5000");
    expect(lines.finished.in).toBe(13_400);
  });

  test.each(BATCHES)("%s: what is lost of each bottle is put back", (_what, changes) => {
    const { disgorging, disgorgingLoss, dosageLiqueur, topUp, finished } = registerOf(changes);
    const [lost, liqueur, wine] = [disgorgingLoss.out, dosageLiqueur.in, topUp.in] as number[];
    expectRelative(liqueur! + wine!, lost!, 1e-12);
    expectRelative(disgorgingLoss.volumeHl, disgorging.volumeHl - lost! / 100, 1e-12);
    expectRelative(dosageLiqueur.volumeHl, disgorgingLoss.volumeHl + liqueur! / 100, 1e-12);
    expectRelative(topUp.volumeHl, dosageLiqueur.volumeHl + wine! / 100, 1e-12);
    expectRelative(finished.volumeHl, topUp.volumeHl, 1e-12);
  });

  test("a liqueur with no room for it leaves nothing to top up, and the bottles too full", () => {
    // 9.5 mL into 9: the plan stops there, and the register shows the half millilitre too much, 13 400 · 0.5 mL
    const { topUp, finished } = registerOf({ disgorging: { lost_mL: 9 } });
    expect(topUp.in).toBe(0);
    expectPrinted((finished.volumeHl - 100.5) * 100, "6.70");
  });

  test("bottles of 750 mL filled with 740: more of them, and full only when they are topped up", () => {
    const { filling, disgorging, finished } = registerOf({ disgorging: { filled_mL: 740 } });
    // 10 152.284 L/0.74 L = 13 719.3; of these 13 581 are left, at 740 mL and then at 750
    expect(filling.bottles).toBe(13_719);
    expectPrinted(disgorging.volumeHl, "100.4994");
    expectPrinted(finished.volumeHl, "101.8575");
  });

  test("the liqueur's sugar and wine are the liqueur used and the liqueur left over", () => {
    const { dosageSugar, dosageWine, dosageLiqueur, dosageLeft } = registerOf();
    // 80.199 kg displace 50.124 L; with 83.541 L of wine 133.665 L, of which 127.3 are used
    expectPrinted(dosageWine.in as number, "83.541");
    expectPrinted((dosageSugar.in as number) * 0.625 + (dosageWine.in as number), "133.665");
    expectPrinted(dosageLeft.out as number, "6.365");
    expectRelative((dosageLiqueur.in as number) + (dosageLeft.out as number), 133.665, 1e-5);
  });

  test.each(BATCHES)("%s: bottles filled are broken, released or still there", (_what, changes) => {
    const { filling, breakage, release } = registerOf(changes);
    const gone = [breakage.out, release.out, release.bottles] as number[];
    expect(gone.reduce((sum, bottles) => sum + bottles, 0)).toBe(filling.bottles);
  });
});

test("13 000 of 13 400 are released, and 400 held back stay: 3 hL", () => {
  const { release } = registerOf({ costs: { heldBack_bottles: 400 } });
  expect([release.out, release.bottles]).toEqual([13_000, 400]);
  expectPrinted(release.volumeHl, "3.0000");
});

test("each line stands on the day of its work", () => {
  const days = Object.entries(registerOf()).map(([key, { date }]) => [key, isoFromSerial(date)]);
  const on = (iso: string) => days.filter(([, day]) => day === iso).map(([key]) => key);
  expect(on("2024-05-31")).toHaveLength(10);
  expect(on("2025-02-28").sort()).toEqual([
    "breakage",
    "disgorging",
    "disgorgingLoss",
    "dosageLeft",
    "dosageLiqueur",
    "dosageSugar",
    "dosageWine",
    "finished",
    "topUp",
  ]);
  expect(on("2025-05-28").sort()).toEqual(["release"]);
});
