/**
 * The help pages: every function has one in every language, with the working of its example; links lead somewhere;
 * what is text stays text.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { shown } from "../../src/explain/numbers";
import { functionDocs, type FunctionDoc } from "../../src/help/doc-comments";
import { citedText } from "../../src/explain/sources";
import { ENGLISH, helpLanguages, type HelpLanguage } from "../../src/help/languages";
import { helpPages, pageName } from "../../src/help/pages";
import { exampleWorking, workingSection } from "../../src/help/working";
import { all, flat, readMarkup, textOf, type Element } from "./markup";

const FUNCTIONS = path.resolve(__dirname, "../../src/functions");
const docs = functionDocs(
  readdirSync(FUNCTIONS).map((file) => ({ file, text: readFileSync(path.join(FUNCTIONS, file), "utf8") })),
);
const languages = helpLanguages();
const french = languages.find(({ code }) => code === "fr")!;
const pages = new Map(languages.flatMap((each) => [...helpPages(docs, each, languages)]));
const read = (file: string) => readMarkup(pages.get(file)!);
const inEach = languages.flatMap((each) => docs.map((doc) => [each.name, doc.id, each, doc] as const));
const exampleCall = ({ example }: FunctionDoc) => example.slice(0, example.lastIndexOf(" = "));

/** The rows below the heading of a table, each as its cells. */
function rowsOf(page: Element, label: string): Element[][] {
  const table = all(page, "table").find(({ attributes }) => attributes["aria-label"] === label);
  const body = table ? all(table, "tbody")[0]! : undefined;
  return body ? all(body, "tr").map((row) => all(row, "td")) : [];
}

test("a page for every function and an index, in every language", () => {
  expect(docs.length).toBeGreaterThanOrEqual(52);
  const names = [...docs.map(({ id }) => pageName(id)), "index.html"];
  expect([...pages.keys()].sort()).toEqual([...names, ...names.map((name) => `fr/${name}`)].sort());
  for (const { code, folder } of languages)
    for (const name of names)
      expect([name, all(read(folder + name), "html")[0]!.attributes["lang"]]).toEqual([name, code]);
});

test.each(inEach)("%s: %s shows the working of its example", (_name, id, { folder, say }, doc) => {
  const page = read(folder + pageName(id));
  const working = exampleWorking(exampleCall(doc));
  expect(working.call).toContain(id);
  const rows = rowsOf(page, say("Steps"));
  expect(rows).toHaveLength(working.steps.length);
  const withNumbers = working.steps.some(({ numbers }) => numbers !== undefined);
  rows.forEach((cells, index) => {
    const { what, equation, numbers, shown: result, unit, argument } = working.steps[index]!;
    const texts = cells.map(textOf);
    const [told = "", worked, came] = withNumbers ? texts : [texts[0], "", texts[1]];
    expect(told.startsWith(flat(say(what)))).toBe(true);
    expect(worked).toBe(equation === undefined ? "" : `${equation}= ${numbers}`);
    // what was given stays as it was typed
    expect(came).toBe(flat(`${argument === "given" ? result : say(result)} ${say(unit)}`));
  });
  const constants = rowsOf(page, say("Constants"));
  expect(constants).toHaveLength(working.constants.length);
  constants.forEach((cells, index) => {
    const { symbol, value, unit, what, source } = working.constants[index]!;
    const [called, amount, from] = cells.map(textOf);
    expect([called, amount]).toEqual([symbol, flat(`${shown(value)} ${say(unit)}`)]);
    expect(from).toBe(flat(say(what)) + flat(say(citedText(source))));
  });
  const text = textOf(page);
  for (const source of working.sources) {
    expect(text).toContain(flat(say(citedText(source))));
    if (source.recorded !== undefined) expect(text).toContain(source.recorded);
  }
  // below the example
  const order = all(page, "dt", "h2").map(textOf);
  expect(order.indexOf(say("The example, step by step"))).toBe(order.indexOf(say("Example")) + 1);
});

/** What stands in code, the same in every language. */
const codeIn = (file: string) => all(read(file), "code").map(textOf);

test("formulas and equations in code are the same in every language", () => {
  for (const { id } of docs) {
    const [own, other] = [codeIn(pageName(id)), codeIn(french.folder + pageName(id))];
    const bothTyped = own.map((text) => text.replaceAll("TRUE", "VRAI").replaceAll("FALSE", "FAUX"));
    other.forEach((text, index) =>
      expect([id, [own[index], bothTyped[index]].includes(text)]).toEqual([id, true]),
    );
    expect(other).toHaveLength(own.length);
  }
});

test("how the example is typed where a comma marks decimals", () => {
  const note = (id: string, folder: string) =>
    all(read(folder + pageName(id)), "p")
      .filter(({ attributes }) => attributes["class"] === "note")
      .flatMap((paragraph) => all(paragraph, "code").map(textOf));
  const example = "TIRAGE.PRESSURE(24.5, 10, 10.5)";
  const odd = { ...docs.find(({ id }) => id === "TIRAGE.PRESSURE")!, example: `${example} = 5.4` };
  const html = helpPages([odd], french).get("fr/tirage.pressure.html")!;
  expect(all(readMarkup(html), "code").map(textOf)).toContain("=MOUSSE.TIRAGE.PRESSURE(24,5; 10; 10,5)");
  expect(note("SWEETNESS.CHECK", "")).toEqual(['=MOUSSE.SWEETNESS.CHECK("brut"; 12)']);
  // nothing in it is written otherwise
  expect(note("SUGAR.INVERT", "fr/")).toEqual([]);
});

/** The text of a page without its code. */
function words(element: Element): string {
  const children = element.children.filter((child) => typeof child === "string" || child.name !== "code");
  return children.map((child) => (typeof child === "string" ? child : ` ${words(child)} `)).join("");
}

const ENGLISH_ONLY = [
  ...[
    "All functions",
    "Given",
    "needed",
    "optional",
    "What, unit and range",
    "It takes no",
    "Gives",
    "gives",
  ],
  ...["Equation", "Refuses", "Example", "step by step", "Steps?", "With numbers", "Results?", "Constants"],
  ...["Symbol", "Value", "Rests on", "rounded", "Take care", "Left blank", "recorded"],
  ...["read", "secondary", "memory", "derived", "blank", "less than", "more than", "at most", "whole number"],
  ...["the", "of", "and", "with", "from", "to", "is", "are", "in", "at"],
];

test("no French page has English left on it", () => {
  const left = [...pages.keys()]
    .filter((file) => file.startsWith(french.folder))
    .flatMap((file) => {
      const page = read(file);
      const text = flat(words(page));
      const found = ENGLISH_ONLY.filter((each) => new RegExp(`(?<!\\p{L})${each}(?!\\p{L})`, "u").test(text));
      return found.map((each) => [file, each]);
    });
  expect(left).toEqual([]);
});

/** The same in both languages, or what a function takes or gives. */
const SAME = new Set([
  "Glucose + fructose",
  "Stock",
  "brut",
  "extra brut, brut",
  "extra dry",
  "quality sparkling wine",
  "within tolerance",
]);

test("all that a French page says is known in French, the workings too", () => {
  const unknown = new Set<string>();
  const say = (text: string) => {
    const answer = french.say(text);
    const isWord = /\p{L}{4}/u.test(text.replaceAll("°Brix", ""));
    if (answer === text && isWord && !SAME.has(text) && !french.knows(text)) unknown.add(text);
    return answer;
  };
  helpPages(docs, { ...french, say } satisfies HelpLanguage);
  expect([...unknown]).toEqual([]);
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
      const [target = "", anchor] = href.split("#");
      const place = path.posix.join(path.posix.dirname(file), target);
      const built = place === "help.css" || place === "../assets/icon-32.png" || pages.has(place);
      expect([file, href, built, anchor]).toEqual([file, href, true, undefined]);
    }
  expect(links).toBeGreaterThan(300);
  for (const { folder } of languages) {
    const [main] = all(read(`${folder}index.html`), "main");
    expect(all(main!, "a")).toHaveLength(docs.length);
  }
});

test("each page links to itself in the other languages, and to no other page there", () => {
  for (const { folder, code } of languages)
    for (const name of [...docs.map(({ id }) => pageName(id)), "index.html"]) {
      const nav = all(read(folder + name), "nav").find(
        ({ attributes }) => attributes["class"] === "languages",
      )!;
      expect(textOf(nav)).toBe("English / Français");
      const targets = all(nav, "a").map(({ attributes }) => [
        attributes["lang"],
        path.posix.join(folder, attributes["href"]!),
      ]);
      const others = languages.filter((each) => each.code !== code);
      expect(targets).toEqual(others.map((each) => [each.code, each.folder + name]));
    }
  const alone = helpPages(docs).get("index.html")!;
  expect(all(readMarkup(alone), "nav")).toEqual([]);
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
  // a catalogue's text is text as well
  const spoken = { ...ENGLISH, code: "xx", name: tag, folder: "xx/", say: (text: string) => text + tag };
  for (const language of [ENGLISH, spoken])
    for (const html of helpPages([evil], language, [ENGLISH, spoken]).values()) {
      const page = readMarkup(html);
      expect(all(page, "img")).toEqual([]);
      expect(textOf(page)).toContain(tag);
    }

  const working = exampleWorking("TIRAGE.SUGAR(50, 24)");
  const source = { text: tag, mark: "read" } as const;
  const section = readMarkup(
    workingSection(
      {
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
      },
      ENGLISH.say,
    ),
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
