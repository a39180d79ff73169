/**
 * The in-page spreadsheet as a host.
 */
import type { FUniver } from "@univerjs/core/facade";
import type { WorkbookData } from "../../workbook/data";
import { cellAddress, quotedSheet } from "../../workbook/data";
import type { Host } from "../host";
import type { CallBook } from "./calls";
import { workbookFromGrid } from "./from-grid";
import { worksheetData } from "./to-grid";
import { ruleToGrid } from "./validation";

const ADD_RULE = "data-validation.mutation.addRule";
const SET_NAME = "formula.mutation.set-defined-name";

export interface GridHost extends Host {
  /** Everything in the grid as it stands now, the user's own changes included. */
  read(): WorkbookData;
}

export function gridHost(api: FUniver, calls?: CallBook): GridHost {
  const workbook = () => {
    const active = api.getActiveWorkbook();
    if (!active) throw new Error("The spreadsheet has no workbook open; reload the page.");
    return active;
  };
  const names = () =>
    workbook()
      .getSheets()
      .map((sheet) => sheet.getSheetName());

  return {
    name: "this workbook",
    sheetNames: () => Promise.resolve(names()),
    write: async ({ sheets }) => {
      const taken = new Set(names().map((name) => name.toLowerCase()));
      for (const { name } of sheets) {
        if (taken.has(name.toLowerCase()))
          throw new Error(
            `There is already a sheet named "${name}"; rename it or give the batch another name.`,
          );
      }
      const book = workbook();
      const added: string[] = [];
      try {
        for (const sheet of sheets) {
          const id = freeId(book.getSheets().map((each) => each.getSheetId()));
          book.insertSheet(sheet.name, { index: book.getSheets().length, sheet: worksheetData(sheet, id) });
          added.push(id);
          for (const { name, row, column } of sheet.names) {
            await api.executeCommand(SET_NAME, {
              unitId: book.getId(),
              id: `${id}_${name}`,
              name,
              localSheetId: id,
              formulaOrRefString: `${quotedSheet(sheet.name)}!${absolute(row, column)}`,
            });
          }
          const rules = sheet.validations.map((rule, index) => ruleToGrid(rule, `${id}_${index}`));
          await api.executeCommand(ADD_RULE, { unitId: book.getId(), subUnitId: id, rule: rules });
        }
      } catch (error) {
        for (const id of added) book.deleteSheet(id);
        throw error;
      }
      if (added[0] !== undefined) book.setActiveSheet(added[0]);
      // cached results would stand until something changes; the grid is to show its own
      api.getFormula().executeCalculation();
    },
    ...(calls && { watchSelection: (tell) => calls.watch(api, tell) }),
    read: () => {
      const book = workbook();
      const formulasOf = (id: string) => book.getSheetBySheetId(id)?.getDataRange().getFormulas() ?? [];
      return workbookFromGrid(book.save(), formulasOf);
    },
  };
}

const absolute = (row: number, column: number) =>
  cellAddress(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

function freeId(taken: readonly string[]): string {
  for (let count = 1; ; count++) {
    const id = `sheet-${count}`;
    if (!taken.includes(id)) return id;
  }
}
