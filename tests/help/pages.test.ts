/**
 * The help pages as a browser reads them: every function has one, with the working of its example; links lead
 * somewhere; what is text stays text.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { JSDOM } from "jsdom";
import { shown } from "../../src/explain/numbers";
import { functionDocs, type FunctionDoc } from "../../src/help/doc-comments";
import { escape } from "../../src/help/html";
import { helpPages, pageName } from "../../src/help/pages";
import { exampleWorking, workingSection } from "../../src/help/working";

const FUNCTIONS = path.resolve(__dirname, "../../src/functions");
const docs = functionDocs(
  readdirSync(FUNCTIONS).map((file) => ({ file, text: readFileSync(path.join(FUNCTIONS, file), "utf8") })),
);
const pages = helpPages(docs);
const documentOf = (file: string) => new JSDOM(pages.get(file)!).window.document;
const textOf = (element: Element | null) => (element?.textContent ?? "").replace(/\s+/gu, " ").trim();
const exampleCall = ({ example }: FunctionDoc) => example.slice(0, example.lastIndexOf(" = "));

test("a page for every function and an index", () => {
  expect(docs.length).toBeGreaterThanOrEqual(52);
  expect([...pages.keys()].sort()).toEqual([...docs.map(({ id }) => pageName(id)), "index.html"].sort());
});

test.each(docs.map((doc) => [doc.id, doc] as const))("%s shows the working of its example", (id, doc) => {
  const page = documentOf(pageName(id));
  const working = exampleWorking(exampleCall(doc));
  const rows = [...page.querySelectorAll('table[aria-label="Steps"] tbody tr')];
  expect(rows).toHaveLength(working.steps.length);
  rows.forEach((row, index) => {
    const { what, equation, numbers, shown: result, unit } = working.steps[index]!;
    const [said, worked, came] = [...row.children].map(textOf) as [string, string, string];
    const flat = (text: string) => text.replace(/\s+/gu, " ").trim();
    expect(said.startsWith(flat(what))).toBe(true);
    expect(worked).toBe(equation === undefined ? "" : `${equation}= ${numbers}`);
    expect(came).toBe(flat(`${result} ${unit}`));
  });
  const constants = [...page.querySelectorAll('table[aria-label="Constants"] tbody tr')];
  expect(constants).toHaveLength(working.constants.length);
  constants.forEach((row, index) => {
    const { symbol, value, what, source } = working.constants[index]!;
    expect(textOf(row)).toContain(symbol + shown(value));
    expect(textOf(row)).toContain(what);
    expect(textOf(row)).toContain(source.text);
  });
  for (const { text, recorded } of working.sources) {
    expect(textOf(page.querySelector("main"))).toContain(text);
    if (recorded) expect(textOf(page.querySelector("main"))).toContain(`recorded ${recorded}`);
  }
  // below the example
  const order = [...page.querySelectorAll("main dt, main h2")].map(textOf);
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
    for (const link of documentOf(file).querySelectorAll("a[href], link[href]")) {
      links++;
      const href = link.getAttribute("href")!;
      const built = href === "help.css" || href === "../assets/icon-32.png";
      expect([file, href, built || pages.has(href)]).toEqual([file, href, true]);
    }
  expect(links).toBeGreaterThan(150);
  const index = documentOf("index.html");
  expect(index.querySelectorAll("main a")).toHaveLength(docs.length);
});

test("the pages are well-formed and carry no script", () => {
  for (const [file, html] of pages) {
    // as XML, so that one unescaped sign fails; &nbsp; is HTML's own
    const xml = html.replace(/^<!doctype html>\s*/u, "").replaceAll("&nbsp;", "&#160;");
    const parsed = new new JSDOM("").window.DOMParser().parseFromString(xml, "application/xhtml+xml");
    expect([file, textOf(parsed.querySelector("parsererror"))]).toEqual([file, ""]);
    expect([file, documentOf(file).querySelectorAll("script, img, iframe, style, [onclick]").length]).toEqual(
      [file, 0],
    );
  }
});

test("text that looks like a tag stays text, in the docs and in the working", () => {
  const tag = '<img src="x" onerror="1"> & "co"';
  const evil = {
    ...docs.find(({ id }) => id === "TIRAGE.SUGAR")!,
    description: tag,
    returns: tag,
    equation: tag,
    source: tag,
    refuses: tag,
    caution: tag,
  };
  const page = new JSDOM(helpPages([evil]).get("tirage.sugar.html")!).window.document;
  expect(page.querySelector("img")).toBeNull();
  expect(textOf(page.querySelector("main > p"))).toBe(tag);

  const working = exampleWorking("TIRAGE.SUGAR(50, 24)");
  const source = { text: tag, mark: "read" } as const;
  const html = workingSection({
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
  });
  expect(html).not.toContain("<img");
  expect(new JSDOM(html).window.document.querySelector("img")).toBeNull();
  expect(html.split(escape(tag)).length).toBeGreaterThan(6 * working.steps.length);
});

test("an example that cannot be explained stops the build, with its name", () => {
  expect(() => exampleWorking("TIRAGE.SUGAR(A1, 24)")).toThrow(
    /TIRAGE\.SUGAR\(A1, 24\) is no call of plain values/u,
  );
  expect(() => exampleWorking("TIRAGE.SUGAR(0, 24)")).toThrow(/is refused: volume_hL is 0; /u);
});
