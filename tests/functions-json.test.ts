/**
 * The contract that functions.json is: ids that people's workbooks will hold, names that Excel accepts, and every
 * part described. The built file is the same.
 */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import vm from "node:vm";
import * as z from "zod/mini";
import { allFunctions, type AllFunctions } from "./support/functions";

const DIST = path.resolve(__dirname, "../dist");

const schema = z.object({
  functions: z.array(
    z.object({
      id: z.string().check(z.regex(/^[A-Z]+(\.[A-Z0-9]+)+$/), z.minLength(3), z.maxLength(64)),
      name: z.string(),
      description: z.string().check(z.minLength(20), z.maxLength(255)),
      parameters: z.array(
        z.object({
          name: z.string().check(z.regex(/^[a-zA-Z][A-Za-z0-9_]*$/)),
          description: z.string().check(z.minLength(10), z.maxLength(255)),
          type: z.enum(["number", "string", "boolean"]),
          optional: z.optional(z.boolean()),
        }),
      ),
    }),
  ),
});

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

test("keeps to the schema, and is small enough for Excel", () => {
  expect(z.safeParse(schema, JSON.parse(all.json)).error?.issues ?? []).toEqual([]);
  expect(all.json.length).toBeLessThan(1_000_000);
});

test("ids are unique, equal to the names, and none reads as a cell's address", () => {
  const ids = all.metadata.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { id, name } of all.metadata) {
    expect(name).toBe(id);
    expect(name).not.toMatch(/^[A-Z]{1,3}[0-9]+$/);
  }
});

test("ids, argument names and their order are what was released", () => {
  const calls = all.metadata.map(
    ({ id, parameters }) =>
      `${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ")})`,
  );
  expect(calls.sort()).toMatchSnapshot();
});

test("optional arguments come last", () => {
  for (const { id, parameters } of all.metadata) {
    const firstOptional = parameters.findIndex(({ optional }) => optional);
    const rest = firstOptional < 0 ? [] : parameters.slice(firstOptional);
    expect([id, rest.every(({ optional }) => optional)]).toEqual([id, true]);
  }
});

describe("the built script", () => {
  test("is there", () => expect(existsSync(path.join(DIST, "functions.js"))).toBe(true));

  test("associates every id of the built functions.json when loaded as a classic script", () => {
    const built = JSON.parse(readFileSync(path.join(DIST, "functions.json"), "utf8")) as {
      functions: { id: string }[];
    };
    expect(built.functions.map(({ id }) => id).sort()).toEqual(all.metadata.map(({ id }) => id).sort());
    const associated: string[] = [];
    const context = vm.createContext({ CustomFunctions: { associate: (id: string) => associated.push(id) } });
    vm.runInContext(readFileSync(path.join(DIST, "functions.js"), "utf8"), context);
    expect(associated.sort()).toEqual(built.functions.map(({ id }) => id).sort());
  });

  test("gives Excel's own error with the sentence where Excel is there", () => {
    class CellError extends Error {
      constructor(
        readonly code: string,
        message: string,
      ) {
        super(message);
      }
    }
    const functions = new Map<string, (...args: unknown[]) => unknown>();
    const context = vm.createContext({
      CustomFunctions: {
        associate: (id: string, calculate: (...args: unknown[]) => unknown) => functions.set(id, calculate),
        Error: CellError,
        ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
      },
    });
    vm.runInContext(readFileSync(path.join(DIST, "functions.js"), "utf8"), context);
    const thrownBy = (id: string, ...args: unknown[]): CellError => {
      try {
        functions.get(id)!(...args);
      } catch (error) {
        return error as CellError;
      }
      throw new Error("nothing was refused");
    };
    expect(thrownBy("TIRAGE.PRESSURE", 24, 85, 10.5)).toMatchObject({
      code: "#VALUE!",
      message: "temperature_C is 85; give -5 to 45 °C",
    });
    expect(thrownBy("TIRAGE.DOSE", 19, 0, 11)).toMatchObject({ code: "#N/A" });
  });
});

test("the README lists every function and no other", () => {
  const readme = readFileSync(path.resolve(__dirname, "../README.md"), "utf8");
  const table = readme.slice(readme.indexOf("| family"), readme.indexOf("Each has a help page"));
  const listed = [...table.matchAll(/`([A-Z]+\.[A-Z0-9]+)`/g)].map((match) => match[1]!);
  expect(listed.sort()).toEqual(all.metadata.map(({ id }) => id).sort());
});

describe("the contributors' table of checks", () => {
  const table = readFileSync(path.resolve(__dirname, "../DEVELOPERS.md"), "utf8");
  const rows = [...table.matchAll(/^\| ([A-Z]+\.[A-Z0-9]+) +\|.*\| ([^|]+?) +\|$/gm)];

  test("names every function and no other", () => {
    expect(rows.map(([, id]) => id!).sort()).toEqual(all.metadata.map(({ id }) => id).sort());
  });

  test.each(rows.map((row) => [row[1]!, row[2]!]))("the files that check %s are there", (_id, files) => {
    for (const file of files.split(", ")) {
      const place = file.includes("/") ? file : `published/${file}`;
      expect([file, existsSync(path.resolve(__dirname, `${place}.test.ts`))]).toEqual([file, true]);
    }
  });
});
