/**
 * Tab and Enter while the list of functions is open under a cell. The engine makes its list 300 ms after the last key
 * and would put in the list's first name even where more has been typed since: another function than the one typed.
 * Here the word at the cursor decides, and the name is in before the next key.
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
  type ICommandInfo,
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
  LexerTreeBuilder,
  RichTextEditingMutation,
  sequenceNodeType,
  SetCellEditVisibleOperation,
} from "@univerjs/preset-sheets-core";
import { completionOf, wordAt, type Word } from "./completion";

const COMPLETE = "mousse.complete-name";
/** Above the engine's own for its list, 1000. */
const PRIORITY = 2000;
const EDITORS = [DOCS_NORMAL_EDITOR_UNIT_ID_KEY, DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY];
const LIST = "ul[data-u-comp='sheets-formula-editor']";
/** The line that stands out; the engine tells it from the others by its colour only. */
const LINE = "li.univer-bg-gray-200";
const ARROWS = [KeyCode.ARROW_UP, KeyCode.ARROW_DOWN];
/** Kinds of names, and functions that are values without it, which no bracket follows. */
const NOT_CALLED = [FunctionType.DefinedName, FunctionType.Table];
const VALUES = ["TRUE", "FALSE"];

const listOf = (unitId: string) => `sheet.formula-embedding-editor.search_function.${unitId}`;

/** The text of the cell that is edited; undefined if none is. */
function editedCell(accessor: IAccessor): DocumentDataModel | undefined {
  const instances = accessor.get(IUniverInstanceService);
  const text = instances.getCurrentUnitOfType<DocumentDataModel>(UniverInstanceType.UNIVER_DOC);
  return text && EDITORS.includes(text.getUnitId()) ? text : undefined;
}

/** The name at the cursor, counted from the formula's equals sign; undefined if there is none, or text is selected. */
function wordAtCursor(accessor: IAccessor, text: string): Word | undefined {
  const range = accessor.get(DocSelectionManagerService).getActiveTextRange();
  if (!range?.collapsed || !text.startsWith("=")) return undefined;
  const nodes = accessor.get(LexerTreeBuilder).sequenceNodesBuilder(text.slice(1)) ?? [];
  const pieces = nodes.map((node) =>
    typeof node === "string"
      ? { text: node, name: false }
      : { text: node.token, name: node.nodeType === sequenceNodeType.FUNCTION },
  );
  return wordAt([{ text: "=", name: false }, ...pieces], range.endOffset);
}

/** Whether the line that stands out was picked with an arrow key after the last change of what is typed. */
let picked = false;

function notePicking({ id, params }: Readonly<ICommandInfo>): void {
  if (id === RichTextEditingMutation.id) picked = false;
  else if (EDITORS.some((unitId) => id === listOf(unitId)))
    picked ||= ARROWS.includes((params as { keyCode: KeyCode }).keyCode);
}

/** What stands in a word's place when it is completed; undefined if nothing is left to complete. */
function completed(accessor: IAccessor, word: Word, next: string | undefined): string | undefined {
  const line = document.querySelector(LIST)?.querySelector(LINE)?.querySelector("span")?.textContent;
  const known = accessor.get(IDescriptionService).getSearchListByNameFirstLetter(word.text);
  const found = completionOf(word.text, line ? { name: line, picked } : undefined, known);
  if (!found) return undefined;
  const bare = NOT_CALLED.includes(found.functionType) || VALUES.includes(found.name) || next === "(";
  const name = bare ? found.name : `${found.name}(`;
  return name.toUpperCase() === word.text.toUpperCase() ? undefined : name;
}

/** Puts the name in, or, where nothing is left to complete, leaves the cell as the key does without a list. */
function complete(accessor: IAccessor, key?: { readonly keycode: KeyCode }): boolean {
  const commands = accessor.get(ICommandService);
  const cell = editedCell(accessor);
  if (!cell || !key) return false;
  const unitId = cell.getUnitId();
  const text = (cell.getBody()?.dataStream ?? "").trimEnd();
  const word = wordAtCursor(accessor, text);
  const name = word && completed(accessor, word, text[word.to]);
  // as Esc does; the cell is still edited
  commands.syncExecuteCommand(listOf(unitId), { keyCode: KeyCode.ESC });
  if (!word || name === undefined) {
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
    range: { startOffset: word.from, endOffset: word.to, collapsed: false },
  });
  return true;
}

/** Whether the engine's list is open, and in use, under a cell that is edited. */
function isListed(accessor: IAccessor): boolean {
  const cell = document.querySelector(LIST) && editedCell(accessor);
  return cell ? accessor.get(ICommandService).hasCommand(listOf(cell.getUnitId())) : false;
}

export function completeNames(injector: Injector): void {
  const commands = injector.get(ICommandService);
  commands.onCommandExecuted(notePicking);
  commands.registerCommand({ id: COMPLETE, type: CommandType.OPERATION, handler: complete });
  for (const keycode of [KeyCode.TAB, KeyCode.ENTER])
    injector.get(IShortcutService).registerShortcut({
      id: COMPLETE,
      binding: keycode,
      priority: PRIORITY,
      preconditions: () => injector.invoke(isListed),
      staticParameters: { keycode },
    });
}
