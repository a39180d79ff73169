/**
 * DOSAGE workings for the bench.
 */
import { filledCells } from "../cellar/cells";
import { domains, within } from "../cellar/domains";
import { GLASS_ML, shareOfStronger, trialRow } from "../cellar/dosage";
import { unanswerable } from "../cellar/refusal";
import { sweetnessRules } from "../cellar/rules/sweetness-bands";
import { driestTerm } from "../cellar/sweetness";
import { invertGL } from "../cellar/units";
import { bottle, dosageStep, liqueur, wine } from "./dosage";
import { explainer } from "./notebook";
import { inProse } from "./numbers";
import { LAW_CARE, MASS_BALANCE, ofRow } from "./sources";

/** Targets worked out in full; a long range repeats itself. */
const WORKED_TARGETS = 10;

export const bench = {
  "DOSAGE.BLEND": explainer("weaker_gL stronger_gL target_gL", (on) => {
    const weaker = on.number("weaker_gL", domains.strengthGL, "[a] Sugar of the weaker");
    const stronger = on.number("stronger_gL", domains.strengthGL, "[b] Sugar of the stronger");
    const wanted = on.number("target_gL", domains.strengthGL, "[T] Sugar wanted");
    const result = shareOfStronger(weaker, stronger, wanted);
    on.step(
      "How far the target lies on the way from the weaker to the stronger",
      "x = (T − a)/(b − a)",
      result,
      "",
    );
    return { result, unit: "share of the stronger, 0 to 1", sources: [MASS_BALANCE] };
  }),

  "DOSAGE.TRIAL": explainer("bottle_mL wine_gL liqueur_gL targets", (on) => {
    const [b, w, l] = [bottle(on), wine(on), liqueur(on)];
    const cells = filledCells(on.raw("targets"));
    if (cells.length === 0) throw unanswerable("targets", null, "give at least one sweetness to try");
    const targets = cells.map((cell) => within(domains.strengthGL, cell, "targets"));
    const rows = targets.map((target, index) => {
      const row = trialRow(b, w, target, l);
      const x = String(index + 1);
      const inFull = index < WORKED_TARGETS;
      if (inFull) on.ofRange("targets", `[St${x}] Sweetness to try`, target, "g/L");
      if (row.reason !== undefined) {
        if (inFull) on.say(`${inProse(target)} g/L cannot be reached`, row.reason);
        return [target, "", "", row.reason];
      }
      const term = driestTerm(invertGL(target), target > w, "EU", "en");
      if (inFull) {
        dosageStep(on, row.bottleMl, target === w, x);
        on.constant({
          symbol: "Vg",
          value: GLASS_ML,
          unit: "mL",
          what: "glass of the trial",
          source: { text: "common practice, no source", mark: "practice" },
        });
        on.step("The glass in proportion", `g${x} = v${x}·Vg/Vb`, row.glassMl, "mL");
        on.say(`Driest EU term that ${inProse(target)} g/L permits`, term);
      }
      return [target, row.bottleMl, row.glassMl, term];
    });
    if (rows.length > WORKED_TARGETS)
      on.say(`And so on for the other ${rows.length - WORKED_TARGETS} targets`, "…");
    return {
      result: rows,
      unit: "rows of g/L, mL a bottle, mL in the glass, term",
      sources: [MASS_BALANCE, ofRow(sweetnessRules.EU.source)],
      cautions: [LAW_CARE],
    };
  }),
};
