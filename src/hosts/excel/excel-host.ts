/**
 * Excel as a host.
 */
import type { WorkbookData } from "../../workbook/data";
import type { Host, Progress } from "../host";
import { addSheets } from "./add-sheets";
import { makings } from "./alike";
import { changeCells } from "./change";
import { freezeSheet } from "./freeze";
import { look } from "./look";
import { namedSheets } from "./named-sheets";
import { askOffice, offeredBy, type IsSetSupported } from "./offered";
import { selectedCell, typeFormula, watchSelection } from "./selection";
import { keep, recall } from "./settings";
import { UndoGroups } from "./undo-groups";

export function excelHost(isSetSupported: IsSetSupported = askOffice): Host {
  const adding = new UndoGroups();
  const changing = new UndoGroups();
  const offered = () => offeredBy(isSetSupported);
  return {
    name: "this workbook",
    sheetNames: () => Excel.run(async (context) => (await look(context)).sheetNames),
    write: async ({ sheets }: WorkbookData, progress?: Progress) => {
      const making = makings(sheets, offered().copies);
      const add = (options: Excel.RunOptions) => addSheets(sheets, making, offered(), options, progress);
      // no copy can be undone, whatever it is grouped with
      return making.some(({ kind }) => kind === "copy") ? add({}) : adding.run(offered(), add);
    },
    sheetsNaming: (name) => (offered().names ? namedSheets(name) : Promise.resolve([])),
    change: (changes) => changing.run(offered(), (options) => changeCells(changes, options)),
    watchSelection,
    selectedCell,
    typeFormula,
    keepsNotes: () => offered().notes,
    freeze: (sheet) => freezeSheet(sheet, offered()),
    remove: (sheets) =>
      Excel.run(async (context) => {
        for (const name of sheets) context.workbook.worksheets.getItemOrNullObject(name).delete();
        await context.sync();
      }),
    recall: (key) => (offered().settings ? recall(key) : Promise.resolve(undefined)),
    keep: (key, value) => (offered().settings ? keep(key, value) : Promise.resolve()),
  };
}
