/**
 * New sheets in the grid, with their names and rules, as one step to undo.
 */
import { mergeWorksheetSnapshotWithDefault } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { cellAddress, quotedSheet, type SheetData } from "../../workbook/data";
import type { Book } from "./book";
import { highlightToGrid } from "./highlights";
import { settingNames } from "./names";
import { worksheetData } from "./to-grid";
import { inOneStep, type Do } from "./undo-step";
import { ruleToGrid } from "./validation";

const INSERT_SHEET = "sheet.mutation.insert-sheet";
const REMOVE_SHEET = "sheet.mutation.remove-sheet";
const ADD_RULE = "data-validation.mutation.addRule";
const REMOVE_RULE = "data-validation.mutation.removeRule";
const ADD_HIGHLIGHT = "sheet.mutation.add-conditional-rule";
const REMOVE_HIGHLIGHT = "sheet.mutation.delete-conditional-rule";

export function addSheets(api: FUniver, book: Book, sheets: readonly SheetData[]): void {
  refuseTaken(sheets, book);
  const added: string[] = [];
  let front = 0;
  inOneStep(api, book.getId(), (doIt) => {
    for (const sheet of sheets) {
      const all = book.getSheets();
      const id = freeId(all.map((each) => each.getSheetId()));
      addSheet(api, doIt, book.getId(), sheet, id, sheet.first ? front++ : all.length);
      added.push(id);
    }
  });
  if (added[0] !== undefined) book.setActiveSheet(added[0]);
  // cached results would stand until something changes; the grid is to show its own
  api.getFormula().executeCalculation();
}

function addSheet(api: FUniver, doIt: Do, unitId: string, data: SheetData, id: string, index: number): void {
  const sheet = mergeWorksheetSnapshotWithDefault(worksheetData(data, id));
  doIt(
    { id: INSERT_SHEET, params: { unitId, index, sheet } },
    { id: REMOVE_SHEET, params: { unitId, subUnitId: id, subUnitName: data.name } },
  );
  const names = data.names.map(({ name, row, column }) => ({
    id: `${id}_${name}`,
    name,
    localSheetId: id,
    formulaOrRefString: `${quotedSheet(data.name)}!${absolute(row, column)}`,
  }));
  doIt(...settingNames(api, { unitId, names }));
  const rule = data.validations.map((each, count) => ruleToGrid(each, `${id}_${count}`));
  doIt(
    { id: ADD_RULE, params: { unitId, subUnitId: id, rule } },
    { id: REMOVE_RULE, params: { unitId, subUnitId: id, ruleId: rule.map(({ uid }) => uid) } },
  );
  data.highlights.forEach((each, count) => {
    const own = { unitId, subUnitId: id };
    const rule = highlightToGrid(each, `${id}_highlight_${count}`);
    doIt(
      { id: ADD_HIGHLIGHT, params: { ...own, rule } },
      { id: REMOVE_HIGHLIGHT, params: { ...own, cfId: rule.cfId } },
    );
  });
}

function refuseTaken(sheets: readonly SheetData[], book: Book): void {
  const taken = new Set(book.getSheets().map((sheet) => sheet.getSheetName().toLowerCase()));
  for (const { name } of sheets) {
    if (taken.has(name.toLowerCase())) {
      throw new Error(
        `There is already a sheet named "${name}"; nothing was written. ` +
          "Rename that sheet, or give the batch another name.",
      );
    }
    taken.add(name.toLowerCase());
  }
}

const absolute = (row: number, column: number) =>
  cellAddress(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

function freeId(taken: readonly string[]): string {
  for (let count = 1; ; count++) {
    const id = `sheet-${count}`;
    if (!taken.includes(id)) return id;
  }
}
