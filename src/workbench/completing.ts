/**
 * Tab and Enter while the list of functions is open under a cell. The engine makes its list 300 ms after the last key
 * and would put in the list's first name even where more has been typed since: another function than the one typed.
 * Here what stands before the cursor decides, and the name is in before the next key.
 */
import {
  CommandType,
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY,
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type DocumentDataModel,
  type IAccessor,
  type Injector,
} from "@univerjs/core";
import {
  DeviceInputEventType,
  DocSelectionManagerService,
  FunctionType,
  IDescriptionService,
  IEditorBridgeService,
  InsertCommand,
  IShortcutService,
  KeyCode,
  SetCellEditVisibleOperation,
} from "@univerjs/preset-sheets-core";
import { completionOf, wordBefore } from "./completion";

const COMPLETE = "mousse.complete-name";
/** Above the engine's own for its list, 1000. */
const PRIORITY = 2000;
const EDITORS = [DOCS_NORMAL_EDITOR_UNIT_ID_KEY, DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY];
const LIST = "ul[data-u-comp='sheets-formula-editor']";
/** The engine tells the picked line from the others by its colour only. */
const PICKED = `${LIST} li.univer-bg-gray-200 span`;

/** What is edited, if it is a cell, and where the cursor is. */
function edited(accessor: IAccessor) {
  const doc = accessor
    .get(IUniverInstanceService)
    .getCurrentUnitOfType<DocumentDataModel>(UniverInstanceType.UNIVER_DOC);
  const range = accessor.get(DocSelectionManagerService).getActiveTextRange();
  if (!doc || !EDITORS.includes(doc.getUnitId()) || !range?.collapsed) return undefined;
  return { unitId: doc.getUnitId(), text: doc.getBody()?.dataStream ?? "", cursor: range.endOffset };
}

/** Puts the name in, or, where none is begun or none is left to complete, leaves the cell as the key does. */
function complete(accessor: IAccessor, key?: { readonly keycode: KeyCode }): boolean {
  const commands = accessor.get(ICommandService);
  const cell = edited(accessor);
  if (!cell || !key) return false;
  const { unitId, text, cursor } = cell;
  const word = wordBefore(text.slice(0, cursor));
  const found = completionOf(
    word,
    document.querySelector(PICKED)?.textContent ?? "",
    accessor.get(IDescriptionService).getSearchListByNameFirstLetter(word),
  );
  const called = found && found.functionType !== FunctionType.DefinedName && text[cursor] !== "(";
  const name = found && found.name + (called ? "(" : "");
  closeList(commands, unitId);
  if (name === undefined || name.toUpperCase() === word.toUpperCase()) {
    accessor.get(IEditorBridgeService).disableForceKeepVisible();
    return commands.syncExecuteCommand(SetCellEditVisibleOperation.id, {
      visible: false,
      eventType: DeviceInputEventType.Keyboard,
      keycode: key.keycode,
    });
  }
  void commands.executeCommand(InsertCommand.id, {
    unitId,
    segmentId: "",
    body: { dataStream: name },
    range: { startOffset: cursor - word.length, endOffset: cursor, collapsed: false },
  });
  return true;
}

/** As Esc does while the list is open; the cell is still edited. */
function closeList(commands: ICommandService, unitId: string): void {
  commands.syncExecuteCommand(`sheet.formula-embedding-editor.search_function.${unitId}`, {
    keyCode: KeyCode.ESC,
  });
}

export function completeNames(injector: Injector): void {
  injector
    .get(ICommandService)
    .registerCommand({ id: COMPLETE, type: CommandType.OPERATION, handler: complete });
  const listed = () =>
    document.querySelector(LIST) !== null && injector.invoke((accessor) => edited(accessor) !== undefined);
  for (const keycode of [KeyCode.TAB, KeyCode.ENTER])
    injector.get(IShortcutService).registerShortcut({
      id: COMPLETE,
      binding: keycode,
      priority: PRIORITY,
      preconditions: listed,
      staticParameters: { keycode },
    });
}
