/**
 * Limits, pressure classes and sweetness terms, from the same tables that the functions use.
 */
import { legalLimits, practiceLimits, type LegalLimits, type Limit } from "../../cellar/rules/limits";
import { pressureRules } from "../../cellar/rules/pressure-classes";
import { ruleSetsOf, sourceText } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
import type { CellValue } from "../data";
import type { Row } from "../layout";
import { columnHeads, text } from "../plan/rows";
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
  columnHeads("Term", "Rules", ">From", ">To", "~Words in other languages, and source"),
  ...ruleSetsOf(sweetnessRules).flatMap((ruleSet) => {
    const { bands, source } = sweetnessRules[ruleSet];
    return bands.map((band) => {
      const { en, ...others } = band.terms;
      const bound = (value: number | null, included: boolean, word: string) =>
        value === null ? "open" : included ? value : `${word} ${value}`;
      const words = Object.entries(others).map(([language, [usual]]) => `${language} ${usual}`);
      return {
        cells: [
          text(en[0], "label"),
          text(ruleSet, "label"),
          { value: bound(band.low, band.lowIncluded, "above"), style: "result" as const },
          { value: bound(band.high, band.highIncluded, "below"), style: "result" as const },
          text(
            `${band.onlyWithoutAddedSugar ? "only without added sugar; " : ""}${words.join(", ")}; ${sourceText(source)}`,
            "unit",
          ),
        ],
      };
    });
  }),
];
