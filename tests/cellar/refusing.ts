/**
 * What a refusal must carry, and that its sentence says all of it.
 */
import { isRefusal, wordGiven, type RefusalRecord } from "../../src/cellar/refusal";

/** Fails unless the call is refused for this argument, quoting what was given; the remedy is matched in part. */
export function expectRefusal(
  call: () => unknown,
  expected: {
    readonly argument: string;
    readonly given: unknown;
    readonly remedy: string | RegExp;
    readonly kind?: RefusalRecord["kind"];
  },
): void {
  let result: unknown;
  try {
    result = call();
  } catch (error) {
    if (!isRefusal(error)) throw error;
    expect(error.argument).toBe(expected.argument);
    expect(error.given).toEqual(expected.given);
    expect(error.kind).toBe(expected.kind ?? "unanswerable");
    if (typeof expected.remedy === "string") expect(error.remedy).toContain(expected.remedy);
    else expect(error.remedy).toMatch(expected.remedy);
    expect(error.message).toBe(`${expected.argument} is ${wordGiven(expected.given)}; ${error.remedy}`);
    return;
  }
  throw new Error(`not refused: ${JSON.stringify(result)}`);
}
