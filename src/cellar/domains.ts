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

export const domains = {
  volumeHl: { what: "tank volume", unit: "hL", min: 0, max: 100_000, aboveMin: true },
  volumeL: { what: "volume", unit: "L", min: 0, max: 10_000_000 },
  bottleMl: { what: "bottle size", unit: "mL", min: 50, max: 30_000 },
  partOfBottleMl: { what: "volume in the bottle", unit: "mL", min: 0, max: 30_000 },
  strengthGL: { what: "sugar strength", unit: "g/L", min: 0, max: 1000 },
  /** The solubility relation loses its meaning in syrups (it reaches zero at 694 g/L), so it stops well before. */
  wineSugarGL: { what: "glucose + fructose in the wine", unit: "g/L", min: 0, max: 300 },
  doseGL: { what: "dose", unit: "g/L sucrose", min: 0, max: 60 },
  temperatureC: { what: "temperature", unit: "°C", min: -5, max: 45 },
  gaugeTableC: { what: "temperature of the reading", unit: "°C", min: 0, max: 25 },
  neckBathC: { what: "neck bath temperature", unit: "°C", min: -45, max: 0 },
  pressureBar: { what: "excess pressure", unit: "bar", min: -1, max: 20 },
  bottleRatingBar: { what: "glass maker's rating", unit: "bar", min: 0, max: 30, aboveMin: true },
  alcoholVol: { what: "alcohol", unit: "% vol", min: 0, max: 20 },
  baseAlcoholVol: { what: "alcohol of the base wine", unit: "% vol", min: 5, max: 16 },
  bottles: { what: "bottles", unit: "bottles", min: 0, max: 1e8, whole: true },
  bottlesPerCase: { what: "bottles per case", unit: "bottles", min: 1, max: 60, whole: true },
  percent: { what: "percentage", unit: "%", min: 0, max: 100 },
  percentBelow100: { what: "percentage", unit: "%", min: 0, max: 100, belowMax: true },
  yieldShare: { what: "CO2 yield", unit: "share", min: 0.5, max: 1 },
  headspacePct: { what: "headspace", unit: "% of the wine", min: 0.5, max: 20 },
  dissolvedCo2GL: { what: "dissolved CO2", unit: "g/L", min: 0, max: 5 },
  doseSdGL: { what: "standard deviation of the dose", unit: "g/L", min: 0, max: 10 },
  yieldSd: { what: "standard deviation of the yield", unit: "share", min: 0, max: 0.2 },
  temperatureSdC: { what: "standard deviation of the temperature", unit: "°C", min: 0, max: 10 },
  headspaceSdPct: { what: "standard deviation of the headspace", unit: "% of the wine", min: 0, max: 5 },
  nitrogenBar: { what: "nitrogen in the headspace at 20 °C", unit: "bar", min: 0, max: 2 },
  sulfurDioxideMgL: { what: "total sulfur dioxide", unit: "mg/L", min: 0, max: 1000 },
  acidityGL: { what: "total acidity as tartaric acid", unit: "g/L", min: 0, max: 30 },
  massGram: { what: "mass", unit: "g", min: 0, max: 1e12 },
  brix: { what: "mass of sugar in 100 g", unit: "°Brix", min: 0, max: 85 },
  stepC: { what: "step of temperature", unit: "°C", min: 0, max: 50, aboveMin: true },
  co2GL: { what: "dissolved CO2", unit: "g/L", min: 0, max: 20 },
  pressureValue: { what: "pressure", unit: "in the unit given", min: -1e6, max: 1e6 },
  waitDays: { what: "days of waiting", unit: "days", min: 0, max: 365, whole: true },
  decimals: { what: "decimals", unit: "decimals", min: 0, max: 2, whole: true },
  riddlingDays: { what: "days of riddling", unit: "days", min: 4, max: 60, whole: true },
  turnsPerDay: { what: "turns a day", unit: "turns", min: 1, max: 4, whole: true },
  turns: { what: "turns", unit: "turns", min: 0, max: 10_000, whole: true },
  places: { what: "places in a rack", unit: "bottles", min: 1, max: 100_000, whole: true },
  bottlesPerHour: { what: "bottles turned in an hour", unit: "bottles/h", min: 0, max: 1e6, aboveMin: true },
  millionCells: { what: "live cells", unit: "million/mL", min: 0, max: 10_000, aboveMin: true },
  rateGHl: { what: "rate", unit: "g/hL", min: 0, max: 1000 },
  months: { what: "months", unit: "months", min: 0, max: 600 },
  wholeMonths: { what: "months", unit: "months", min: 0, max: 600, whole: true },
  hours: { what: "hours", unit: "h", min: 0, max: 1e6 },
  money: { what: "amount", unit: "money", min: 0, max: 1e12 },
  quantity: { what: "quantity", unit: "", min: 0, max: 1e12 },
  packSize: { what: "pack size", unit: "", min: 0, max: 1e9, aboveMin: true },
  dateSerial: { what: "date", unit: "spreadsheet date", min: 61, max: 2_958_465 },
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

/** A calculated value that lies outside by the last bits of a float only is the bound: those bits must not refuse it. */
export function withoutFloatTail({ min, max }: Domain, value: number): number {
  const bound = Math.min(Math.max(value, min), max);
  return Math.abs(value - bound) <= 1e-12 * max ? bound : value;
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
