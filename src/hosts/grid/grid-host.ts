/**
 * The in-page spreadsheet as a host.
 */
import type { FUniver } from "@univerjs/core/facade";
import type { WorkbookData } from "../../workbook/data";
import type { Host } from "../host";
import { addSheets } from "./add-sheets";
import type { CallBook } from "./calls";
import { changeCells } from "./change";
import { workbookFromGrid } from "./from-grid";
import { namedSheets } from "./named-sheets";

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

  return {
    name: "this workbook",
    sheetNames: () =>
      promised(() =>
        workbook()
          .getSheets()
          .map((sheet) => sheet.getSheetName()),
      ),
    write: ({ sheets }) => promised(() => addSheets(api, workbook(), sheets)),
    sheetsNaming: (name) => promised(() => namedSheets(api, workbook(), name)),
    change: (changes) => promised(() => changeCells(api, workbook(), changes)),
    ...(calls && { watchSelection: (tell) => calls.watch(api, tell) }),
    read: () => {
      const book = workbook();
      const formulasOf = (id: string) => book.getSheetBySheetId(id)?.getDataRange().getFormulas() ?? [];
      return workbookFromGrid(book.save(), formulasOf);
    },
  };
}

/** What is thrown becomes a rejection. */
const promised = <T>(work: () => T) => new Promise<T>((resolve) => resolve(work()));
