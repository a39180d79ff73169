/**
 * What somebody types into the plans and the What-if of a season that is there, calculated by a spreadsheet engine and
 * held against the calculation module.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { atSize, atSweetness, planIf } from "../../src/cellar/batch/what-if";
import { tiragePressure, tirageRange } from "../../src/functions/tirage-pressure";
import { seasonBook, type Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { calculatedSheets, shownAs, typedOver, type Typing } from "../support/calculated-sheets";
import { inputsOf, sampleInputs, sampleJson } from "../support/samples";
import { seasonFaults } from "../support/season-faults";

const batch = (inputs: ReturnType<typeof inputsOf>): Batch => ({ inputs, plan: planBatch(inputs) });
const sample = (file: string) => batch(sampleInputs(file));

// the quick ones first: mutation testing ends with the first that fails
test("a season of one batch, before anything is typed", () =>
  expect(seasonFaults([sample("oxlip-hill-rose.json")])).toEqual([]));

describe("typed into a season that is there", () => {
  const NAMES = ["brut", "rose"].map((name) => `oxlip-hill-${name}.json`);
  const written = () => seasonBook(NAMES.map(sample), "portable");
  const places = (sheets: readonly SheetData[]) => {
    const [season, plan, whatIf, , , otherWhatIf] = sheets;
    return { season: season!, plan: plan!, whatIf: whatIf!, otherWhatIf: otherWhatIf! };
  };
  /** The season with something else typed into the first plan and into a What-if. */
  function after(typing: Typing, whatIfTyping: Typing = {}) {
    const sheets = written();
    const { season, plan, whatIf, otherWhatIf } = places(sheets);
    const shown = calculatedSheets(
      sheets.map((sheet) => {
        if (sheet === plan) return typedOver(sheet, sheet.name, typing);
        return sheet === otherWhatIf ? typedOver(sheet, sheet.name, whatIfTyping) : sheet;
      }),
    );
    const seen = (sheet: SheetData) => (name: string) => shownAs(sheet, shown, sheet.name, name);
    return { season: seen(season), whatIf: seen(whatIf), otherWhatIf: seen(otherWhatIf) };
  }
  const close = (found: unknown, wanted: number) =>
    expect(Math.abs(Number(found) / wanted - 1)).toBeLessThan(1e-9);

  test("another size, more months than there are columns, another currency", () => {
    const brut = sampleJson(NAMES[0]!);
    Object.assign(brut.batch!, { bottle_mL: 1500, currency: "CHF" });
    Object.assign(brut.lees!, { lees_months: 60 });
    brut.dosage!.stock_L = 1;
    const [first, second] = [batch(inputsOf(brut)), sample(NAMES[1]!)];
    const { season, whatIf } = after({
      batch_bottle_mL: 1500,
      batch_currency: "CHF",
      lees_lees_months: 60,
      dosage_stock_L: 1,
    });
    expect(season("season_unlistedSizes")).toBe(1);
    expect(season("season_beyond")).toBe(1);
    expect(season("season_currency")).toBe("several currencies");
    expect(season("season_total_cost")).toBe(null);
    expect(season("season_total_worst")).toBe("stop");
    close(season("season_total_bottles"), first.plan.tirage.bottles + second.plan.tirage.bottles);
    close(
      season("season_total_saleable"),
      first.plan.costs.saleableBottles + second.plan.costs.saleableBottles,
    );
    close(season("season_total_sugar_kg"), first.plan.tirage.sugarKg + second.plan.tirage.sugarKg);
    close(season("season_1_bottle_mL"), 1500);
    // the plan's own figures stand beside "as planned"
    close(whatIf("whatif_size_5_plan_bottles"), first.plan.tirage.bottles);
    close(whatIf("whatif_size_5_plan_cost_total"), first.plan.costs.total);
  });

  test.each([
    [
      "a word for the base wine",
      { baseWine_volume_hL: "some" },
      ["baseWine_volume_hL", "plan_bottles", "plan_cost_total"],
    ],
    ["a word for a price", { materials_yeast_price: "dear" }, ["plan_cost_total"]],
  ] as const)("%s: What-if sums up nothing that the plan does not", (_, typing, figures) => {
    const { whatIf } = after(typing);
    for (const size of [1, 2, 3, 4, 5, 6])
      for (const figure of figures)
        expect([size, figure, whatIf(`whatif_size_${size}_${figure}`)]).toEqual([size, figure, null]);
  });

  test("sizes, labour, temperatures, steps of dose and sweetness of one's own", () => {
    const { otherWhatIf: seen } = after(
      {},
      {
        whatif_labour_pct: 40,
        whatif_size_1_pct: 30,
        whatif_size_2_pct: null,
        whatif_size_3_pct: "half",
        whatif_doseStep_gL: 0.5,
        whatif_at_1_C: 3,
        whatif_at_2_C: "cold",
        whatif_target_1_gL: 7,
        whatif_target_2_gL: null,
        whatif_target_3_gL: 120,
      },
    );
    const { inputs, plan } = sample(NAMES[1]!);
    const third = planIf(atSize(inputs, 30, 40))!;
    close(seen("whatif_size_1_baseWine_volume_hL"), inputs.baseWine.volume_hL * 0.3);
    close(seen("whatif_size_1_plan_tirageSugar_kg"), third.tirage.sugarKg);
    close(seen("whatif_size_1_plan_bottles"), third.tirage.bottles);
    close(seen("whatif_size_1_plan_cost_total"), third.costs.total);
    close(seen("whatif_size_1_plan_perBottle"), third.costs.perBottle);
    // without a number there is no size
    for (const size of [2, 3])
      for (const figure of ["baseWine_volume_hL", "plan_bottles", "plan_cost_total"])
        expect(seen(`whatif_size_${size}_${figure}`)).toBe(null);

    const { alcohol_vol, dissolvedCO2_gL } = inputs.baseWine;
    const { yield: share, headspace_pct, hottest_C } = inputs.tirage;
    const wine = [alcohol_vol, share, headspace_pct, dissolvedCO2_gL] as const;
    // nine doses, the plan's in the middle
    [-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2].forEach((away, index) => {
      const dose = plan.tirage.dose + away;
      close(seen(`whatif_dose_${index + 1}_gL`), dose);
      close(seen(`whatif_pressure_${index + 1}_1_bar`), tiragePressure(dose, 3, ...wine));
      expect(seen(`whatif_pressure_${index + 1}_2_bar`)).toBe(null);
      const blank = [undefined, undefined, undefined, undefined] as const;
      const [range] = tirageRange(
        dose,
        hottest_C,
        alcohol_vol,
        ...blank,
        share,
        headspace_pct,
        dissolvedCO2_gL,
      );
      close(seen(`whatif_pressure_${index + 1}_high_bar`), range![2]!);
    });

    const { dosage } = planIf(atSweetness(inputs, 7))!;
    expect(seen("whatif_target_1_room")).toBe(dosage.eachMl <= dosage.spaceMl! ? "fits" : "no room");
    expect(seen("whatif_target_2_room")).toBe(null);
    expect(seen("whatif_target_3_room")).toBe("no room");
  });
});
