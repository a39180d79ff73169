/**
 * Limits, pressure classes and sweetness terms, from the same tables that the functions use.
 */
import { legalLimits, practiceLimits, type LegalLimits, type Limit } from "../../cellar/rules/limits";
import { pressureRules } from "../../cellar/rules/pressure-classes";
import { ruleSetsOf, sourceText } from "../../cellar/rules/source";
import { LANGUAGES, sweetnessRules, type SweetnessBand } from "../../cellar/rules/sweetness-bands";
import { RATIO_TO_20C } from "../../cellar/gauge-table";
import type { CellValue } from "../data";
import type { Row } from "../layout";
import { columnHeads, text } from "../plan/rows";
import { alsoName, alsoWords, boundName, gaugeName, wordName } from "./names";
import { headed } from "./rows";

const WORDS: Readonly<Record<string, string>> = {
  tirageRiseVol: "Rise of total alcohol at tirage, at most",
  dosageRiseVol: "Rise of actual alcohol at dosage, at most",
  totalSo2MgL: "Total SO2, at most",
  dosageShare: "Finishing dosage, share of the finished volume, at most",
  alcoholVol: "Alcohol of base and finished wine, at most",
  labelStepVol: "Alcohol on the label in steps of",
  labelToleranceVol: "Alcohol on the label off the analysis by at most",
  drySugarGL: "A dry base wine, glucose + fructose at most",
  baseAlcoholLowVol: "Base wine's alcohol, from",
  baseAlcoholHighVol: "Base wine's alcohol, to",
  alcoholAfterVol: "Alcohol that yeast can still finish at",
  modelLowC: "The model compared with a table from",
  modelHighC: "The model taken as good up to",
  modelEndC: "The model's end",
  filledLowPct: "Filled at tirage, of the bottle size, from",
  filledHighPct: "Filled at tirage, of the bottle size, to",
  filledFarPct: "… and never off by more than",
  neckBathC: "Neck bath, at most as warm as",
  sweetnessMarginGL: "Sugar off a term's bound by at least",
};

type BottleSizes = NonNullable<LegalLimits["bottleSizes"]>;

function wordsFor(key: string): string {
  const words = WORDS[key];
  if (words === undefined) throw new Error(`the notes have no words for ${key}`);
  return words;
}

const number = (value: CellValue) => ({ value, style: "result" as const });
const limitRow = (whose: string, key: string, { value, unit, source }: Limit): Row => ({
  cells: [
    text(wordsFor(key), "label"),
    text(whose, "label"),
    number(value),
    text(unit, "unit"),
    text(sourceText(source), "unit"),
  ],
});

export function limitRows(): Row[] {
  const legal = ruleSetsOf(legalLimits).flatMap((ruleSet) =>
    Object.entries<Limit | BottleSizes>({ ...legalLimits[ruleSet] }).flatMap(([key, limit]): Row[] => {
      if ("value" in limit) return [limitRow(ruleSet, key, limit)];
      const { allowedMl, spanMl, source } = limit;
      return [
        {
          cells: [
            text(`Bottle sizes between ${spanMl.join(" and ")} mL`, "label"),
            text(ruleSet, "label"),
            undefined,
            undefined,
            text(`${allowedMl.join(", ")} mL; ${sourceText(source)}`, "unit"),
          ],
        },
      ];
    }),
  );
  const practice = Object.entries(practiceLimits).map(([key, limit]) => limitRow("practice", key, limit));
  return [
    ...headed("Limits"),
    columnHeads("What", "Rules", ">Value", "~Unit", "~Source"),
    ...legal,
    ...practice,
  ];
}

export const pressureRows = (): Row[] => [
  ...headed("Pressure classes"),
  columnHeads("Class", "Rules", ">From", ">To", "~Counted in, and source"),
  ...ruleSetsOf(pressureRules).flatMap((ruleSet) => {
    const { measure, classes, source } = pressureRules[ruleSet];
    return classes.map(({ name, low, high, smallBottle }) => ({
      cells: [
        text(name, "label"),
        text(ruleSet, "label"),
        number(low),
        high === null ? { value: "open", style: "result" as const } : number(high),
        text(
          `${measure}${smallBottle ? `; from ${smallBottle.low} in bottles below ${smallBottle.belowMl} mL` : ""}; ${sourceText(source)}`,
          "unit",
        ),
      ],
    }));
  }),
];

export const sweetnessRows = (): Row[] => [
  ...headed("Sweetness terms, g/L glucose + fructose"),
  columnHeads("Term", "Rules", ">From", ">To", "~How, and source"),
  ...ruleSetsOf(sweetnessRules).flatMap((ruleSet) => {
    const { bands, source } = sweetnessRules[ruleSet];
    return bands.map((band, index) => {
      const bound = (value: number | null, which: "low" | "high") => ({
        value: value ?? "open",
        style: "result" as const,
        ...(value !== null && { name: boundName(ruleSet, index + 1, which) }),
      });
      const how = [
        ...(band.onlyWithoutAddedSugar ? ["only without added sugar"] : []),
        ...(band.lowIncluded ? [] : ["not the lower bound itself"]),
        ...(band.high === null || band.highIncluded ? [] : ["not the upper bound itself"]),
        ...(band.toleranceAbove > 0 ? [`analysis ${toleranceWords(band)}`] : []),
        sourceText(source),
      ];
      return {
        cells: [
          text(band.terms.en[0], "label"),
          text(ruleSet, "label"),
          bound(band.low, "low"),
          bound(band.high, "high"),
          text(how.join("; "), "unit"),
        ],
      };
    });
  }),
  ...wordRows(),
];

const toleranceWords = ({ toleranceBelow, toleranceAbove }: SweetnessBand) =>
  toleranceBelow > 0 ? `${toleranceBelow} below, ${toleranceAbove} above` : `${toleranceAbove} above`;

/** Every word for each term, one below the other, so that a formula can look for one. */
const wordRows = (): Row[] => [
  ...headed("Words for the label"),
  columnHeads("Word", "Rules", "Language", "", "~Term, and source"),
  ...ruleSetsOf(sweetnessRules).flatMap((ruleSet) => {
    const { bands, words } = sweetnessRules[ruleSet];
    return bands.flatMap(({ terms }, index) => {
      const row = (word: string, language: string, name: string): Row => ({
        cells: [
          { ...text(word, "label"), name },
          text(ruleSet, "label"),
          text(language, "label"),
          undefined,
          text(`${terms.en[0]}; ${sourceText(words)}`, "unit"),
        ],
      });
      return [
        ...LANGUAGES.map((language) =>
          row(terms[language][0], language, wordName(ruleSet, index + 1, language)),
        ),
        ...alsoWords(ruleSet, index + 1).map((word, also) =>
          row(word, "also", alsoName(ruleSet, index + 1, also + 1)),
        ),
      ];
    });
  }),
];

export const gaugeRows = (): Row[] => [
  ...headed(
    "Gauge readings away from 20 °C: excess pressure at 20 °C over that at t (memory: OIV-MA-AS314-02)",
  ),
  columnHeads("t, °C", ">Ratio"),
  ...RATIO_TO_20C.map((ratio, celsius) => ({
    cells: [
      { value: celsius, style: "unit" as const },
      { value: ratio, style: "result" as const, format: "0.00", name: gaugeName(celsius) },
    ],
  })),
];
