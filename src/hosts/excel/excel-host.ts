/**
 * Excel as a host.
 */
import type { WorkbookData } from "../../workbook/data";
import type { Host } from "../host";
import { addSheets } from "./add-sheets";
import { makings } from "./alike";
import { changeCells } from "./change";
import { look } from "./look";
import { namedSheets } from "./named-sheets";
import { askOffice, offeredBy, type IsSetSupported } from "./offered";
import { UndoGroups } from "./undo-groups";

export function excelHost(isSetSupported: IsSetSupported = askOffice): Host {
  const adding = new UndoGroups();
  const changing = new UndoGroups();
  return {
    name: "this workbook",
    sheetNames: () => Excel.run(async (context) => (await look(context)).sheetNames),
    write: async ({ sheets }: WorkbookData) => {
      const offered = offeredBy(isSetSupported);
      const making = makings(sheets, offered.copies);
      const add = (options: Excel.RunOptions) => addSheets(sheets, making, offered, options);
      // no copy can be undone, whatever it is grouped with
      return making.some(({ kind }) => kind === "copy") ? add({}) : adding.run(offered, add);
    },
    sheetsNaming: (name) => (offeredBy(isSetSupported).names ? namedSheets(name) : Promise.resolve([])),
    change: (changes) => changing.run(offeredBy(isSetSupported), (options) => changeCells(changes, options)),
  };
}
