/**
 * One request of the genuine proxies, done on the stand-in workbook action by action.
 */
import { cellsAt, namesOn, selected } from "./excel-answers";
import {
  blockFrom,
  cellsOf,
  checkTable,
  named,
  NOT_THERE,
  selectedCell,
  usedCells,
  withBlock,
  type Target,
} from "./excel-targets";
import type { ActionInfo, ArgumentInfo, PathInfo } from "./excel-wire";
import {
  addedSheet,
  addName,
  addNote,
  checkName,
  copySheet,
  formatCells,
  moveSheet,
  same,
  typeInto,
  type Done,
  type Name,
  type Sheet,
} from "./excel-workbook";

/** Something done on a sheet or on the workbook: a method, or a property that was set. */
export interface Operation extends Done {
  /** null: on the workbook. */
  readonly sheet: Sheet | null;
}
export interface Workbook {
  readonly sheets: Sheet[];
  readonly names: Name[];
  readonly settings: Map<string, unknown>;
  active: string | null;
  /** The cell that is selected; the first of all if none is named. */
  selected?: { readonly sheet: string; readonly address: string };
}

export class Batch {
  private readonly made = new Map<number, Target>();

  constructor(
    private readonly workbook: Workbook,
    private readonly paths: Readonly<Record<string, PathInfo>>,
    private readonly record: (operation: Operation) => void,
    private readonly calculationMode: string,
  ) {}

  perform({ ActionType: type, Name: name, ObjectPathId: pathId, ...rest }: ActionInfo): unknown {
    const target = this.target(pathId);
    const args = this.argumentsOf(rest.ArgumentInfo);
    if (type === 1) return this.identity(target);
    if (type === 2) {
      const answer = this.loaded(target);
      return answer && selected(answer, rest.QueryInfo?.Select);
    }
    // Excel does nothing, and answers nothing, on an object that is not there
    if (target.sheet === null) return null;
    const { sheet, chain, block, note } = target;
    this.record({ sheet: sheet ?? null, on: chain, name, args });
    if (!sheet) return {};
    if (chain === "") this.onSheet(sheet, name, args);
    else if (name === "Formulas" && block) typeInto(sheet, block, args[0]);
    else if (name === "NumberFormat" && block) formatCells(sheet, block, args[0]);
    else if (name === "Content" && note !== undefined) sheet.notes.set(note, String(args[0]));
    else if (name === "Delete" && note !== undefined) sheet.notes.delete(note);
    else sheet.done.push({ on: chain, name, args });
    return {};
  }

  private onSheet(sheet: Sheet, name: string, [first]: readonly unknown[]): void {
    const { sheets } = this.workbook;
    if (name === "Name") {
      checkName(sheets, String(first));
      sheet.name = String(first);
    } else if (name === "Delete") sheets.splice(sheets.indexOf(sheet), 1);
    else if (name === "Position") moveSheet(sheets, sheet, Number(first));
    else if (name === "Activate") this.workbook.active = sheet.name;
    else sheet.done.push({ on: "", name, args: [first] });
  }

  private identity({ sheet, chain }: Target): Readonly<Record<string, unknown>> | null {
    if (sheet === null) return null;
    return sheet && chain === "" ? { Id: sheet.id } : {};
  }

  private loaded(target: Target): Readonly<Record<string, unknown>> | null {
    const { sheet, chain, block, note, setting } = target;
    if (sheet === null) return null;
    if (setting !== undefined) return { Key: setting, Value: this.workbook.settings.get(setting) };
    if (sheet && note !== undefined) return { Content: sheet.notes.get(note) };
    if (sheet && block) return cellsAt(sheet, block);
    if (sheet && chain === "Names") return namesOn(sheet);
    if (sheet && chain === "Protection") return { Protected: sheet.protected };
    if (sheet) return { ...this.identity(target), ...(chain === "" && { Name: sheet.name }) };
    if (chain === "Worksheets") {
      return { _Items: this.workbook.sheets.map(({ id, name }) => ({ Id: id, Name: name })) };
    }
    return chain === "Application" ? { CalculationMode: this.calculationMode } : {};
  }

  /** Objects as text: "Plan!GetRange(A1:B2)". */
  private argumentsOf({ Arguments: args = [], ReferencedObjectPathIds: ids }: ArgumentInfo = {}): unknown[] {
    return args.map((arg, index) => {
      const id = ids?.[index];
      if (!id) return arg;
      const { sheet, chain } = this.target(id);
      return `${sheet?.name ?? ""}!${chain}`;
    });
  }

  private target(pathId: number): Target {
    const known = this.made.get(pathId);
    if (known) return known;
    const path = this.paths[pathId];
    if (!path) throw new Error(`there is no object path ${pathId}`);
    const target = this.follow(path);
    this.made.set(pathId, target);
    return target;
  }

  private follow(path: PathInfo): Target {
    const { ObjectPathType: type, Name: name, ParentObjectPathId: parentId, ArgumentInfo: given } = path;
    if (type === 7) return NOT_THERE;
    if (type === 1 || parentId === undefined) return { chain: "" };
    const parent = this.target(parentId);
    // whatever is asked of an object that is not there is not there either
    if (parent.sheet === null) return NOT_THERE;
    const args = this.argumentsOf(given);
    const { sheet } = parent;
    const step = type === 4 ? name : `${name || "GetItem"}(${args.join(",")})`;
    const chain = parent.chain === "" ? step : `${parent.chain}.${step}`;
    if (name === "GetRangeOrNullObject") return cellsOf(this.workbook.sheets, parent);
    if (!sheet) return this.inWorkbook(parent.chain, name, args) ?? { chain };
    if (type === 3 && parent.chain === "" && name === "Copy") return this.copy(sheet, args);
    if (type === 4 && parent.block && name === "Worksheet") return { sheet, chain: "" };
    if (type === 3 && name === "Add") this.add(sheet, parent.chain, args);
    if (parent.chain === "Names" && name === "GetItemOrNullObject") {
      return named(sheet.names, args[0], { sheet, chain });
    }
    if (parent.chain === "Notes" && args.length > 0 && name !== "Add") {
      return sheet.notes.has(String(args[0])) ? { sheet, chain, note: String(args[0]) } : NOT_THERE;
    }
    if (name === "GetUsedRangeOrNullObject") return usedCells(sheet);
    const to = given?.ReferencedObjectPathIds?.[0];
    const block = blockFrom(parent, name, given?.Arguments?.[0], to ? this.target(to) : undefined);
    return withBlock({ sheet, chain }, block);
  }

  /** What is asked of the workbook itself, where more than the chain matters. */
  private inWorkbook(chain: string, name: string, args: readonly unknown[]): Target | undefined {
    const { names, settings } = this.workbook;
    if (chain === "Worksheets") return { sheet: this.sheet(name, args), chain: "" };
    if (name === "GetActiveCell") return selectedCell(this.workbook);
    if (chain === "Names" && name === "GetItemOrNullObject") return named(names, args[0], { chain });
    if (chain !== "Settings") return undefined;
    const setting = String(args[0]);
    if (name === "Add") {
      this.record({ sheet: null, on: chain, name, args });
      settings.set(setting, args[1]);
    }
    return settings.has(setting) ? { chain: `${chain}.${name}`, setting } : NOT_THERE;
  }

  private add(sheet: Sheet, on: string, args: readonly unknown[]): void {
    this.record({ sheet, on, name: "Add", args });
    const [first, second] = args.map(String);
    if (on === "Names") addName(sheet, first!, second!);
    else if (on === "Notes") addNote(sheet, first!, second!);
    else {
      if (on === "Tables") checkTable(sheet, first!);
      sheet.done.push({ on, name: "Add", args });
    }
  }

  private copy(sheet: Sheet, args: readonly unknown[]): Target {
    if (args[0] !== "End") throw new Error(`copied to ${String(args[0])}`);
    const copied = copySheet(this.workbook.sheets, sheet);
    this.record({ sheet: copied, on: "", name: "Copy", args: [sheet.name] });
    return { sheet: copied, chain: "" };
  }

  private sheet(method: string, [key]: readonly unknown[]): Sheet | null {
    const { sheets } = this.workbook;
    if (method === "Add") {
      const sheet = addedSheet(sheets, String(key));
      this.record({ sheet, on: "", name: "Add", args: [key] });
      return sheet;
    }
    const found = sheets.find(({ id }) => id === key) ?? sheets.find(({ name }) => same(name, String(key)));
    if (!found && method !== "GetItemOrNullObject") throw new Error(`there is no sheet ${String(key)}`);
    return found ?? null;
  }
}
