/**
 * Texts and patterns in another language.
 */
import fc from "fast-check";
import { nearest } from "../../src/words/languages";
import { translator } from "../../src/words/translate";
import { SEED } from "../support/fuzz";

const translate = translator({
  Bottles: "Bouteilles",
  "Base wine": "Vin de base",
  "{0} is {1}; {2}": "{0} vaut {1} ; {2}",
  "give {0} to {1} {2}": "donner de {0} à {1} {2}",
  "{0} of the checks": "{0} des contrôles",
  "Look again: {0} of the checks.": "À revoir : {0} des contrôles.",
  "Update “{0}”": "Mettre à jour « {0} »",
  "{1} then {0}": "{0} après {1}",
});

test.each([
  ["Bottles", "Bouteilles"],
  ["  Bottles ", "  Bouteilles "],
  ["Nobody knows this", "Nobody knows this"],
  ["121.83", "121.83"],
  ["Base wine is 85; give 5 to 16 % vol", "Vin de base vaut 85 ; donner de 5 à 16 % vol"],
  ["Look again: 3 of the checks.", "À revoir : 3 des contrôles."],
  ["Update “Plan · Bottles of 2025”", "Mettre à jour « Plan · Bottles of 2025 »"],
  ["b then a", "a après b"],
  ["", ""],
])("%p", (english, french) => expect(translate(english)).toBe(french));

test("signs of expressions are plain signs", () => {
  const plain = translator({ "a.b (c) {0}+ [d]* $": "x {0}" });
  expect(plain("a.b (c) 5+ [d]* $")).toBe("x 5");
  expect(plain("aXb (c) 5+ [d]* $")).toBe("aXb (c) 5+ [d]* $");
});

test("any text goes in, and a text comes out", () =>
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => typeof translate(text) === "string"),
    { seed: SEED },
  ));

test.each([
  ["fr-CA", "fr"],
  ["FR", "fr"],
  ["de-AT", "en"],
  ["en-US", "en"],
  ["", "en"],
])("who speaks %s reads %s", (spoken, code) => expect(nearest(spoken).code).toBe(code));
