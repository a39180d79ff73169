/**
 * Guards quantities.ts against going empty: the compiler reads it with npm run types, which npm test runs first.
 */
import { readFileSync } from "node:fs";
import path from "node:path";

test("the compiler is made to reject every way of mixing bases and pressure scales", () => {
  const text = readFileSync(path.join(__dirname, "quantities.ts"), "utf8");
  expect(text.match(/@ts-expect-error/g)!.length).toBeGreaterThanOrEqual(20);
  const { scripts } = JSON.parse(readFileSync(path.join(__dirname, "../../package.json"), "utf8")) as {
    scripts: Record<string, string>;
  };
  expect(scripts.test).toMatch(/^npm run types &&/);
  expect(scripts.types).toBe("tsc --noEmit");
});
