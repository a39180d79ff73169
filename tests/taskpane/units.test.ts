/**
 * Units of the pane against an independent unit library, and there and back.
 */
import fc from "fast-check";
import Qty from "js-quantities";
import { Units, UNITS, quantityOf, type Quantity } from "../../src/taskpane/units";
import { strengthFromBrix } from "../../src/cellar/sugar";
import { expectRelative } from "../support/relative";
import { SEED } from "../support/fuzz";

const other = (quantity: Quantity) => UNITS[quantity][1];

test.each<[Quantity, string, string, number]>([
  ["volume", "hl", "gal", 50],
  ["pressure", "bar", "psi", 5.25],
  ["temperature", "tempC", "tempF", 12],
  ["temperature", "tempC", "tempF", -25],
])("%s as js-quantities converts it", (quantity, from, to, value) => {
  const there = Qty(value, from).to(to).scalar;
  expectRelative(other(quantity).shown(value)!, there, 2e-6);
});

test("strength in °Brix is the function's own", () => {
  expectRelative(other("strength").kept(50)!, strengthFromBrix(50), 1e-9);
  expectRelative(other("strength").shown(strengthFromBrix(50))!, 50, 1e-9);
  expect(other("strength").shown(5000)).toBeUndefined();
});

test("there and back is the same", () =>
  fc.assert(
    fc.property(
      fc.constantFrom<Quantity>("volume", "pressure", "temperature", "strength"),
      fc.double({ min: 0.1, max: 500, noNaN: true }),
      (quantity, value) => {
        const unit = other(quantity);
        expectRelative(unit.kept(unit.shown(value)!)!, value, 1e-9);
      },
    ),
    { seed: SEED },
  ));

test.each([
  ["baseWine.volume_hL", "hL", "volume"],
  ["tirage.hottest_C", "°C", "temperature"],
  ["tirage.glassRating_bar", "bar", "pressure"],
  ["tirage.liqueur_gL", "g/L", "strength"],
  ["dosage.strength_gL", "g/L", undefined],
  ["baseWine.sugar_gL", "g/L", undefined],
])("%s in %s is a %s", (dotted, unit, quantity) => expect(quantityOf(dotted, unit)).toBe(quantity));

test("a choice is remembered, and one that there is not is none", () => {
  const store = new Map<string, string>();
  const kept = {
    getItem: (key: string) => store.get(key) ?? null,
    setItem: (key: string, value: string) => void store.set(key, value),
  };
  const told: string[] = [];
  const units = new Units(kept);
  units.onChange(() => told.push("told"));
  units.choose("volume", "gal (US)");
  expect(new Units(kept).of("volume").name).toBe("gal (US)");
  expect(told).toEqual(["told"]);
  units.choose("volume", "bushel");
  expect(units.of("volume").name).toBe("hL");
});
