/**
 * The words that stand in written sheets: in cells, as literals of formulas, in rules, choices and charts. What somebody
 * typed is not among them.
 */
import type { SheetData } from "../../src/workbook/data";

export function sheetTexts(sheets: readonly SheetData[]): Set<string> {
  const found = new Set<string>();
  const add = (text: unknown) => {
    if (typeof text === "string" && /\p{L}/u.test(text)) found.add(text.trim());
  };
  for (const { cells, validations, charts } of sheets) {
    for (const { value, formula, style } of cells) {
      if (formula !== undefined) literalsOf(formula).forEach(add);
      else if (style !== "input") add(value);
    }
    for (const rule of validations) {
      [rule.title, rule.message, ...(rule.kind === "list" ? rule.options : [])].forEach(add);
    }
    for (const { title, description, series, horizontal, vertical } of charts) {
      [title, description, horizontal.title, vertical.title, ...series.map((each) => each.title)].forEach(
        add,
      );
    }
  }
  return found;
}

/** But those that one of our functions is given outright. */
function literalsOf(formula: string): string[] {
  const calls: string[] = [];
  const literals: string[] = [];
  for (const [piece] of formula.matchAll(/"(?:[^"]|"")*"|'(?:[^']|'')*'|[A-Z][A-Z0-9.]*\(|[()]/giu)) {
    if (piece.endsWith("(")) calls.push(piece);
    else if (piece === ")") calls.pop();
    else if (piece.startsWith('"') && !calls.at(-1)?.startsWith("MOUSSE.")) {
      literals.push(piece.slice(1, -1).replaceAll('""', '"'));
    }
  }
  return literals;
}
