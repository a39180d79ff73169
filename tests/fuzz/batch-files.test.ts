/**
 * Batch files with whatever JSON can hold: a plan of finite figures, or a list of problems in words; nothing else is
 * thrown, nothing takes long, and no other object of the page is changed.
 */
import fc from "fast-check";
import { readBatchFile } from "../../src/taskpane/batch-files";
import { planned } from "../../src/taskpane/planned";
import { problemSentence } from "../../src/cellar/batch/problem";
import {
  HOSTILE_TEXTS,
  UNHOLDABLE_TEXTS,
  always,
  alwaysLater,
  fastest,
  runsMade,
  worked_ms,
} from "../support/fuzz";
import { sampleFiles, sampleJson } from "../support/samples";

jest.setTimeout(600_000);
const SLOW_MS = 2000;
const samples = sampleFiles.map(sampleJson);

afterEach(() => {
  const plain = {} as Record<string, unknown>;
  expect([plain.polluted, plain.batch, ([] as unknown[] as { polluted?: unknown }).polluted]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});
afterAll(() => process.stdout.write(`batch files: ${runsMade()} runs\n`));

/** Where something that is no finite number stands, or "". */
function notFinite(value: unknown, at = "plan"): string {
  if (typeof value === "number") return Number.isFinite(value) ? "" : `${at} is ${value}`;
  if (typeof value !== "object" || value === null) return "";
  return Object.entries(value).reduce((found, [key, each]) => found || notFinite(each, `${at}.${key}`), "");
}

function check(given: unknown): void {
  const outcome = planned(given);
  if ("plan" in outcome) {
    expect(notFinite(outcome.plan)).toBe("");
    expect(notFinite(outcome.inputs, "inputs")).toBe("");
    return;
  }
  expect(outcome.problems.length).toBeGreaterThan(0);
  for (const problem of outcome.problems.slice(0, 50)) {
    expect(problem.field).not.toBe("");
    expect(problem.remedy).not.toBe("");
    expect(problemSentence(problem)).not.toContain("[object");
  }
}

const strange = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(...HOSTILE_TEXTS, ...UNHOLDABLE_TEXTS, "x".repeat(100_000)),
  fc.constantFrom(0, -0, 1e308, -1e308, 1e-320, 2 ** 53, 1e999, null, true, "", [], {}, [[]], { length: -1 }),
  fc.double(),
  fc.constantFrom("9999-12-31", "0000-00-00", "1900-02-29", "2026-02-30", "+275760-09-13", "12", "1,5"),
);
/** Names that mean something to JavaScript, and names of fields. */
const keys = fc.oneof(
  fc.constantFrom("__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "length", "", "a.b"),
  fc.constantFrom(
    "batch",
    "tirage",
    "materials",
    "readings",
    "name",
    "r1",
    "yield",
    "domain",
    "kind",
    "label",
  ),
  fc.string(),
);
type Edit = readonly [where: readonly number[], what: "delete" | "put" | "add", key: string, value: unknown];
const edits = fc.array(
  fc.tuple(
    fc.array(fc.nat(40), { minLength: 1, maxLength: 3 }),
    fc.constantFrom("delete", "put", "put", "add"),
    keys,
    strange,
  ),
  { minLength: 1, maxLength: 6 },
);

/** An own property whatever its name is, as JSON.parse makes them. */
const put = (on: object, key: string, value: unknown) =>
  Object.defineProperty(on, key, { value, enumerable: true, configurable: true, writable: true });

function edited(sample: number, changes: readonly Edit[]): unknown {
  const batch = structuredClone(samples[sample % samples.length]!) as Record<string, unknown>;
  for (const [where, what, key, value] of changes) {
    let [on, name]: [object, string] = [batch, key];
    for (const each of where) {
      const names = Object.keys(on);
      const next = names[each % Math.max(1, names.length)];
      if (next === undefined) break;
      name = next;
      const child = (on as Record<string, unknown>)[name];
      if (typeof child !== "object" || child === null) break;
      if (each !== where.at(-1)) on = child;
    }
    if (what === "delete") Reflect.deleteProperty(on, name);
    else put(on, what === "add" ? key : name, value);
  }
  return batch;
}

test("any JSON", () => {
  always(fc.jsonValue({ maxDepth: 6 }), check, 2);
  always(fc.dictionary(keys, fc.dictionary(keys, strange)), check, 2);
});

test("real files with keys taken out, put in and given other values", () =>
  always(fc.tuple(fc.nat(9), edits), ([sample, changes]) => check(edited(sample, changes)), 4));

test("real files with every number pulled to where it may still be", () => {
  const factor = fc.constantFrom(0, 0.5, 0.999, 1, 1, 1, 1.001, 2, 10);
  always(
    fc.tuple(fc.nat(9), fc.array(factor, { minLength: 40, maxLength: 40 })),
    ([sample, factors]) => {
      let at = 0;
      const pulled: unknown = JSON.parse(
        JSON.stringify(samples[sample % samples.length]),
        (_, value: unknown) => (typeof value === "number" ? value * factors[at++ % factors.length]! : value),
      );
      check(pulled);
    },
    4,
  );
});

const nested = (depth: number, open: string, close: string) =>
  `{"batch":{"name":${open.repeat(depth)}1${close.repeat(depth)}}}`;
const many = (count: number, entry: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => entry(index)).join(",");

describe("as a file", () => {
  const read = (content: string | Uint8Array<ArrayBuffer>) =>
    readBatchFile(new File([content], "batch.json", { type: "application/json" }));
  const refused = async (content: string | Uint8Array<ArrayBuffer>) => {
    const start = worked_ms();
    const { batch, said } = await read(content);
    expect([batch, worked_ms() - start < SLOW_MS]).toEqual([undefined, true]);
    return said;
  };

  test.each([
    ["objects in objects", nested(10_000, '{"a":', "}"), "nested too deep"],
    ["arrays in arrays", nested(10_000, "[", "]"), "nested too deep"],
    ["deeper than that", nested(100_000, "[", "]"), "nested too deep"],
    ["no end", nested(10_000, "[", ""), "not JSON"],
    ["very long", `{"batch":{"name":"${"x".repeat(2_000_000)}"}}`, "more than 1000 kB"],
    ["very many", `{${many(200_000, (index) => `"k${index}":1`)}}`, "more than 1000 kB"],
    ["nothing", "", "it is blank"],
    ["blanks", "\uFEFF \r\n", "it is blank"],
    ["UTF-16", new Uint8Array(Buffer.from(`\uFEFF${JSON.stringify(samples[0])}`, "utf16le")), "not in UTF-8"],
    ["Latin-1", new Uint8Array(Buffer.from('{"batch":{"name":"Crémant"}}', "latin1")), "not in UTF-8"],
    ["a workbook", new Uint8Array([0x50, 0x4b, 3, 4, 0x14, 0]), "it is a workbook"],
    ["a list", "[]", "none of a batch's sections"],
    ["a prototype", '{"__proto__":{"batch":{"name":"x"}}}', "none of a batch's sections"],
  ])("%s", async (_name, content, reason) => expect(await refused(content)).toContain(reason));

  test("a file that is gone when it is read", async () => {
    const gone = { name: "gone.json", size: 10, arrayBuffer: () => Promise.reject(new Error("NotFound")) };
    const { batch, said } = await readBatchFile(gone as unknown as File);
    expect([batch, said]).toEqual([
      undefined,
      "gone.json is not a batch file: it cannot be read. The form is as it was.",
    ]);
  });

  test("names with points in place of groups have no place", async () => {
    const { said } = await read('{"batch":{"name":"x"},"baseWine.volume_hL":60,"tirage":5}');
    expect(said).toContain("Not taken, as there are no such fields: baseWine.volume_hL, tirage.");
  });

  test("a byte order mark, which some editors put first, is no part of the batch", async () => {
    const { batch } = await read(`\uFEFF${JSON.stringify(samples[0])}`);
    expect(batch).toEqual(samples[0]);
  });

  test("a prototype in a batch is a field that there is not", async () => {
    const content = '{"batch":{"name":"x","__proto__":{"polluted":1}},"__proto__":{"polluted":1}}';
    const { batch, said } = await read(content);
    expect(said).toContain("there are no such fields: batch.__proto__, __proto__");
    check(batch);
  });

  test("as many strange fields as go into a file, and a number too large for JavaScript", async () => {
    const content = `{"batch":{${many(60_000, (index) => `"k${index}":1`)}},"lees":{"lees_months":1e999}}`;
    const { batch } = await read(content);
    expect(fastest(() => check(batch), SLOW_MS)).toBeLessThan(SLOW_MS);
  });

  test("bytes of any kind", async () => {
    const text = Buffer.from(JSON.stringify(samples[0]));
    const flips = fc.array(fc.tuple(fc.nat(text.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 });
    await alwaysLater(flips, async (changes) => {
      const bytes = new Uint8Array(text);
      for (const [at, byte] of changes) bytes[at] = byte;
      const { batch, said } = await read(bytes);
      if (batch === undefined)
        expect(said).toMatch(/^batch\.json is not a batch file: .* The form is as it was\.$/);
      else check(batch);
    });
  });
});
