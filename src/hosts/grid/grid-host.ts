/**
 * The in-page spreadsheet as a host.
 */
import type { FUniver } from "@univerjs/core/facade";
import type { WorkbookData } from "../../workbook/data";
import type { Host } from "../host";
import { addSheets } from "./add-sheets";
import { filledRange, injectorOf } from "./book";
import type { CallBook } from "./calls";
import { changeCells } from "./change";
import { refuseCircles } from "./refuse-circles";
import { freezeSheet } from "./freeze";
import { workbookFromGrid } from "./from-grid";
import { namedSheets } from "./named-sheets";
import { selectedCell, typeFormula } from "./selection";

export interface GridHost extends Host {
  /** Everything in the grid as it stands now, the user's own changes included. */
  read(): WorkbookData;
}

export function gridHost(api: FUniver, calls?: CallBook): GridHost {
  refuseCircles(injectorOf(api));
  const workbook = () => {
    const active = api.getActiveWorkbook();
    if (!active) throw new Error("The spreadsheet has no workbook open; reload the page.");
    return active;
  };

  // the grid's workbook lives as long as the page
  const settings = new Map<string, string>();

  return {
    name: "this workbook",
    sheetNames: () =>
      promised(() =>
        workbook()
          .getSheets()
          .map((sheet) => sheet.getSheetName()),
      ),
    write: ({ sheets }, progress) =>
      promised(() => {
        progress?.signal.throwIfAborted();
        addSheets(api, workbook(), sheets);
        progress?.tell(sheets.length, sheets.length);
        return [];
      }),
    sheetsNaming: (name) => promised(() => namedSheets(api, workbook(), name)),
    change: (changes) => promised(() => changeCells(api, workbook(), changes)),
    ...(calls && { watchSelection: (tell) => calls.watch(api, tell) }),
    selectedCell: () => promised(() => selectedCell(workbook())),
    typeFormula: (cell, formula) => promised(() => typeFormula(api, workbook(), cell, formula)),
    keepsNotes: () => true,
    freeze: (sheet) => promised(() => freezeSheet(api, workbook(), sheet)),
    remove: (sheets) =>
      promised(() => {
        const book = workbook();
        for (const name of sheets) {
          const sheet = book.getSheetByName(name);
          if (sheet) book.deleteSheet(sheet);
        }
      }),
    recall: (key) => Promise.resolve(settings.get(key)),
    keep: (key, value) => promised(() => void settings.set(key, value)),
    read: () => {
      const book = workbook();
      const formulasOf = (id: string) => {
        const sheet = book.getSheetBySheetId(id);
        return sheet ? filledRange(sheet).getFormulas() : [];
      };
      return workbookFromGrid(book.save(), formulasOf);
    },
  };
}

/** What is thrown becomes a rejection. */
const promised = <T>(work: () => T) => new Promise<T>((resolve) => resolve(work()));
