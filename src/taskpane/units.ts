/**
 * The units that a person likes to see. Everything is calculated, kept and written in one set of units; only boxes,
 * results and drawings of the pane are shown in others. The choice stays with the person, not with the workbook.
 */
import { domains, isWithin } from "../cellar/domains";
import { BAR_PER_UNIT } from "../cellar/pressure-units";
import { brixFromStrength, strengthFromBrix } from "../cellar/sugar";
import { LITRES_PER_HL, sucroseGL } from "../cellar/units";
import { shownResult } from "./typed-numbers";

export type Quantity = "volume" | "pressure" | "temperature" | "strength";

export interface Unit {
  readonly name: string;
  /** From the unit that everything is kept in. Undefined where there is no such value in this unit. */
  readonly shown: (kept: number) => number | undefined;
  /** Back to it, without a float's tail. Undefined where this unit has no such value. */
  readonly kept: (shown: number) => number | undefined;
}

/** The US gallon is 231 cubic inches of 2.54 cm. */
const LITRES_PER_GALLON = (231 * 2.54 ** 3) / 1000;
const STRONGEST = strengthFromBrix(domains.brix.max);

/** More digits than anyone types; fewer than show that there was a conversion. */
const clean = (value: number) => Number(value.toPrecision(10));
const asItIs = (name: string): Unit => ({ name, shown: (kept) => kept, kept: (shown) => shown });
const times = (name: string, perKept: number): Unit => ({
  name,
  shown: (kept) => kept * perKept,
  kept: (shown) => clean(shown / perKept),
});

/** The first is the one that everything is kept in. */
export const UNITS: Readonly<Record<Quantity, readonly [Unit, Unit]>> = {
  volume: [asItIs("hL"), times("gal (US)", LITRES_PER_HL / LITRES_PER_GALLON)],
  pressure: [asItIs("bar"), times("psi", 1 / BAR_PER_UNIT.psi)],
  temperature: [
    asItIs("°C"),
    { name: "°F", shown: (kept) => kept * 1.8 + 32, kept: (shown) => clean((shown - 32) / 1.8) },
  ],
  strength: [
    asItIs("g/L"),
    {
      name: "°Brix",
      shown: (kept) => (kept >= 0 && kept <= STRONGEST ? brixFromStrength(sucroseGL(kept)) : undefined),
      kept: (brix) => (isWithin(domains.brix, brix) ? clean(strengthFromBrix(brix)) : undefined),
    },
  ],
};

/** °Brix are those of cane or beet sugar in water, so only strengths given as weighed sugar can be read in them. */
const STRENGTHS = ["tirage.liqueur_gL"];

/** What a field measures, where people differ in its unit. */
export function quantityOf(dotted: string, unit: string): Quantity | undefined {
  if (STRENGTHS.includes(dotted)) return "strength";
  const found = (["volume", "pressure", "temperature"] as const).find((each) => UNITS[each][0].name === unit);
  return found;
}

const KEY = "mousse.unit.";

/** Where choices are kept: nowhere, if the browser keeps nothing. */
function storage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

const QUANTITIES = Object.keys(UNITS) as Quantity[];

export class Units {
  readonly #listeners: (() => void)[] = [];
  /** Kept here: what another page chooses meanwhile is not to change the numbers of this one. */
  readonly #chosen = new Map<Quantity, Unit>();

  constructor(private readonly store: Pick<Storage, "getItem" | "setItem"> | undefined = storage()) {
    for (const quantity of QUANTITIES) this.#chosen.set(quantity, this.#remembered(quantity));
  }

  /** The unit that the person has chosen for a quantity. */
  of(quantity: Quantity): Unit {
    return this.#chosen.get(quantity)!;
  }

  choose(quantity: Quantity, name: string): void {
    this.#chosen.set(quantity, unitCalled(quantity, name));
    try {
      this.store?.setItem(KEY + quantity, name);
    } catch {
      // it holds as long as the page
    }
    for (const listener of this.#listeners) listener();
  }

  #remembered(quantity: Quantity): Unit {
    try {
      return unitCalled(quantity, this.store?.getItem(KEY + quantity) ?? "");
    } catch {
      return UNITS[quantity][0];
    }
  }

  /** To be told when a unit is chosen. */
  onChange(listener: () => void): void {
    this.#listeners.push(listener);
  }

  /** "5.25 bar", "76.1 psi". */
  text(quantity: Quantity, kept: number, decimals: number): string {
    const { value, unit } = this.parts(quantity, kept, decimals);
    return `${value} ${unit}`;
  }

  /** "12.5 °C": as many decimals as there are, at most one. */
  degrees(celsius: number): string {
    const { name, shown } = this.of("temperature");
    const value = shown(celsius)!;
    return `${shownResult(value, Number.isInteger(Number(value.toFixed(1))) ? 0 : 1)} ${name}`;
  }

  parts(
    quantity: Quantity,
    kept: number,
    decimals: number,
  ): { readonly value: string; readonly unit: string } {
    const { name, shown } = this.of(quantity);
    const first = UNITS[quantity][0].name === name;
    // a psi is a fifteenth of a bar
    const places = quantity === "pressure" && !first ? Math.max(0, decimals - 1) : decimals;
    return { value: shownResult(shown(kept) ?? kept, places), unit: name };
  }
}

const unitCalled = (quantity: Quantity, name: string): Unit =>
  UNITS[quantity].find((unit) => unit.name === name) ?? UNITS[quantity][0];
