/**
 * What each check is about, for the sheet and for the pane.
 */
import { practiceLimits } from "../rules/limits";
import { wordNumber } from "../refusal";
import { CHECK_KEYS, INPUT_CHECKS, type Check, type CheckKey, type InputCheck, type Verdict } from "./checks";
import { sectionTitles } from "./fields";

export interface CheckWords {
  readonly what: string;
  readonly unit: string;
}

const { baseAlcoholLowVol, filledLowPct, modelLowC } = practiceLimits;

const WORDS: Readonly<Record<Exclude<CheckKey, InputCheck>, readonly [what: string, unit: string]>> = {
  dryness: ["Base wine is dry: glucose + fructose at most", "g/L"],
  baseAlcohol: [`Base wine's alcohol between ${baseAlcoholLowVol.value} and`, "% vol"],
  totalSo2: ["Total SO2 at most", "mg/L"],
  tirageRise: ["Rise of alcohol at tirage at most", "% vol"],
  alcoholAfter: ["Alcohol that yeast can still finish at, at most", "% vol"],
  yeast: ["Yeast, or a starter (amount not judged), is", ""],
  filled: [`Filled at tirage, of the bottle size, ${filledLowPct.value} to`, "%"],
  modelRange: [`Warmest day is within the model's ${modelLowC.value} °C to`, "°C"],
  hottest: ["Highest pressure in storage, glass rating", "bar"],
  pressureClass: ["Finished pressure at 20 °C, low end, at least", "bar"],
  leesMonths: ["Months on the lees at least", "months"],
  totalMonths: ["Months from tirage to release at least", "months"],
  riddlingStart: ["Days from tirage to the first turn at least", "days"],
  readingsState: ["Latest gauge reading says", ""],
  neckBath: ["Neck bath at most as warm as", "°C"],
  room: ["Liqueur a bottle, room in the neck for", "mL"],
  stock: ["Liqueur for the batch, from a stock of", "L"],
  dosageRise: ["Rise of alcohol at dosage at most", "% vol"],
  term: ["The sweetness term wanted is", ""],
  termMargin: ["Sugar off the term's nearer bound by at least", "g/L"],
  labelAlcohol: ["Label's alcohol in its steps, off by at most", "% vol"],
  bottleSize: ["Bottle size is one that may be sold", "mL"],
  forSale: ["Bottles left to sell, at least", "bottles"],
  prices: ["Without a price or hours, at most", "items"],
};

const SUFFIX = "Inputs";
/** The section of the inputs that a check looks through. */
export const sectionOf = (key: InputCheck) => key.slice(0, -SUFFIX.length) as keyof typeof sectionTitles;

const isInputCheck = (key: CheckKey): key is InputCheck =>
  (INPUT_CHECKS as readonly CheckKey[]).includes(key);

export function checkWords(key: CheckKey): CheckWords {
  if (isInputCheck(key)) return { what: `Inputs to mend: ${sectionTitles[sectionOf(key)]}`, unit: "cells" };
  const [what, unit] = WORDS[key];
  return { what, unit };
}

/** A check in one phrase, with its limit: "Months on the lees at least 9 months". */
export function checkPhrase(key: CheckKey, { limit }: Check, unit = checkWords(key).unit): string {
  const { what } = checkWords(key);
  return typeof limit === "number" ? `${what} ${wordNumber(limit)} ${unit}`.trimEnd() : what;
}

/** A check with what was found, "Months on the lees at least 9 months: 3". */
export function checkFound(key: CheckKey, check: Check, unit?: string): string {
  const { value, limit } = check;
  const isBlank = value === "" || limit === "";
  const shown = typeof value === "number" ? wordNumber(apartFrom(limit, value)) : value;
  return `${checkPhrase(key, check, unit)}: ${isBlank ? "nothing given" : shown}`;
}

/** In two decimals, or in as many as it takes to stay on its side of the limit. */
function apartFrom(limit: Check["limit"], value: number): number {
  const rounded = [2, 3, 4, 5, 6].map((decimals) => Number(value.toFixed(decimals)));
  if (typeof limit !== "number") return rounded[0]!;
  return rounded.find((each) => Math.sign(each - limit) === Math.sign(value - limit)) ?? value;
}

/** The checks that are not fine, the worst first. */
export function notFine(
  checks: Readonly<Record<CheckKey, Check>>,
  keys: readonly CheckKey[] = CHECK_KEYS,
): CheckKey[] {
  const having = (verdict: Verdict) => keys.filter((key) => checks[key].verdict === verdict);
  return [...having("stop"), ...having("look again")];
}
