/**
 * What each cell of the grid last called, so that a selected cell can be explained.
 */
import type { FUniver } from "@univerjs/core/facade";
import { ErrorType } from "@univerjs/engine-formula";
import { cellAddress } from "../../workbook/data";
import type { CellCalls } from "../host";
import { NAMESPACE, type Called } from "./functions";

/** The grid's own name for a change of selection, however it came about. */
const SELECTED = "sheet.operation.set-selections";
const ERROR = /^#(VALUE!|N\/A)$/;

export class CallBook {
  readonly #cells = new Map<string, Map<string, readonly unknown[]>>();

  /** To be told of each call. */
  readonly note: Called = (sheetId, row, column, id, args) => {
    const place = `${sheetId} ${row} ${column}`;
    const calls = this.#cells.get(place) ?? new Map<string, readonly unknown[]>();
    this.#cells.set(place, calls.set(id, args));
  };

  /** Tells of each cell that is selected, by mouse, by keys or by its address, and again when it calculates otherwise. */
  watch(api: FUniver, tell: (cell: CellCalls) => void): void {
    let told = "";
    const look = (selected: boolean) => {
      const cell = this.#selected(api);
      const now = JSON.stringify(cell);
      if (!cell || (!selected && now === told)) return;
      told = now;
      tell(cell);
    };
    api.addEvent(api.Event.CommandExecuted, ({ id }) => {
      if (id === SELECTED) look(true);
    });
    // a large sheet may still have been calculating when the cell was selected
    api.getFormula().calculationResultApplied(() => look(false));
  }

  #selected(api: FUniver): CellCalls | undefined {
    const worksheet = api.getActiveWorkbook()?.getActiveSheet();
    const cell = worksheet?.getActiveRange();
    if (!worksheet || !cell) return undefined;
    const [row, column] = [cell.getRow(), cell.getColumn()];
    const formula = cell.getFormula();
    // calls of a formula that stood there before are not this one's
    const calls = [...(this.#cells.get(`${worksheet.getSheetId()} ${row} ${column}`) ?? [])]
      .filter(([call]) => formula.includes(`${NAMESPACE}.${call}(`))
      .map(([call, args]) => ({ id: call, args }));
    const shown = cell.getRawValue();
    return {
      address: cellAddress(row, column),
      calls,
      failed: typeof shown === "string" && ERROR.test(shown),
      ...(formula !== "" && shown === ErrorType.CYCLE && { circular: true }),
    };
  }
}
