/**
 * What is being typed into a cell stays until it is entered or given up. The engine would put the cell's old content
 * back when a calculation ends that changed the cell at this place, on whichever sheet; the next digit would then be
 * added to the old number.
 */
import type { Injector } from "@univerjs/core";
import { IEditorBridgeService } from "@univerjs/preset-sheets-core";

export function keepEntries(injector: Injector): void {
  const editor = injector.get(IEditorBridgeService);
  const showCell = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) showCell();
  };
}
