/**
 * Where there is no Excel, the functions' script keeps what it associates, for whoever runs the functions.
 */
import "../../src/functions/registry";

interface Registry {
  readonly associated: ReadonlyMap<string, unknown>;
  readonly associate: (id: string, calculate: () => number) => void;
}
const page = globalThis as unknown as { CustomFunctions?: Registry };
// as it was when the script had loaded
const made = page.CustomFunctions;
delete page.CustomFunctions;

test("what is associated can be found by its id", () => {
  const one = () => 1;
  made!.associate("ONE", one);
  expect([...made!.associated]).toEqual([["ONE", one]]);
});
