/**
 * LABEL workings.
 */
import { ruleSets } from "../cellar/cells";
import { domains } from "../cellar/domains";
import {
  ENERGY_PER_G,
  energyPer100Ml,
  fillErrorMl,
  fillErrorRow,
  labelAlcoholVerdict,
  labelAlcoholVol,
} from "../cellar/label";
import { legalLimits } from "../cellar/rules/limits";
import { explainer } from "./notebook";
import { ALCOHOL_UNITS, ENERGY, FILL_ERROR, ofRow } from "./sources";

const ENERGY_UNITS = Object.keys(ENERGY_PER_G) as (keyof typeof ENERGY_PER_G)[];

export const label = {
  "LABEL.ALCOHOL": explainer("alcohol_vol", (on) => {
    const result = labelAlcoholVol(on.number("alcohol_vol", domains.alcoholVol, "[A] Alcohol of the wine"));
    on.step(
      "Twice the value rounded to a whole, and halved: the nearest whole or half unit",
      "a = round(A·2)/2",
      result,
      "% vol",
    );
    return { result, unit: "% vol", sources: [ALCOHOL_UNITS] };
  }),

  "LABEL.ENERGY": explainer("alcohol_vol sugar_gL acid_gL glycerol_gL unit", (on) => {
    const alcohol = on.number("alcohol_vol", domains.alcoholVol, "[A] Alcohol of the wine");
    const sugar = on.number("sugar_gL", domains.strengthGL, "[s] Sugar");
    const acid = on.optional("acid_gL", domains.acidityGL, "[o] Organic acids", 0, "g/L");
    const glycerol = on.optional("glycerol_gL", domains.strengthGL, "[g] Glycerol", 0);
    const unit = on.word("unit", ENERGY_UNITS, "Unit", "kJ");
    const result = energyPer100Ml(alcohol, sugar, acid, glycerol, unit);
    const { alcohol: fa, carbohydrate: fs, organicAcid: fo, polyol: fg } = ENERGY_PER_G[unit];
    const factor = (symbol: string, value: number, what: string) =>
      on.constant({ symbol, value, unit: `${unit}/g`, what: `energy of ${what}`, source: ENERGY });
    factor("fa", fa, "alcohol");
    factor("fs", fs, "carbohydrate");
    factor("fo", fo, "organic acids");
    factor("fg", fg, "polyols, as glycerol");
    on.step(
      "1 % vol is 1 mL in 100 mL; 1 g/L is a tenth of a gram in them",
      "E = A·ρe·fa + (s·fs + o·fo + g·fg)/10",
      result,
      unit,
    );
    return { result, unit: `${unit} in 100 mL, unrounded`, sources: [ENERGY] };
  }),

  "LABEL.ALCOHOLCHECK": explainer("label_vol measured_vol rules", (on) => {
    const labelVol = on.number("label_vol", domains.alcoholVol, "[a] Alcohol on the label");
    const measuredVol = on.number("measured_vol", domains.alcoholVol, "[A] Alcohol measured");
    const rules = on.word("rules", ruleSets.label, "Whose tolerance", "EU");
    const result = labelAlcoholVerdict(labelVol, measuredVol, rules);
    const { value, unit, source } = legalLimits[rules].labelToleranceVol!;
    on.constant({
      symbol: "tol",
      value,
      unit,
      what: `tolerance of the ${rules} rules`,
      source: ofRow(source),
    });
    on.step("Label and analysis lie apart by", "D = |a − A|", Math.abs(labelVol - measuredVol), "% vol");
    on.say(`The ${rules} row allows ${value} ${unit}, that value included`, result);
    return { result, unit: "", sources: [ofRow(source)], cautions: ["Local law decides."] };
  }),

  "LABEL.FILL": explainer("bottle_mL", (on) => {
    const bottle = on.number("bottle_mL", domains.bottleMl, "[V] Nominal volume");
    const result = fillErrorMl(bottle);
    const { uptoMl, ml, pct } = fillErrorRow(bottle);
    const row = uptoMl === Infinity ? "sizes above the last bound" : `sizes up to ${uptoMl} mL`;
    if (pct === undefined) on.found(`Row used: ${row}, a fixed error of`, ml!, "mL");
    else {
      on.constant({ symbol: "k", value: pct, unit: "%", what: `error of ${row}`, source: FILL_ERROR });
      on.step(
        `Row used: ${row}, ${pct} % of the volume, rounded up to a tenth of a mL`,
        "f = ⌈V·k/10⌉/10",
        result,
        "mL",
      );
    }
    return { result, unit: "mL", sources: [FILL_ERROR] };
  }),
};
