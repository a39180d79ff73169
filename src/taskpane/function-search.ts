/**
 * The functions by family, and which of them a search finds.
 */
import { fold } from "../cellar/matching";
import type { Argument } from "./function-argument";

/** A function as functions.json has it. */
export interface ListedFunction {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly Argument[];
}

/** What people in the trade call it, for a family or for one function; the families in the order of the work. */
export const TRADE_WORDS: Readonly<Record<string, string>> = {
  TIRAGE:
    "second fermentation, prise de mousse, bottling, filling, priming, liqueur de tirage, traditional method",
  "TIRAGE.STARTER": "yeast, levure, pied de cuve, inoculum, cells",
  "TIRAGE.PROGRESS": "gauge, reading, still working, stuck",
  "TIRAGE.YIELD": "gauge, reading, calibration",
  "TIRAGE.ALCOHOL": "abv, strength",
  PRESSURE: "bar, atmospheres, psi, fizz, bubbles, gauge, manometer, aphrometer, carbonation, CO2",
  AGEING: "aging, lees, sur lie, sur lattes, cellar, appellation, months, champagne, cava, crémant",
  RIDDLING: "remuage, remueur, turning, pupitre, gyropalette, cage",
  DISGORGING: "dégorgement, degüelle, sboccatura, neck, ice, brine, à la glace",
  DOSAGE: "liqueur d'expédition, shipping liqueur, sweetening, bench trial, zero dosage",
  SWEETNESS:
    "brut nature, zero, extra brut, extra dry, sec, demi-sec, doux, dolce, residual sugar, label term",
  SUGAR: "saccharose, sucrose, glucose, fructose, inversion, refractometer, hydrometer, syrup",
  LABEL: "labelling, back label, inspection",
  "LABEL.ENERGY": "calories, nutrition, kcal, kilojoule",
  "LABEL.ALCOHOL": "abv, strength",
  "LABEL.FILL": "e-mark, underfill, contents, volume",
  COST: "price, money, budget, orders, purchase, cork, wirehood, muselet, capsule",
  "COST.HOLDING": "interest, capital, stock",
};

const familyIn = (id: string) => id.split(".")[0]!;
const FAMILIES = Object.keys(TRADE_WORDS).filter((key) => !key.includes("."));

export interface Family {
  /** "Tirage". */
  readonly title: string;
  readonly functions: readonly ListedFunction[];
}

/** In the order of the work; a family that is not known here comes last. */
export function familiesOf(functions: readonly ListedFunction[]): Family[] {
  const there = new Set(functions.map(({ id }) => familyIn(id)));
  const known = FAMILIES.filter((family) => there.has(family));
  return [...known, ...[...there].filter((family) => !FAMILIES.includes(family))].map((family) => ({
    title: family[0]! + family.slice(1).toLowerCase(),
    functions: functions.filter(({ id }) => familyIn(id) === family),
  }));
}

/** Whether every word searched for is in the id, the description, an argument's name or the trade's words. */
export function isFound({ id, description, parameters }: ListedFunction, search: string): boolean {
  const words = [familyIn(id), id].map((key) => TRADE_WORDS[key] ?? "");
  const names = parameters.map(({ name }) => name);
  const text = fold([id, id.replace(".", " "), description, ...names, ...words].join(" "));
  return fold(search)
    .split(" ")
    .every((word) => text.includes(word));
}

/** The first sentence of a description. */
export const firstSentence = (description: string) =>
  /^.*?[.](?=\s|$)/u.exec(description)?.[0] ?? description;

/** The unit in an argument's description, ", g/L as sucrose (0 to 60)", and the description without it. */
export function unitAndRest(description: string): { unit: string; rest: string } {
  const [found = "", unit = ""] =
    /, ([^,;()]+)(?= \((?:a whole number, )?(?:more than )?-?\d)/u.exec(description) ?? [];
  return { unit, rest: description.replace(found, "") };
}

/** What an optional argument that is left blank counts as: "0.95", "no check". */
export const defaultIn = (description: string) =>
  /blank = ("[^"]*"|-?\d+(?:\.\d+)?|[a-z ]+)/iu.exec(description)?.[1];
