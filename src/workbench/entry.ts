/**
 * What is typed into cells: where the engine would lose or refuse it.
 */
import type { Injector } from "@univerjs/core";
import { IEditorBridgeService, SheetInterceptorService, VALIDATE_CELL } from "@univerjs/preset-sheets-core";

/** Before the engine's own checks, 0. */
const PRIORITY = 100;

/**
 * What is being typed stays until it is entered or given up. The engine would put the cell's old content back when a
 * calculation ends that changed the cell at this place, on whichever sheet; the next digit would then be added to the
 * old number.
 */
function keepTyped(injector: Injector): void {
  const editor = injector.get(IEditorBridgeService);
  const showCell = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) showCell();
  };
}

/**
 * A formula is taken where a number is asked for, as in Excel: it has no value yet when the engine would check it, and
 * a result out of range is told by the plan.
 */
function takeFormulas(injector: Injector): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(VALIDATE_CELL, {
    priority: PRIORITY,
    handler: (valid, { worksheet, row, col }, next) =>
      worksheet.getCellRaw(row, col)?.f ? Promise.resolve(true) : next(valid)!,
  });
}

export function guardEntries(injector: Injector): void {
  keepTyped(injector);
  takeFormulas(injector);
}
