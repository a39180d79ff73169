/**
 * What each cell of the grid last called, so that a selected cell can be explained.
 */
import type { FUniver } from "@univerjs/core/facade";
import { cellAddress } from "../../workbook/data";
import type { CellCalls } from "../host";
import { NAMESPACE, type Called } from "./functions";

const ERROR = /^#(VALUE!|N\/A)$/;

export class CallBook {
  readonly #cells = new Map<string, Map<string, readonly unknown[]>>();

  /** To be told of each call. */
  readonly note: Called = (sheetId, row, column, id, args) => {
    const place = `${sheetId} ${row} ${column}`;
    const calls = this.#cells.get(place) ?? new Map<string, readonly unknown[]>();
    this.#cells.set(place, calls.set(id, args));
  };

  /** Tells of each cell that is selected. */
  watch(api: FUniver, tell: (cell: CellCalls) => void): void {
    api.addEvent(api.Event.SelectionChanged, ({ worksheet, selections }) => {
      const [first] = selections;
      if (!first) return;
      const { startRow: row, startColumn: column } = first;
      const cell = worksheet.getRange(row, column);
      const formula = cell.getFormula();
      // calls of a formula that stood there before are not this one's
      const calls = [...(this.#cells.get(`${worksheet.getSheetId()} ${row} ${column}`) ?? [])]
        .filter(([id]) => formula.includes(`${NAMESPACE}.${id}(`))
        .map(([id, args]) => ({ id, args }));
      const shown = cell.getRawValue();
      tell({
        address: cellAddress(row, column),
        calls,
        failed: typeof shown === "string" && ERROR.test(shown),
      });
    });
  }
}
