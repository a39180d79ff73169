/**
 * One request of the genuine proxies, done on the stand-in workbook action by action.
 */
import type { ActionInfo, ArgumentInfo, PathInfo } from "./excel-wire";
import {
  addName,
  blockOf,
  checkName,
  copySheet,
  emptySheet,
  formatCells,
  loadedCells,
  moveSheet,
  nameValue,
  same,
  typeInto,
  type Block,
  type Sheet,
} from "./excel-workbook";

/** Something done on a sheet or on the workbook. */
export interface Operation {
  /** null: on the workbook. */
  readonly sheet: Sheet | null;
  /** Where, as a chain from the sheet: "GetRange(A1:B2).Format.Font". */
  readonly on: string;
  /** What: a method, or a property that was set. */
  readonly name: string;
  readonly args: readonly unknown[];
}
export interface Workbook {
  readonly sheets: Sheet[];
  active: string | null;
}

/** What a path leads to: the chain of names, from the sheet where it passes through one. */
interface Target {
  /** null: a sheet was asked for, and there is none. */
  readonly sheet?: Sheet | null;
  readonly chain: string;
  /** The cells, where it is a range. */
  readonly block?: Block;
}

export class Batch {
  private readonly made = new Map<number, Target>();

  constructor(
    private readonly workbook: Workbook,
    private readonly paths: Readonly<Record<string, PathInfo>>,
    private readonly operations: Operation[],
    private readonly calculationMode: string,
  ) {}

  perform({ ActionType: type, Name: name, ObjectPathId: pathId, ArgumentInfo: given }: ActionInfo): unknown {
    const target = this.target(pathId);
    const args = this.argumentsOf(given);
    if (type === 1) return this.identity(target);
    if (type === 2) return this.loaded(target);
    // Excel does nothing, and answers nothing, on an object that is not there
    if (target.sheet === null) return null;
    const { sheet, chain, block } = target;
    this.operations.push({ sheet: sheet ?? null, on: chain, name, args });
    if (!sheet) return {};
    if (chain === "") this.onSheet(sheet, name, args);
    else if (name === "Formulas" && block) typeInto(sheet, block, args[0]);
    else if (name === "NumberFormat" && block) formatCells(sheet, block, args[0]);
    else sheet.done.push(`${chain} ${name} ${JSON.stringify(args)}`);
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
    else sheet.done.push(`${name} ${JSON.stringify(first)}`);
  }

  private identity({ sheet, chain }: Target): unknown {
    if (sheet === null) return null;
    return sheet && chain === "" ? { Id: sheet.id } : {};
  }

  private loaded(target: Target): unknown {
    const { sheet, chain, block } = target;
    if (sheet && block) return loadedCells(sheet, block);
    if (sheet && chain === "Names") {
      const items = sheet.names.map((each) => ({
        Name: each.name,
        Scope: each.scope ?? "Worksheet",
        Value: nameValue(sheet, each),
      }));
      return { _Items: items };
    }
    if (sheet || sheet === null) return this.identity(target);
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

  private follow({
    ObjectPathType: type,
    Name: name,
    ParentObjectPathId: parentId,
    ArgumentInfo: given,
  }: PathInfo): Target {
    if (type === 1 || parentId === undefined) return { chain: "" };
    const parent = this.target(parentId);
    const args = this.argumentsOf(given);
    if (parent.sheet === undefined && parent.chain === "Worksheets")
      return { sheet: this.sheet(name, args), chain: "" };
    const { sheet } = parent;
    if (sheet && type === 3 && parent.chain === "" && name === "Copy") return this.copy(sheet, args);
    const step = type === 4 ? name : `${name || "GetItem"}(${args.join(",")})`;
    const chain = parent.chain === "" ? step : `${parent.chain}.${step}`;
    if (sheet && type === 3 && name === "Add") {
      this.operations.push({ sheet, on: parent.chain, name, args });
      if (parent.chain === "Names") addName(sheet, String(args[0]), String(args[1]));
    }
    const block = sheet ? this.block(parent, name, given) : undefined;
    return { sheet, chain, ...(block && { block }) };
  }

  /** A long block goes in slices, each from one row of a range to another. */
  private block({ block }: Target, name: string, given: ArgumentInfo = {}): Block | undefined {
    const first = given.Arguments?.[0];
    if (name === "GetRange") return blockOf(first as string | undefined);
    if (!block) return undefined;
    if (name === "GetRow") {
      const row = block.row + Number(first);
      return { ...block, row, lastRow: row };
    }
    const to = given.ReferencedObjectPathIds?.[0];
    const other = name === "GetBoundingRect" && to ? this.target(to).block : undefined;
    return other && { ...block, lastRow: other.lastRow };
  }

  private copy(sheet: Sheet, args: readonly unknown[]): Target {
    if (args[0] !== "End") throw new Error(`copied to ${String(args[0])}`);
    const copy = copySheet(this.workbook.sheets, sheet);
    this.operations.push({ sheet: copy, on: "", name: "Copy", args: [sheet.name] });
    return { sheet: copy, chain: "" };
  }

  private sheet(method: string, [key]: readonly unknown[]): Sheet | null {
    if (method === "Add") return this.add(String(key));
    const found = this.workbook.sheets.find(({ id, name }) => id === key || same(name, String(key)));
    if (!found && method !== "GetItemOrNullObject") throw new Error(`there is no sheet ${String(key)}`);
    return found ?? null;
  }

  private add(name: string): Sheet {
    checkName(this.workbook.sheets, name);
    const sheet = emptySheet(`{${name}}`, name);
    this.workbook.sheets.push(sheet);
    this.operations.push({ sheet, on: "", name: "Add", args: [name] });
    return sheet;
  }
}
