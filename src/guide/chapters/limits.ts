/**
 * The limits of the model, with figures.
 */
import { expectedPressure } from "../../cellar/carbonation";
import { DEFAULT_HEADSPACE_PCT, DEFAULT_YIELD, NITROGEN_AT_20C_BAR } from "../../cellar/constants";
import { domains } from "../../cellar/domains";
import { practiceLimits } from "../../cellar/rules/limits";
import { DEFAULT_SPREAD } from "../../cellar/spread";
import { sucroseGL } from "../../cellar/units";
import { CAUTIONS } from "../../workbook/plan/cautions";
import type { Chapter } from "../chapter";
import { ofPane } from "../clip";

const LOWER_YIELD = 0.9;
const pressureAt = (yieldShare: number) =>
  expectedPressure(
    {
      dose: sucroseGL(24),
      baseAlcoholVol: 10.5,
      yieldShare,
      headspacePct: DEFAULT_HEADSPACE_PCT,
      dissolvedCo2GL: 0,
    },
    10,
  ).toFixed(2);

const minus = (value: number) => String(value).replace("-", "−");
const { modelLowC, modelHighC, modelEndC } = practiceLimits;
const { temperatureC } = domains;
const { doseGL, yieldShare, temperatureC: spreadC, headspacePct } = DEFAULT_SPREAD;

export const limits: Chapter = {
  key: "limits",
  title: "Limits of the model",
  about:
    "The figures are estimates. This chapter says how good they are, where they were compared with published ones and how far apart they lie.",
  steps: [
    {
      text: `Range. Functions take ${minus(temperatureC.min)} to ${temperatureC.max} °C. The solubility of CO2 follows a published relation at 20 °C and is carried to other temperatures by a fit to a table from ${modelLowC.value} to 25 °C. It is taken as good from ${modelLowC.value} to ${modelHighC.value} °C; beyond, the check **Warmest day is within the model's 0 °C to** says look again, above ${modelEndC.value} °C stop.`,
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.writePlan();
      },
      picture: {
        name: "pressure-curve",
        alt: "The drawing of excess pressure against temperature: the expected line, the band for 95 % of the bottles, cellar and hottest day marked, the rating as a dashed line.",
        of: (bench) => ofPane(bench, bench.pane.locator("#step-tirage .picture")),
      },
    },
    {
      text: `Spread. The band round the line holds 95 % of the bottles if dose, yield, temperature and headspace differ from bottle to bottle independently, with standard deviations of ${doseGL} g/L, ${yieldShare}, ${spreadC} °C and ${headspacePct} percentage points. These stand for a careful tirage and come from memory, without a published source; the function TIRAGE.RANGE takes your own. One bottle in forty may lie above the band, one below.`,
    },
    {
      text: `Yield. **CO2 yield** is the share of the full CO2 that is really obtained. ${DEFAULT_YIELD} comes from memory. With ${LOWER_YIELD} instead, 24 g/L in a wine of 10.5 % vol make ${pressureAt(LOWER_YIELD)} bar at 10 °C instead of ${pressureAt(DEFAULT_YIELD)}. A gauge reading of a finished fermentation gives your own: the function TIRAGE.YIELD. **Headspace under the cap** is that of a worked example, 25 mL over 750 mL; under it ${NITROGEN_AT_20C_BAR} bar of nitrogen from the air are assumed, and that all sugar ferments.`,
      picture: {
        name: "assumed",
        alt: "The fields CO2 yield, 0.95, share of the full CO2 really obtained (memory), and headspace under the cap, 3.3333 % of the wine, 25 mL over 750 mL.",
        of: (bench) => ofPane(bench, bench.field("tirage.yield"), bench.field("tirage.headspace_pct")),
      },
    },
    {
      text: "Comparison. The table below sets the model beside published figures and rules of the trade. Where a figure comes from memory, it says so. The plan also gives **At 20 °C by the official gauge table**, beside the physics: they are two answers, and each is named.",
    },
  ],
  comparisons: [
    {
      what: "Solubility of CO2 at 20 °C",
      against: "EU and OIV relation (read)",
      apart: "agrees to the last printed digit",
      test: ["eu-oiv-solubility", "g/L, %d bar absolute: %s g/L"],
    },
    {
      what: "Solubility of CO2, 0 to 25 °C",
      against: "table for 12.5 % vol and 10 g/L, 26 values (memory)",
      apart: "within 3 %; lower at every degree, so that the pressure comes out higher by as much",
      test: ["solubility-table", "the module is lower at every degree, by less than 3 %"],
    },
    {
      what: "Pressure in a closed bottle",
      against: "worked example of a physics olympiad, 4.81 bar at 6 °C (read)",
      apart: "agrees as printed with the solubility given there; 1.1 % above with the model's own",
      test: ["physics-olympiad-2025", "it stays within 1.2 %"],
    },
    {
      what: "24 g/L at 10 °C: 5.25 bar",
      against: "rule of the trade, 6 bar (read)",
      apart: "the rule is 14 % above the model",
      test: ["trade-rules", "14 % above the module"],
    },
    {
      what: "4.57 g/L of sugar a bar at 10 °C, 4.24 at 12 °C",
      against: "rule of the trade, 4 g/L a bar (practice)",
      apart: "the rule asks for 6 to 13 % less sugar; at 20 °C it would be about 3",
      test: ["trade-rules", "4 g/L of sugar a bar is true near 10 to 12 °C"],
    },
    {
      what: "CO2 from 24 g/L: 11.7 g/L",
      against: "close to 11.5 g/L in finished bottles (read)",
      apart: "2 % above, before anything is lost at disgorging",
      test: ["trade-rules", "24 g/L make 11.7"],
    },
    {
      what: "Alcohol from 24 g/L: 1.34 % vol",
      against: "1.2 to 1.3 % vol (read)",
      apart: "0.04 to 0.14 % vol above",
      test: ["trade-rules", "the module says 1.34"],
    },
    {
      what: "Pressure moved to 20 °C by the physics",
      against: "the official gauge table (memory), 6 bar at 20 °C",
      apart:
        "with CO2 alone in the neck the table comes out 26 % lower for a reading at 0 °C, 11 % lower at 10 °C, 6 % higher at 25 °C; with nitrogen from the air 15 % and 6 % lower at 0 and 10 °C",
      test: ["gauge-table", "bar of nitrogen: off the physics by %d"],
    },
    {
      what: "Freezing point of a wine of 12 % vol: −4.35 °C",
      against: "half the alcohol degree below zero (practice)",
      apart: "1.6 °C above",
      test: ["trade-rules", "wine freezes at half the alcohol degree below zero"],
    },
    {
      what: "Density of sugar solutions",
      against: "a handbook's table (memory)",
      apart: "at most 0.023 %",
      test: ["sucrose-handbook-table", "%d °Brix: %d g/mL, to 0.025 %"],
    },
  ],
  lists: [
    {
      heading: "What it does not do",
      items: [
        "It gives no rating for glass. The check compares with the rating that you type in from the glass maker's own sheet; blank is never fine.",
        "It gives no oenological advice. It does not know whether a wine will ferment, is stable or tastes good; rates of yeast, nutrient and riddling aid come from the supplier's sheet.",
        "It is not the law. Regulation figures carry their source, a mark and the day they were recorded; some were read in a text about the law, some come from memory. The local text decides, and limits can be typed over.",
        "It does not measure. Sugar before filling and pressure afterwards are measured by you; a fermentation that sticks is only seen from your gauge readings.",
        "Lees and riddling are counted in days and hours; how a sediment really behaves is not calculated.",
      ],
    },
    { heading: "Cautions", items: CAUTIONS },
  ],
};
