/**
 * What one field demands of another, and that nothing is demanded by a field that is wrong itself.
 */
import { placedFields } from "../../../src/cellar/batch/field-kinds";
import { fields } from "../../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { changed, type Sections } from "./worked-batch";

function problemsOf(changes: Sections) {
  const parsed = parseBatchInputs(changed(changes));
  return parsed.ok ? [] : parsed.problems;
}
const fieldsOf = (changes: Sections) => problemsOf(changes).map(({ field }) => field);

describe("another material", () => {
  test.each(["other1", "other2"])("%s that is needed must have a name", (key) =>
    expect(problemsOf({ materials: { [key]: { need: 10 } } })).toEqual([
      { field: `materials.${key}.name`, given: null, remedy: "give a name for what is to be ordered" },
    ]),
  );

  test("that is named may be needed", () =>
    expect(problemsOf({ materials: { other1: { name: "Dividers", need: 10 } } })).toEqual([]));

  test("that is not needed may go without a name, or have one", () =>
    expect(problemsOf({ materials: { other1: { need: 0 }, other2: { name: "Dividers" } } })).toEqual([]));

  test("whose quantity is wrong is not asked for its name as well", () =>
    // at most 1e12
    expect(fieldsOf({ materials: { other1: { need: 2e12 } } })).toEqual(["materials.other1.need"]));

  test("that is no section is refused once", () =>
    expect(fieldsOf({ materials: { other1: 5 } })).toEqual(["materials.other1"]));
});

test("the hottest day is not held against a cellar temperature that is wrong itself", () =>
  // at most 45 °C
  expect(fieldsOf({ tirage: { cellar_C: 50, hottest_C: 25 } })).toEqual(["tirage.cellar_C"]));

test("a bottle filled with nothing is told what may be filled", () =>
  expect(problemsOf({ disgorging: { filled_mL: 0 } })).toEqual([
    {
      field: "disgorging.filled_mL",
      given: 0,
      remedy: "give 50 to 30000 mL, or leave it blank",
    },
  ]));

describe("a sweetness term", () => {
  test("that the rules do not have is told those they have, in the language of the label", () =>
    expect(problemsOf({ batch: { rules: "OIV", language: "fr" }, dosage: { term: "extra brut" } })).toEqual([
      {
        field: "dosage.term",
        given: "extra brut",
        remedy:
          "give one of: brut, extra dry, sec, demi-sec, doux; or its word in another of: en, fr, de, es, it, pt",
      },
    ]));

  test("in another language than the label's is one of the data", () =>
    expect(problemsOf({ batch: { language: "fr" }, dosage: { term: "Halbtrocken" } })).toEqual([]));

  test("is not looked up in rules that do not exist", () =>
    expect(fieldsOf({ batch: { rules: "Mars" }, dosage: { term: "brut" } })).toEqual(["batch.rules"]));

  test("is not listed in a language that does not exist", () =>
    expect(fieldsOf({ batch: { language: "xx" }, dosage: { term: "fizzy" } })).toEqual(["batch.language"]));

  test("that is too long is refused once", () =>
    expect(fieldsOf({ dosage: { term: "x".repeat(41) } })).toEqual(["dosage.term"]));
});

test("a section with a key too many still has its fields held against each other", () =>
  expect(fieldsOf({ tirage: { hottest_C: 11, cellar_C: 12, extra: 1 } }).sort()).toEqual([
    "tirage.extra",
    "tirage.hottest_C",
  ]));

test("a field is named with dots in files and with strokes in the sheet", () => {
  const volume = placedFields(fields).find(({ dotted }) => dotted === "baseWine.volume_hL")!;
  expect([volume.name, volume.path]).toEqual(["baseWine_volume_hL", ["baseWine", "volume_hL"]]);
});

test("a day that may stay blank says so, one that must be given does not", () =>
  expect(
    problemsOf({ batch: { tirageDate: "31.5.2024" }, readings: { r1: { date: "soon" } } }).map(
      ({ field, remedy }) => [field, remedy],
    ),
  ).toEqual([
    ["batch.tirageDate", "give a date like 2026-04-14"],
    ["readings.r1.date", "give a date like 2026-04-14, or blank"],
  ]));
