/**
 * Sheets in another language: what is read as words is translated, the words that formulas compare along with the
 * cells that hold them. Words that functions take or give stay, as functions know them in no other language.
 */
import type { SheetLanguage } from "../words/sheet-language";
import type { Translate } from "../words/translate";
import { quotedSheet, type ChartData, type PlacedCell, type SheetData, type Validation } from "./data";
import { NOTES_LANGUAGE } from "./notes/names";
import { PLAN_LANGUAGE, PLAN_MARK } from "./plan/read";
import { sheetWords } from "./sheet-words";
import { freeName } from "./sheet-names";

interface There {
  /** Names of sheets that are there already. */
  readonly taken?: readonly string[];
  /** Texts that are somebody's own, wherever they stand. */
  readonly typed: readonly string[];
}

export function translatedSheets(
  sheets: readonly SheetData[],
  language: SheetLanguage,
  { taken = [], typed }: There,
): SheetData[] {
  const say = sheetWords(language, typed);
  const names = renamed(sheets, say, taken);
  const formula = (text: string) => translatedFormula(text, say, names);
  return sheets.map((sheet) => {
    const lists = new Set(
      sheet.validations.filter(({ kind }) => kind === "list").map(({ row, column }) => `${row} ${column}`),
    );
    const isPlan = sheet.names.some(({ name }) => name === PLAN_MARK);
    const mark = sheet.names.find(({ name }) => name === NOTES_LANGUAGE || name === PLAN_LANGUAGE);
    return {
      ...sheet,
      name: names.get(sheet.name)!,
      cells: sheet.cells.map((cell) => {
        if (cell.row === mark?.row && cell.column === mark.column) return { ...cell, value: language.code };
        return translatedCell(cell, say, formula, !isPlan || lists.has(`${cell.row} ${cell.column}`));
      }),
      validations: sheet.validations.map((rule) => translatedRule(rule, say, names)),
      highlights: sheet.highlights.map((each) => ({ ...each, word: say(each.word) })),
      charts: sheet.charts.map((chart) => translatedChart(chart, say, names)),
    };
  });
}

/** Plan · Brut keeps the batch's name; only the kind of sheet before it is a word of ours. */
function renamed(
  sheets: readonly SheetData[],
  say: Translate,
  taken: readonly string[],
): Map<string, string> {
  const all = [...taken];
  return new Map(
    sheets.map(({ name }) => {
      const [kind = "", ...batch] = name.split(" · ");
      const plain = [say(kind), ...batch].join(" · ");
      const free = plain === name ? name : freeName(plain, all);
      all.push(free);
      return [name, free] as const;
    }),
  );
}

/** `filledByUs`: an input cell of which the words are ours, though they can be typed over. */
function translatedCell(
  cell: PlacedCell,
  say: Translate,
  formula: Translate,
  filledByUs: boolean,
): PlacedCell {
  const { value, style } = cell;
  // what somebody typed into the form is theirs, unless it is a word that they chose from ours
  const isOurs = cell.formula !== undefined || style !== "input" || filledByUs;
  return {
    ...cell,
    ...(typeof value === "string" && isOurs && { value: say(value) }),
    ...(cell.formula !== undefined && { formula: formula(cell.formula) }),
    ...(cell.note?.startsWith("=") && { note: `=${formula(cell.note.slice(1))}` }),
  };
}

/** String literals, quoted sheet names, brackets with the name before them. */
const PIECES = /"(?:[^"]|"")*"|'(?:[^']|'')*'(?=!)|[A-Z][A-Z0-9.]*\(|[()]/giu;

/** Literals but those that one of our functions is given outright. */
function translatedFormula(text: string, say: Translate, names: ReadonlyMap<string, string>): string {
  const calls: string[] = [];
  return text.replace(PIECES, (piece) => {
    if (piece.endsWith("(")) calls.push(piece);
    else if (piece === ")") calls.pop();
    else if (piece.startsWith("'")) {
      const name = names.get(piece.slice(1, -1).replaceAll("''", "'"));
      return name === undefined ? piece : quotedSheet(name);
    } else if (piece.startsWith('"') && !calls.at(-1)?.toUpperCase().startsWith("MOUSSE.")) {
      return `"${say(piece.slice(1, -1).replaceAll('""', '"')).replaceAll('"', '""')}"`;
    }
    return piece;
  });
}

function translatedRule(rule: Validation, say: Translate, names: ReadonlyMap<string, string>): Validation {
  const words = { title: say(rule.title), message: say(rule.message) };
  if (rule.kind !== "list") return { ...rule, ...words };
  const { from } = rule;
  return {
    ...rule,
    ...words,
    options: rule.options.map(say),
    ...(from?.sheet !== undefined && { from: { ...from, sheet: names.get(from.sheet) ?? from.sheet } }),
  };
}

function translatedChart(chart: ChartData, say: Translate, names: ReadonlyMap<string, string>): ChartData {
  const there = <Where extends { readonly sheet?: string }>(area: Where): Where =>
    area.sheet === undefined ? area : { ...area, sheet: names.get(area.sheet) ?? area.sheet };
  return {
    ...chart,
    title: say(chart.title),
    description: say(chart.description),
    categories: there(chart.categories),
    series: chart.series.map((each) => ({ ...each, title: say(each.title), values: there(each.values) })),
    horizontal: { ...chart.horizontal, title: say(chart.horizontal.title) },
    vertical: { ...chart.vertical, title: say(chart.vertical.title) },
  };
}
