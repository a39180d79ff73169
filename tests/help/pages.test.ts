/**
 * The help pages: every function has one, with the working of its example; links lead somewhere; what is text stays
 * text.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { shown } from "../../src/explain/numbers";
import { functionDocs, type FunctionDoc } from "../../src/help/doc-comments";
import { helpPages, pageName } from "../../src/help/pages";
import { exampleWorking, workingSection } from "../../src/help/working";
import { all, flat, readMarkup, textOf, type Element } from "./markup";

const FUNCTIONS = path.resolve(__dirname, "../../src/functions");
const docs = functionDocs(
  readdirSync(FUNCTIONS).map((file) => ({ file, text: readFileSync(path.join(FUNCTIONS, file), "utf8") })),
);
const pages = helpPages(docs);
const read = (file: string) => readMarkup(pages.get(file)!);
const exampleCall = ({ example }: FunctionDoc) => example.slice(0, example.lastIndexOf(" = "));

/** The rows below the heading of a table, each as its cells. */
function rowsOf(page: Element, label: string): Element[][] {
  const table = all(page, "table").find(({ attributes }) => attributes["aria-label"] === label);
  const body = table ? all(table, "tbody")[0]! : undefined;
  return body ? all(body, "tr").map((row) => all(row, "td")) : [];
}

test("a page for every function and an index", () => {
  expect(docs.length).toBeGreaterThanOrEqual(52);
  expect([...pages.keys()].sort()).toEqual([...docs.map(({ id }) => pageName(id)), "index.html"].sort());
});

test.each(docs.map((doc) => [doc.id, doc] as const))("%s shows the working of its example", (id, doc) => {
  const page = read(pageName(id));
  const working = exampleWorking(exampleCall(doc));
  expect(working.call).toContain(id);
  const rows = rowsOf(page, "Steps");
  expect(rows).toHaveLength(working.steps.length);
  const withNumbers = working.steps.some(({ numbers }) => numbers !== undefined);
  rows.forEach((cells, index) => {
    const { what, equation, numbers, shown: result, unit } = working.steps[index]!;
    const texts = cells.map(textOf);
    const [said = "", worked, came] = withNumbers ? texts : [texts[0], "", texts[1]];
    expect(said.startsWith(flat(what))).toBe(true);
    expect(worked).toBe(equation === undefined ? "" : `${equation}= ${numbers}`);
    expect(came).toBe(flat(`${result} ${unit}`));
  });
  const constants = rowsOf(page, "Constants");
  expect(constants).toHaveLength(working.constants.length);
  constants.forEach((cells, index) => {
    const { symbol, value, unit, what, source } = working.constants[index]!;
    const [called, amount, from] = cells.map(textOf);
    expect([called, amount]).toEqual([symbol, flat(`${shown(value)} ${unit}`)]);
    expect(from).toContain(`${what}: ${source.text}`);
  });
  const text = textOf(page);
  for (const source of working.sources) {
    expect(text).toContain(source.text);
    if (source.recorded !== undefined) expect(text).toContain(`recorded ${source.recorded}`);
  }
  // below the example
  const order = all(page, "dt", "h2").map(textOf);
  expect(order.indexOf("The example, step by step")).toBe(order.indexOf("Example") + 1);
});

test("a function that can hurt someone says so in its working, too", () => {
  const careful = docs.filter(({ caution }) => caution !== undefined);
  expect(careful.length).toBeGreaterThan(8);
  for (const doc of careful)
    expect([doc.id, exampleWorking(exampleCall(doc)).caution]).toEqual([doc.id, expect.any(String)]);
});

test("every link leads to a page or a file of the build", () => {
  let links = 0;
  for (const file of pages.keys())
    for (const { attributes } of all(read(file), "a", "link")) {
      links++;
      const href = attributes["href"]!;
      const built = href === "help.css" || href === "../assets/icon-32.png";
      expect([file, href, built || pages.has(href)]).toEqual([file, href, true]);
    }
  expect(links).toBeGreaterThan(150);
  expect(all(read("index.html"), "a")).toHaveLength(docs.length);
});

test("no page carries a script, an image or a style of its own", () => {
  for (const file of pages.keys()) {
    const names = new Set(
      all(read(file), "script", "img", "iframe", "style", "object").map(({ name }) => name),
    );
    expect([file, [...names]]).toEqual([file, []]);
  }
});

test("text that looks like a tag stays text, in the docs and in the working", () => {
  const tag = '<img src="x" onerror="1"> & "co"';
  const sugar = docs.find(({ id }) => id === "TIRAGE.SUGAR")!;
  const parameters = sugar.parameters.map((parameter) => ({ ...parameter, name: tag, text: tag }));
  const evil = {
    ...sugar,
    parameters,
    description: tag,
    returns: tag,
    equation: tag,
    source: tag,
    refuses: tag,
    caution: tag,
  };
  for (const html of helpPages([evil]).values()) {
    const page = readMarkup(html);
    expect(all(page, "img")).toEqual([]);
    expect(textOf(page)).toContain(tag);
  }

  const working = exampleWorking("TIRAGE.SUGAR(50, 24)");
  const source = { text: tag, mark: "read" } as const;
  const section = readMarkup(
    workingSection({
      ...working,
      steps: working.steps.map((step) => ({
        ...step,
        what: tag,
        symbol: tag,
        equation: tag,
        numbers: tag,
        shown: tag,
        unit: tag,
      })),
      constants: working.constants.map((constant) => ({
        ...constant,
        symbol: tag,
        unit: tag,
        what: tag,
        source,
      })),
      sources: [source],
    }),
  );
  expect(all(section, "img")).toEqual([]);
  expect(textOf(section).split(tag).length).toBeGreaterThan(5 * working.steps.length);
});

test("the reader itself takes no page with an unescaped sign or an open tag", () => {
  for (const bad of [
    "<p>a & b</p>",
    "<p>a < b</p>",
    "<p>a > b</p>",
    "<p>&copy;</p>",
    "<p><b></p></b>",
    "<p>",
    "<p id=x></p>",
  ])
    expect(() => readMarkup(bad)).toThrow();
  expect(textOf(readMarkup('<p title="&quot;">a &amp;&nbsp;b</p>'))).toBe("a & b");
});

test("an example that cannot be explained stops the build, with its name", () => {
  expect(() => exampleWorking("TIRAGE.SUGAR(A1, 24)")).toThrow(
    /TIRAGE\.SUGAR\(A1, 24\) is no call of plain values/u,
  );
  expect(() => exampleWorking("TIRAGE.SUGAR(0, 24)")).toThrow(/is refused: volume_hL is 0; /u);
});
