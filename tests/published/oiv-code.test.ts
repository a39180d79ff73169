/**
 * OIV International Code of Oenological Practices, I.4.4 "Sparkling wines" (read): sugar and pressure.
 */
import { pressureClass } from "../../src/cellar/rules/pressure-classes";
import { legalLimits } from "../../src/cellar/rules/limits";
import { bandOfTerm, permittedTerms, sweetnessVerdict } from "../../src/cellar/sweetness";
import { excessBar, invertGL } from "../../src/cellar/units";

const JUST = 1e-9;
const verdict = (term: string, sugar: number) =>
  sweetnessVerdict(bandOfTerm(term, "OIV", "term"), invertGL(sugar), true);

test.each([
  // brut at most 12 · extra-dry 12 to 17 · dry 17 to 32 · demi-sec 32 to 50 · sweet more than 50
  [0, ["brut"]],
  [12 - JUST, ["brut"]],
  [12, ["brut", "extra-dry"]],
  [12 + JUST, ["extra-dry"]],
  [17, ["extra-dry", "dry"]],
  [17 + JUST, ["dry"]],
  [32, ["dry", "demi-sec"]],
  [32 + JUST, ["demi-sec"]],
  [50, ["demi-sec"]],
  [50 + JUST, ["sweet"]],
])("%d g/L: %j", (sugar, expected) => {
  // nothing depends on whether sugar was added: there is no brut nature
  for (const added of [true, false])
    expect(permittedTerms(invertGL(sugar), added, "OIV", "en")).toEqual(expected);
});

test.each([
  ["brut", 15],
  ["extra-dry", 20],
  ["dry", 35],
])("%s is tolerated 3 g/L above, to %d, and not a trace below", (term, highest) => {
  expect(verdict(term, highest)).toBe("within tolerance");
  expect(verdict(term, highest + JUST)).toBe("not permitted");
  if (term !== "brut") expect(verdict(term, highest === 20 ? 12 - JUST : 17 - JUST)).toBe("not permitted");
});

test("demi-sec and sweet have no tolerance", () => {
  expect(verdict("demi-sec", 50 + JUST)).toBe("not permitted");
  expect(verdict("demi-sec", 32 - JUST)).toBe("not permitted");
  expect(verdict("sweet", 50)).toBe("not permitted");
});

test("12.0 g/L is brut here and extra dry in the EU", () => {
  expect(permittedTerms(invertGL(12), true, "OIV", "en")[0]).toBe("brut");
  expect(permittedTerms(invertGL(12), true, "EU", "en")).toEqual(["extra dry"]);
});

test.each(["brut nature", "extra brut"])("%s is unknown here", (term) => {
  expect(() => bandOfTerm(term, "OIV", "term")).toThrow(
    /^term is ".*"; give one of: brut, herb, .*extra-dry/u,
  );
});

test.each([
  [3.5, 750, "sparkling wine"],
  [3.5 - JUST, 750, "between classes"],
  [3.5 - JUST, 250, "between classes"],
  [3, 250 - JUST, "sparkling wine"],
  [3 - JUST, 200, "between classes"],
  [6, 1500, "sparkling wine"],
])("%d bar in %d mL: %s", (bar, bottleMl, expected) =>
  expect(pressureClass(excessBar(bar), bottleMl, "OIV")).toBe(expected),
);

test("the code sets none of the EU's limits", () => expect(legalLimits.OIV).toEqual({}));
