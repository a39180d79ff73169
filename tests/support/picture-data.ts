/**
 * The picture of workbook data: of what a host has read, or of what it was given.
 */
import { areaAddress, cellAddress, type SheetData, type Validation } from "../../src/workbook/data";
import { highlightLooks } from "../../src/workbook/styles";
import { absolute, blockText, ruleText, sorted, type Picture, type SheetPicture } from "./picture";

export const pictureOfData = (sheets: readonly SheetData[], active: string | null): Picture => ({
  sheets: sheets.map(pictureOfSheet),
  active,
});

function pictureOfSheet(sheet: SheetData): SheetPicture {
  const { cells, merges, tables, charts, landscape, pagesTall, printArea } = sheet;
  const at = ({ row, column }: { row: number; column: number }) => cellAddress(row, column);
  const filled = cells.filter(
    ({ value, formula }) => formula !== undefined || (value !== null && value !== ""),
  );
  const highlights = new Map<string, string[]>();
  for (const { word, look, cells: lit } of sheet.highlights) {
    for (const cell of lit) {
      highlights.set(at(cell), [
        ...(highlights.get(at(cell)) ?? []),
        `${word} #${highlightLooks[look].fill}`,
      ]);
    }
  }
  return {
    name: sheet.name,
    contents: sorted(
      filled.map((cell) => [at(cell), cell.formula === undefined ? cell.value : `=${cell.formula}`]),
    ),
    formats: sorted(
      cells.flatMap((cell) =>
        cell.format === undefined || cell.format === "General" ? [] : [[at(cell), cell.format] as const],
      ),
    ),
    names: sorted(sheet.names.map(({ name, row, column }) => [name, absolute(row, column)])),
    merges: merges
      .filter(({ column, lastColumn }) => lastColumn > column)
      .map(({ row, column, lastColumn, lastRow = row }) => blockText({ row, column, lastRow, lastColumn }))
      .sort(),
    columnWidths: sheet.columnWidths,
    rowHeights: Object.fromEntries(
      [...sheet.rowHeights].map(([row, height]) => [row + 1, Math.round(height * 100) / 100]),
    ),
    frozen: { rows: sheet.frozenRows, columns: sheet.frozenColumns },
    gridlines: sheet.gridlines,
    rules: sorted(
      sheet.validations.map((rule) => [at(rule), ruleText(rule.kind, boundsOf(rule, sheet.name), rule)]),
    ),
    highlights: sorted([...highlights].map(([address, words]) => [address, words.sort()])),
    charts: charts.map(({ kind, title, series, place }) => ({
      kind,
      title,
      series: series.length,
      place: blockText(place),
    })),
    notes: sorted(cells.flatMap((cell) => (cell.note === undefined ? [] : [[at(cell), cell.note] as const]))),
    tables: tables.map(({ area }) => blockText(area)),
    page: { landscape, tall: pagesTall, area: printArea ? blockText(printArea) : "" },
  };
}

function boundsOf(rule: Validation, own: string): (string | number)[] {
  if (rule.kind === "list") return rule.from ? [`=${areaAddress(rule.from, own)}`] : [rule.options.join(",")];
  return rule.kind === "textLength" ? [rule.max] : [rule.min, rule.max];
}
