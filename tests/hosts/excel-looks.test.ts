/**
 * Fonts, fills, borders and alignment as they reach Excel, on the genuine Excel proxies.
 */
import type { PlacedCell } from "../../src/workbook/data";
import { FONT, FONT_SIZE, looks } from "../../src/workbook/styles";
import {
  PLAIN_COLOR,
  planLike,
  sheetOf,
  cell,
  written,
  settings,
  matching,
  cellsIn,
} from "../support/excel-writing";

describe("looks", () => {
  const sheet = planLike("Plan", 400);
  const addressesOf = (style: PlacedCell["style"]) =>
    sheet.cells
      .filter((each) => each.style === style)
      .map(({ row, column }) => `${String.fromCharCode(65 + column)}${row + 1}`);

  test("fills and font traits reach the cells that have them, and no others", async () => {
    const workbook = await written([sheet]);
    const filled = matching(workbook, /\.Fill$/, "Color").filter(
      ({ args }) => args[0] === `#${looks.input.fill}`,
    );
    expect(filled.flatMap(({ on }) => cellsIn(on)).sort()).toEqual(addressesOf("input").sort());
    const bold = matching(workbook, /\.Font$/, "Bold").flatMap(({ on }) => cellsIn(on));
    const styles = ["title", "heading", "columnHead", "total"] as const;
    expect(bold.sort()).toEqual(styles.flatMap(addressesOf).sort());
  });

  test("the plain look is set once", async () => {
    const workbook = await written([sheet]);
    expect(
      matching(workbook, /^GetRange\(\)\.Format\.Font$/).map(({ name, args }) => [name, args[0]]),
    ).toEqual([
      ["Name", FONT],
      ["Size", FONT_SIZE],
      ["Color", PLAIN_COLOR],
    ]);
    expect(
      matching(workbook, /^GetRanges?\(.+\)\.Format\.Font$/, "Color").every(
        ({ args }) => args[0] !== PLAIN_COLOR,
      ),
    ).toBe(true);
  });

  test("each input is boxed: inside lines where inputs touch, none where they do not", async () => {
    const at = (row: number, column: number) => cell(1, { row, column, style: "input" });
    const workbook = await written([
      sheetOf([at(0, 0), at(2, 0), at(3, 0), at(5, 0), at(5, 1), at(7, 0), at(7, 1), at(8, 0), at(8, 1)]),
    ]);
    const edges = new Map<string, string[]>();
    for (const { on } of matching(workbook, /Borders/, "Style")) {
      const [, range, edge] = /^GetRanges?\((.*?)\).*GetItem\((\w+)\)$/.exec(on)!;
      edges.set(range!, [...(edges.get(range!) ?? []), edge!]);
    }
    const outside = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight"];
    expect(Object.fromEntries(edges)).toEqual({
      A1: outside,
      "A3:A4": [...outside, "InsideHorizontal"],
      "A6:B6": [...outside, "InsideVertical"],
      "A8:B9": [...outside, "InsideHorizontal", "InsideVertical"],
    });
  });

  test("what is aligned is aligned", async () => {
    const workbook = await written([sheetOf([cell(1, { style: "key" }), cell(2, { row: 1 })])]);
    const expected = looks.key.align === "right" ? ['GetRange(A1).Format: "Right"'] : [];
    expect(settings(workbook, "HorizontalAlignment")).toEqual(expected);
  });

  test("no address is longer than Excel takes", async () => {
    const alternating = Array.from({ length: 1000 }, (_, row) =>
      cell("x", { row, style: row % 2 ? "note" : "label" }),
    );
    const workbook = await written([sheetOf(alternating)]);
    const italic = matching(workbook, /\.Font$/, "Italic");
    for (const { on } of italic) expect(/\(([^)]*)\)/.exec(on)![1]!.length).toBeLessThanOrEqual(255);
    expect(new Set(italic.flatMap(({ on }) => cellsIn(on))).size).toBe(500);
  });
});
