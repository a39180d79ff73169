/**
 * Calls as text, and back.
 */
import fc from "fast-check";
import { callText, readCall } from "../../src/explain/call";

test.each([
  ["TIRAGE.SUGAR(50, 24)", "TIRAGE.SUGAR", [50, 24]],
  ["=MOUSSE.TIRAGE.SUGAR(50,24,)", "TIRAGE.SUGAR", [50, 24, undefined]],
  ['=mousse.ageing.earliest(DATE(2024, 5, 31), "Crémant")', "AGEING.EARLIEST", [45_443, "Crémant"]],
  ['SWEETNESS.TERM(12, TRUE, "say ""EU""")', "SWEETNESS.TERM", [12, true, 'say "EU"']],
  ["DOSAGE.TRIAL(750, 0, 600, {8; 10})", "DOSAGE.TRIAL", [750, 0, 600, [[8], [10]]]],
  ["TIRAGE.CURVE(24, 10.5, , , -2.5e0)", "TIRAGE.CURVE", [24, 10.5, undefined, undefined, -2.5]],
  ["AGEING.DESIGNATIONS()", "AGEING.DESIGNATIONS", []],
])("%s", (text, id, args) => expect(readCall(text)).toEqual({ id, args }));

test.each([
  "",
  "TIRAGE.SUGAR",
  "TIRAGE.SUGAR(A1, 24)",
  "TIRAGE.SUGAR(50, 24) + 1",
  "TIRAGE.SUGAR(50",
  "1(2)",
  "F({1)",
  "F(DATE(1))",
  "F(1 2)",
  "F(☃)",
])("%p is no call of plain values", (text) => expect(readCall(text)).toBeUndefined());

test("what is written is read again", () => {
  const cell = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
    fc.string(),
    fc.boolean(),
  );
  fc.assert(
    fc.property(fc.array(cell, { minLength: 1, maxLength: 6 }), (args) => {
      const read = readCall(callText("TIRAGE.SUGAR", args))!;
      const trimmed = args.map((arg) => (arg === "" ? undefined : arg));
      while (trimmed.at(-1) === undefined && trimmed.length > 0) trimmed.pop();
      expect(read).toEqual({ id: "TIRAGE.SUGAR", args: trimmed });
    }),
    { seed: 20_261_125, numRuns: 500 },
  );
});
