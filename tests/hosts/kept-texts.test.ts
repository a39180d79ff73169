/**
 * Which texts a file and the grid keep as texts when their cells are entered again.
 */
import { numfmt } from "@univerjs/core";
import fc from "fast-check";
import { textKind } from "../../src/hosts/grid/text-kind";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { cell, sheetOf } from "../support/excel-writing";
import { HOSTILE_TEXTS, always } from "../support/fuzz";
import { packageParts } from "../support/ooxml";

const PLAIN = ["Oxlip Hill Brut", "hL", "Été"];

/** Of each cell of the first column, whether the file says that its text stays text (ECMA-376 part 1, 18.8.45). */
async function keptInFile(texts: readonly string[]): Promise<boolean[]> {
  const cells = texts.map((text, row) => cell(text, { row, style: "input" }));
  const parts = packageParts(await writeWorkbookFile({ sheets: [sheetOf(cells)] }));
  const looks = /<cellXfs[^>]*>(.*)<\/cellXfs>/s.exec(parts.get("xl/styles.xml")!)![1]!.match(/<xf [^>]*>/g)!;
  const sheet = parts.get("xl/worksheets/sheet1.xml")!;
  return texts.map((_, row) => {
    const look = new RegExp(`<c r="A${row + 1}"[^>]* s="(\\d+)"`).exec(sheet)!;
    return looks[Number(look[1])]!.includes('quotePrefix="1"');
  });
}

describe("in a file", () => {
  test("a text that Excel would read as something else", async () => {
    const words = /^(?!true)\p{L}\P{N}*$/iu;
    const texts = HOSTILE_TEXTS.filter((text) => !words.test(text));
    expect(texts).toContain("TRUE");
    expect(texts.length).toBeGreaterThan(20);
    expect(await keptInFile(texts)).toEqual(texts.map(() => true));
  });
  test("words, and what is no text", async () => {
    expect(await keptInFile(PLAIN)).toEqual([false, false, false]);
    const file = await writeWorkbookFile({
      sheets: [sheetOf([cell(12.5), cell("=x", { row: 1, formula: '"="&"x"' })])],
    });
    expect(packageParts(file).get("xl/styles.xml")).not.toContain("quotePrefix");
  });
});

describe("in the grid", () => {
  const KEPT = 4;
  test("words are not marked", () => {
    for (const text of [...PLAIN, "Oxlip Hill Brut 2025", "OH-25-01", "Marsanne 2025", "Sunset 2025"])
      expect([text, textKind(text)]).toEqual([text, 1]);
  });
  // numfmt is what the engine reads entries with
  test("what is not marked is read as text", () => {
    const pieces = fc.array(
      fc.oneof(
        fc.constantFrom(
          "Jan",
          "march",
          "SEPT",
          "Mon",
          "am",
          "pm",
          "E",
          "true",
          "false",
          "R$",
          "kr",
          "EUR",
          "inf",
        ),
        fc.constantFrom(" ", "-", "/", ".", ",", ":", "%", "$", "€", "(", ")", "+", "="),
        fc.integer({ min: 0, max: 2100 }).map(String),
        fc.string({ maxLength: 3 }),
      ),
      { minLength: 1, maxLength: 6 },
    );
    const day = fc.constantFrom("3", "03", "28");
    const month = fc.constantFrom("3", "mar", "March", "SEPT", "may", "December");
    const year = fc.constantFrom("2025", "25", "");
    const weekday = fc.constantFrom("", "Mon", "TUE", "wednesday", "Thurs", "Fri", "Saturday", "sun");
    const between = fc.constantFrom(" ", "-", "/", ".", ", ");
    const dates = fc
      .tuple(weekday, between, day, between, month, between, year, fc.constantFrom(0, 1, 2))
      .map(([name, after, dayOf, first, monthOf, second, yearOf, order]) => {
        const parts = [
          [dayOf, first, monthOf, second, yearOf],
          [monthOf, first, dayOf, second, yearOf],
          [yearOf, first, monthOf, second, dayOf],
        ][order]!.join("");
        return name === "" ? parts : name + after + parts;
      });
    always(
      fc.oneof(
        fc.constantFrom(...HOSTILE_TEXTS, "Infinity", "Infinity ", "TRUE ", "false"),
        pieces.map((parts) => parts.join("")),
        dates,
      ),
      (text) => {
        if (textKind(text) === KEPT || text === "") return;
        const isNumber = text.trim() !== "" && !Number.isNaN(Number(text));
        expect([text, text.startsWith("="), numfmt.parseValue(text), isNumber]).toEqual([
          text,
          false,
          null,
          false,
        ]);
        expect(text).not.toMatch(/^(true|false)$/i);
      },
      20,
    );
  });
});
