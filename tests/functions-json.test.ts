/**
 * The contract that functions.json is: ids that people's workbooks will hold, names that Excel accepts, and every
 * part described. The built file is the same.
 */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import vm from "node:vm";
import * as z from "zod/mini";
import { functionDocs } from "../src/help/doc-comments";
import { linked } from "../src/help/help-plugin";
import { helpPages } from "../src/help/pages";
import { adapterFiles, allFunctions, type AllFunctions } from "./support/functions";

const DIST = path.resolve(__dirname, "../dist");

/** Letters, digits, underscore and period, first a letter, 3 to 128 characters: Microsoft's rules for names. */
const name = z.string().check(z.regex(/^[A-Z][A-Z0-9_.]*$/), z.minLength(3), z.maxLength(128));
/**
 * No limit is documented for add-ins. 255 characters is what Excel takes of any other add-in's description, and a
 * second line is not shown in its window for arguments.
 */
const description = (atLeast: number) =>
  z.string().check(z.minLength(atLeast), z.maxLength(255), z.regex(/^\S[^\r\n]*\.$/));
const dimensionality = z.optional(z.enum(["scalar", "matrix"]));
const type = z.enum(["number", "string", "boolean"]);

// strict: an option that slips in, such as "volatile" or "stream", would change what Excel does with the function
const schema = z.strictObject({
  allowCustomDataForDataTypeAny: z.boolean(),
  functions: z.array(
    z.strictObject({
      id: name,
      name,
      description: description(20),
      helpUrl: z.url({ protocol: /^https$/ }),
      parameters: z.array(
        z.strictObject({
          name: z.string().check(z.regex(/^[a-zA-Z][A-Za-z0-9_]*$/), z.maxLength(128)),
          description: description(10),
          type,
          dimensionality,
          optional: z.optional(z.boolean()),
        }),
      ),
      result: z.strictObject({ type: z.optional(type), dimensionality }),
    }),
  ),
});

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

test("keeps to the schema, and is small enough for Excel", () => {
  const file = linked(all.json, "https://localhost:3000");
  expect(z.safeParse(schema, JSON.parse(file)).error?.issues ?? []).toEqual([]);
  expect(Buffer.byteLength(file)).toBeLessThan(1_000_000);
});

test.each([
  ["volatile", { options: { volatile: true } }],
  ["an id of two letters", { id: "AB", name: "AB" }],
  ["an id with a hyphen", { id: "TIRAGE-SUGAR" }],
  ["an id that begins with a digit", { id: "2.SUGAR" }],
  ["no description", { description: "" }],
  ["a description of two lines", { description: "Kilograms of sucrose.\nTo weigh." }],
  ["a description of 256 characters", { description: `${"x".repeat(255)}.` }],
  ["help without encryption", { helpUrl: "http://localhost:3000/help/tirage.sugar.html" }],
  ["a type that Excel has not", { result: { type: "date" } }],
])("the schema refuses %s", (_what, change) => {
  const [first] = (JSON.parse(linked(all.json, "https://localhost:3000")) as { functions: object[] })
    .functions;
  const file = { allowCustomDataForDataTypeAny: true, functions: [{ ...first, ...change }] };
  expect(z.safeParse(schema, file).success).toBe(false);
});

/** A1 to XFD1048576, and R1C1 in all its forms. */
const ADDRESS = /^(?:[A-Z]{1,3}[0-9]+|R[0-9]*C[0-9]*|R[0-9]*|C[0-9]*)$/i;

test("ids are unique, equal to the names, and none reads as a cell's address", () => {
  const ids = all.metadata.map(({ id }) => id);
  // in a saved workbook MOUSSE.TIRAGE.SUGAR is _xldudf_MOUSSE_TIRAGE_SUGAR: also then they are to differ
  const saved = ids.map((id) => id.replaceAll(".", "_"));
  expect(new Set(saved).size).toBe(ids.length);
  for (const { id, name } of all.metadata) {
    expect(name).toBe(id);
    expect(name).not.toMatch(ADDRESS);
    expect(name).toMatch(/^[A-Z]+\.[A-Z0-9]+$/);
  }
  expect(["A1", "XFD1048576", "R1C1", "RC", "R", "C7", "r2c"].filter((each) => !ADDRESS.test(each))).toEqual(
    [],
  );
});

test("the arguments of a function have different names, and none reads as a cell's address", () => {
  for (const { id, parameters } of all.metadata) {
    const names = parameters.map(({ name }) => name.toLowerCase());
    expect([id, new Set(names).size]).toEqual([id, names.length]);
    expect([id, names.filter((each) => ADDRESS.test(each))]).toEqual([id, []]);
  }
});

test("every help address is a page that is made", () => {
  const { functions } = JSON.parse(linked(all.json, "https://localhost:3000")) as {
    functions: { helpUrl: string }[];
  };
  const docs = functionDocs(adapterFiles.map((file) => ({ file, text: readFileSync(file, "utf8") })));
  const pages = helpPages(docs);
  const missing = functions.filter(({ helpUrl }) => !pages.has(helpUrl.split("/help/")[1]!));
  expect(functions).toHaveLength(docs.length);
  expect(missing).toEqual([]);
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
