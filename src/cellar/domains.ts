/**
 * The allowed range, unit and wording of every quantity, once. Functions, the pane, the sheet's validation
 * rules and batch files all read this table.
 */
import { Refusal, wordNumber } from "./refusal";

export interface Domain {
  /** What the quantity is, in the trade's words. */
  readonly what: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** True where the lower (upper) bound itself is not allowed. */
  readonly aboveMin?: boolean;
  readonly belowMax?: boolean;
  readonly whole?: boolean;
}

interface Bounds {
  readonly aboveMin?: boolean;
  readonly belowMax?: boolean;
  readonly whole?: boolean;
}
const ABOVE_MIN: Bounds = { aboveMin: true };
const BELOW_MAX: Bounds = { belowMax: true };
const WHOLE: Bounds = { whole: true };

/** Every entry has the same properties in the same order, which is what makes a check of a number quick. */
const quantity = (
  what: string,
  unit: string,
  min: number,
  max: number,
  { aboveMin = false, belowMax = false, whole = false }: Bounds = {},
): Domain => ({ what, unit, min, max, aboveMin, belowMax, whole });

export const domains = {
  volumeHl: quantity("tank volume", "hL", 0, 100_000, ABOVE_MIN),
  volumeL: quantity("volume", "L", 0, 10_000_000),
  bottleMl: quantity("bottle size", "mL", 50, 30_000),
  partOfBottleMl: quantity("volume in the bottle", "mL", 0, 30_000),
  strengthGL: quantity("sugar strength", "g/L", 0, 1000),
  /** The solubility relation loses its meaning in syrups (it reaches zero at 694 g/L), so it stops well before. */
  wineSugarGL: quantity("glucose + fructose in the wine", "g/L", 0, 300),
  doseGL: quantity("dose", "g/L sucrose", 0, 60),
  temperatureC: quantity("temperature", "°C", -5, 45),
  gaugeTableC: quantity("temperature of the reading", "°C", 0, 25),
  neckBathC: quantity("neck bath temperature", "°C", -45, 0),
  pressureBar: quantity("excess pressure", "bar", -1, 20),
  bottleRatingBar: quantity("glass maker's rating", "bar", 0, 30, ABOVE_MIN),
  alcoholVol: quantity("alcohol", "% vol", 0, 20),
  baseAlcoholVol: quantity("alcohol of the base wine", "% vol", 5, 16),
  bottles: quantity("bottles", "bottles", 0, 1e8, WHOLE),
  bottlesPerCase: quantity("bottles per case", "bottles", 1, 60, WHOLE),
  percent: quantity("percentage", "%", 0, 100),
  percentBelow100: quantity("percentage", "%", 0, 100, BELOW_MAX),
  yieldShare: quantity("CO2 yield", "share", 0.5, 1),
  headspacePct: quantity("headspace", "% of the wine", 0.5, 20),
  dissolvedCo2GL: quantity("dissolved CO2", "g/L", 0, 5),
  doseSdGL: quantity("standard deviation of the dose", "g/L", 0, 10),
  yieldSd: quantity("standard deviation of the yield", "share", 0, 0.2),
  temperatureSdC: quantity("standard deviation of the temperature", "°C", 0, 10),
  headspaceSdPct: quantity("standard deviation of the headspace", "% of the wine", 0, 5),
  nitrogenBar: quantity("nitrogen in the headspace at 20 °C", "bar", 0, 2),
  sulfurDioxideMgL: quantity("total sulfur dioxide", "mg/L", 0, 1000),
  acidityGL: quantity("total acidity as tartaric acid", "g/L", 0, 30),
  massGram: quantity("mass", "g", 0, 1e12),
  brix: quantity("mass of sugar in 100 g", "°Brix", 0, 85),
  stepC: quantity("step of temperature", "°C", 0, 50, ABOVE_MIN),
  co2GL: quantity("dissolved CO2", "g/L", 0, 20),
  pressureValue: quantity("pressure", "in the unit given", -1e6, 1e6),
  waitDays: quantity("days of waiting", "days", 0, 365, WHOLE),
  decimals: quantity("decimals", "decimals", 0, 2, WHOLE),
  riddlingDays: quantity("days of riddling", "days", 4, 60, WHOLE),
  turnsPerDay: quantity("turns a day", "turns", 1, 4, WHOLE),
  turns: quantity("turns", "turns", 0, 10_000, WHOLE),
  places: quantity("places in a rack", "bottles", 1, 100_000, WHOLE),
  bottlesPerHour: quantity("bottles turned in an hour", "bottles/h", 0, 1e6, ABOVE_MIN),
  millionCells: quantity("live cells", "million/mL", 0, 10_000, ABOVE_MIN),
  rateGHl: quantity("rate", "g/hL", 0, 1000),
  months: quantity("months", "months", 0, 600),
  wholeMonths: quantity("months", "months", 0, 600, WHOLE),
  hours: quantity("hours", "h", 0, 1e6),
  money: quantity("amount", "money", 0, 1e12),
  quantity: quantity("quantity", "", 0, 1e12),
  packSize: quantity("pack size", "", 0, 1e9, ABOVE_MIN),
  dateSerial: quantity("date", "spreadsheet date", 61, 2_958_465),
} as const satisfies Record<string, Domain>;

export function isWithin(domain: Domain, value: number): boolean {
  return (
    value >= domain.min &&
    value <= domain.max &&
    !(domain.aboveMin === true && value === domain.min) &&
    !(domain.belowMax === true && value === domain.max) &&
    !(domain.whole === true && !Number.isInteger(value))
  );
}

/** "-5 to 45 °C", "more than 0, at most 100000 hL", "a whole number, 0 to 100000000 bottles". */
export function rangeText(domain: Domain): string {
  const low = domain.aboveMin ? `more than ${wordNumber(domain.min)}` : wordNumber(domain.min);
  const high = domain.belowMax ? `less than ${wordNumber(domain.max)}` : wordNumber(domain.max);
  const between = domain.aboveMin ? `, ${domain.belowMax ? "" : "at most "}` : " to ";
  const whole = domain.whole ? "a whole number, " : "";
  return `${whole}${low}${between}${high} ${domain.unit}`.trimEnd();
}

/** The value itself, or a refusal that names the argument, what was given and what is allowed. */
export function within(domain: Domain, value: unknown, argument: string): number {
  if (typeof value === "number" && isWithin(domain, value)) return value;
  throw new Refusal({ kind: "domain", argument, given: value, remedy: `give ${rangeText(domain)}` });
}
