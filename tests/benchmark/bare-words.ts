/**
 * AGEING and SWEETNESS by hand: tables and words. A word is looked up as it is written.
 */
import { designations } from "../../src/cellar/rules/designations";
import { LANGUAGES, sweetnessRules } from "../../src/cellar/rules/sweetness-bands";
import type { Bare } from "./bare";

const NAMES = designations.map(({ name }) => name);
const MONTHS: Record<string, readonly [number, number]> = {};
for (const { name, leesMonths, totalMonths } of designations) MONTHS[name] = [leesMonths, totalMonths];
const CLOCKS = ["lees", "total"] as const;

const minimum = (name: string, clock: string) => (clock === "lees" ? MONTHS[name]![0] : MONTHS[name]![1]);

function earliest(serial: number, name: string, clock: string): number {
  const date = new Date((Math.floor(serial) - 25_569) * 86_400_000);
  const year = date.getUTCFullYear();
  const month = date.getUTCMonth() + minimum(name, clock);
  const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  return Date.UTC(year, month, Math.min(date.getUTCDate(), lastDay)) / 86_400_000 + 25_569;
}

function list(): unknown[][] {
  const rows: unknown[][] = [];
  for (const { name, leesMonths, totalMonths, source } of designations)
    rows.push([name, leesMonths, totalMonths, `${source.text} (${source.mark})`]);
  return rows;
}

/** Words by rules, language and band; the bounds stand below as plain comparisons. */
const WORDS: Record<string, Record<string, readonly string[]>> = {};
/** Bounds and tolerances by rules and word, whether the bounds belong, and whether sugar must not be added. */
type Bounds = readonly [
  low: number,
  high: number,
  below: number,
  above: number,
  lowIn: boolean,
  highIn: boolean,
  dry: boolean,
];
const BOUNDS: Record<string, Record<string, Bounds>> = {};
for (const rules of ["EU", "OIV"] as const) {
  const { bands } = sweetnessRules[rules];
  WORDS[rules] = {};
  BOUNDS[rules] = {};
  for (const language of LANGUAGES) WORDS[rules][language] = bands.map(({ terms }) => terms[language][0]);
  for (const band of bands)
    for (const word of Object.values(band.terms).flat())
      BOUNDS[rules][word] ??= [
        band.low,
        band.high ?? Infinity,
        band.toleranceBelow,
        band.toleranceAbove,
        band.lowIncluded,
        band.highIncluded,
        band.onlyWithoutAddedSugar === true,
      ];
}

function terms(sugar: number, added: boolean, rules: string, language: string): string[] {
  const words = WORDS[rules]![language]!;
  const found: string[] = [];
  if (rules === "OIV") {
    if (sugar <= 12) found.push(words[0]!);
    if (sugar >= 12 && sugar <= 17) found.push(words[1]!);
    if (sugar >= 17 && sugar <= 32) found.push(words[2]!);
    if (sugar >= 32 && sugar <= 50) found.push(words[3]!);
    if (sugar > 50) found.push(words[4]!);
    return found;
  }
  if (sugar < 3 && !added) found.push(words[0]!);
  if (sugar <= 6) found.push(words[1]!);
  if (sugar < 12) found.push(words[2]!);
  if (sugar >= 12 && sugar <= 17) found.push(words[3]!);
  if (sugar >= 17 && sugar <= 32) found.push(words[4]!);
  if (sugar >= 32 && sugar <= 50) found.push(words[5]!);
  if (sugar > 50) found.push(words[6]!);
  return found;
}

function check(term: string, sugar: number, added: boolean, rules: string): string {
  const [low, high, below, above, lowIn, highIn, dry] = BOUNDS[rules]![term]!;
  if (dry && added) return "not permitted";
  const overLow = lowIn ? sugar >= low : sugar > low;
  const underHigh = highIn ? sugar <= high : sugar < high;
  if (overLow && underHigh) return "permitted";
  const near = (overLow || sugar >= low - below) && (underHigh || sugar <= high + above);
  return near ? "within tolerance" : "not permitted";
}

function margin(term: string, sugar: number, rules: string): number {
  const [low, high] = BOUNDS[rules]![term]!;
  return low === 0 ? high - sugar : Math.min(sugar - low, high - sugar);
}

function limits(term: string, rules: string): unknown[][] {
  const [low, high] = BOUNDS[rules]![term]!;
  return [[low, high === Infinity ? "" : high]];
}

const RULES = ["EU", "OIV"] as const;
/** Known to both rule sets. */
const TERMS = ["brut", "sec", "demi-sec", "doux", "extra trocken", "secco"] as const;

export const bareWords: readonly Bare[] = [
  { id: "AGEING.MINIMUM", bare: minimum, inputs: (v) => [v.one(NAMES), v.one(CLOCKS)] },
  {
    id: "AGEING.EARLIEST",
    bare: earliest,
    inputs: (v) => [v.whole(40_000, 50_000), v.one(NAMES), v.one(CLOCKS)],
  },
  { id: "AGEING.DESIGNATIONS", bare: list, inputs: () => [] },
  {
    id: "SWEETNESS.TERM",
    bare: (...call: Parameters<typeof terms>) => terms(...call)[0],
    inputs: (v) => [v.between(0, 60), v.one([true, false]), v.one(RULES), v.one(LANGUAGES)],
  },
  {
    id: "SWEETNESS.TERMS",
    bare: (...call: Parameters<typeof terms>) => [terms(...call)],
    inputs: (v) => [v.between(0, 60), v.one([true, false]), v.one(RULES), v.one(LANGUAGES)],
  },
  {
    id: "SWEETNESS.CHECK",
    bare: check,
    inputs: (v) => [v.one(TERMS), v.between(0, 60), v.one([true, false]), v.one(RULES)],
  },
  { id: "SWEETNESS.MARGIN", bare: margin, inputs: (v) => [v.one(TERMS), v.between(0, 60), v.one(RULES)] },
  { id: "SWEETNESS.LIMITS", bare: limits, inputs: (v) => [v.one(TERMS), v.one(RULES)] },
];
