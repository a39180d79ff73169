import { UnplannableBatch, orNull, required } from "../../../src/cellar/batch/attempt";
import { unanswerable } from "../../../src/cellar/refusal";

const refuse = () => {
  throw unanswerable("dose_gL", 5, "give more");
};
const fail = () => {
  throw new RangeError("a fault of the program");
};

test("several fields to mend stand in one sentence, and each by itself", () => {
  const problems = [
    { field: "tirage.dose_gL", given: 5, remedy: "give more" },
    { field: "lees.lees_months", given: 700, remedy: "give less" },
  ];
  const error = new UnplannableBatch(problems);
  expect(error.message).toBe("tirage.dose_gL: give more; lees.lees_months: give less");
  expect([error.name, error.problems]).toEqual(["UnplannableBatch", problems]);
});

test("a figure that is needed and refused names the field, what was given there, and the remedy", () => {
  let thrown: unknown;
  try {
    required("tirage.dose_gL", 7, refuse);
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(UnplannableBatch);
  expect((thrown as UnplannableBatch).problems).toEqual([
    { field: "tirage.dose_gL", given: 7, remedy: "give more" },
  ]);
});

test("a figure that has an answer is passed on", () => {
  expect(required("tirage.dose_gL", 7, () => 24)).toBe(24);
  expect(orNull(() => 24)).toBe(24);
});

test("a figure that can be done without is null where it is refused", () =>
  expect(orNull(refuse)).toBeNull());

test("a fault of the program is neither a field to mend nor a missing figure", () => {
  expect(() => required("tirage.dose_gL", 7, fail)).toThrow(RangeError);
  expect(() => orNull(fail)).toThrow(RangeError);
});
