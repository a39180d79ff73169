/**
 * The units that a person likes to see. Everything is calculated, kept and written in one set of units; only boxes,
 * results and drawings of the pane are shown in others. The choice stays with the person, not with the workbook.
 */
import { domains } from "../cellar/domains";
import { BAR_PER_UNIT } from "../cellar/pressure-units";
import { brixFromStrength, strengthFromBrix } from "../cellar/sugar";
import { LITRES_PER_HL, sucroseGL } from "../cellar/units";
import { shownResult } from "./typed-numbers";

export type Quantity = "volume" | "pressure" | "temperature" | "strength";

export interface Unit {
  readonly name: string;
  /** From the unit that everything is kept in. Undefined where there is no such value in this unit. */
  readonly shown: (kept: number) => number | undefined;
  readonly kept: (shown: number) => number;
}

/** The US gallon is 231 cubic inches of 2.54 cm. */
const LITRES_PER_GALLON = (231 * 2.54 ** 3) / 1000;
const STRONGEST = strengthFromBrix(domains.brix.max);

const asItIs = (name: string): Unit => ({ name, shown: (kept) => kept, kept: (shown) => shown });
const times = (name: string, perKept: number): Unit => ({
  name,
  shown: (kept) => kept * perKept,
  kept: (shown) => shown / perKept,
});

/** The first is the one that everything is kept in. */
export const UNITS: Readonly<Record<Quantity, readonly [Unit, Unit]>> = {
  volume: [asItIs("hL"), times("gal (US)", LITRES_PER_HL / LITRES_PER_GALLON)],
  pressure: [asItIs("bar"), times("psi", 1 / BAR_PER_UNIT.psi)],
  temperature: [
    asItIs("°C"),
    { name: "°F", shown: (kept) => kept * 1.8 + 32, kept: (shown) => (shown - 32) / 1.8 },
  ],
  strength: [
    asItIs("g/L"),
    {
      name: "°Brix",
      shown: (kept) => (kept >= 0 && kept <= STRONGEST ? brixFromStrength(sucroseGL(kept)) : undefined),
      kept: strengthFromBrix,
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

export class Units {
  readonly #listeners: (() => void)[] = [];

  constructor(private readonly store: Pick<Storage, "getItem" | "setItem"> | undefined = storage()) {}

  /** The unit that the person has chosen for a quantity. */
  of(quantity: Quantity): Unit {
    const name = this.store?.getItem(KEY + quantity);
    return UNITS[quantity].find((unit) => unit.name === name) ?? UNITS[quantity][0];
  }

  choose(quantity: Quantity, name: string): void {
    this.store?.setItem(KEY + quantity, name);
    for (const listener of this.#listeners) listener();
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
