/**
 * What a cell may hold, and what a blank one means.
 */
import * as cells from "../../src/cellar/cells";
import { domains } from "../../src/cellar/domains";
import { ruleSetsOf } from "../../src/cellar/rules/source";
import { expectRefusal } from "./refusing";

describe("blanks", () => {
  test.each([undefined, null, ""])("%p is blank", (value) => expect(cells.isBlank(value)).toBe(true));

  test.each([0, false, " ", "brut", NaN, [[""]]])("%p is something", (value) =>
    expect(cells.isBlank(value)).toBe(false),
  );

  test("a 0 is a blank only where the domain has no 0", () => {
    // bottles of 50 mL and more, so 0 mL is what a host makes of an empty cell; 0 °C is a temperature
    expect(cells.isBlankNumber(domains.bottleMl, 0)).toBe(true);
    expect(cells.isBlankNumber(domains.temperatureC, 0)).toBe(false);
  });

  test("another number outside the domain is a mistake, not a blank", () =>
    expect(cells.isBlankNumber(domains.bottleMl, 1)).toBe(false));

  test.each([undefined, null, ""])("%p is blank for any domain", (value) => {
    expect(cells.isBlankNumber(domains.temperatureC, value)).toBe(true);
    expect(cells.isBlankNumber(domains.bottleMl, value)).toBe(true);
  });
});

describe("an optional number", () => {
  const bottle = (value: unknown) => cells.optionalNumber(domains.bottleMl, value, "bottle_mL", 750);

  test.each([undefined, null, "", 0])("%p takes the default", (value) => expect(bottle(value)).toBe(750));

  test("one that is given counts", () => expect(bottle(1500)).toBe(1500));

  test("a 0 that the domain has is no blank", () =>
    expect(cells.optionalNumber(domains.temperatureC, 0, "temperature_C", 12)).toBe(0));

  test("a blank may mean nothing at all", () =>
    expect(cells.optionalNumber(domains.bottleMl, "", "bottle_mL", null)).toBeNull());

  test("one outside the domain is refused", () =>
    expectRefusal(() => bottle(49), {
      argument: "bottle_mL",
      given: 49,
      remedy: /^give 50 to 30000 mL$/u,
      kind: "domain",
    }));
});

describe("an optional yes or no", () => {
  const added = (value: unknown, whenBlank = true) => cells.optionalTruth(value, "sugar_added", whenBlank);

  test.each([undefined, null, "", 0])("%p takes the default, be it yes or no", (value) => {
    expect(added(value, true)).toBe(true);
    expect(added(value, false)).toBe(false);
  });

  test("yes and no count whatever the default", () => {
    expect([added(true, false), added(false, true)]).toEqual([true, false]);
  });

  test("a 1 is what some hosts make of TRUE", () => expect(added(1, false)).toBe(true));

  test.each([2, -1, "yes", "TRUE", [true]])("%p is refused", (given) =>
    expectRefusal(() => added(given), {
      argument: "sugar_added",
      given,
      remedy: /^give TRUE or FALSE$/u,
      kind: "domain",
    }),
  );
});

describe("an optional word", () => {
  const unit = (value: unknown) => cells.optionalWord(["kJ", "kcal"], value, "unit", "kJ");

  test.each([undefined, null, "", 0])("%p takes the default", (value) => {
    expect(cells.isBlankWord(value)).toBe(true);
    expect(unit(value)).toBe("kJ");
  });

  test.each([1, false, "kcal"])("%p is no blank", (value) => expect(cells.isBlankWord(value)).toBe(false));

  test("a word of the list counts, in any case", () => expect(unit(" KCAL ")).toBe("kcal"));

  test("any other is refused with the list", () =>
    expectRefusal(() => unit("joule"), {
      argument: "unit",
      given: "joule",
      remedy: /^give one of: kJ, kcal$/u,
      kind: "domain",
    }));
});

describe("the filled cells of a range", () => {
  test("come row by row, and blanks are passed over", () =>
    expect(
      cells.filledCells([
        [2, ""],
        [null, 8],
        [undefined, "x"],
      ]),
    ).toEqual([2, 8, "x"]));

  test("a 0 and a FALSE are filled", () => expect(cells.filledCells([[0, false]])).toEqual([0, false]));

  test("a single value is a range of one cell", () => {
    expect(cells.filledCells(8)).toEqual([8]);
    expect(cells.filledCells("")).toEqual([]);
  });
});

describe("rule sets", () => {
  test("of a table are those with an entry, in the order of all rule sets", () =>
    expect(ruleSetsOf({ AU: 1, EU: 2, US: 3 })).toEqual(["EU", "US", "AU"]));

  test("each question can be asked by those whose rules answer it", () => {
    // tables of sweetness: EU and OIV; of pressure: all five; the label's tolerance: EU and US
    expect(cells.ruleSets).toEqual({
      sweetness: ["EU", "OIV"],
      label: ["EU", "US"],
      pressure: ["EU", "OIV", "US", "AU", "CA-QC"],
    });
  });
});
