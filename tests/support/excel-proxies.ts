/**
 * The genuine Excel proxies of the package @microsoft/office-js without Excel: what they would send goes to a
 * stand-in workbook, which keeps sheets as Excel does and records everything else.
 */
import { readFileSync } from "node:fs";
import { createContext, runInContext } from "node:vm";

type ExcelNamespace = typeof Excel;

interface PathInfo {
  readonly Id: number;
  /** 1 the workbook, 3 what a method gives, 4 a property, 5 an item by its key. */
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
}
interface ActionInfo {
  readonly Id: number;
  /** 1 make the object, 2 load, 3 call, 4 set. */
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
}
interface RequestMessage {
  readonly Body: {
    readonly Actions: readonly ActionInfo[];
    readonly ObjectPaths: Readonly<Record<string, PathInfo>>;
  };
}

export interface Sheet {
  readonly id: string;
  name: string;
}
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
export interface RoundTrip {
  readonly bytes: number;
  readonly operations: readonly Operation[];
}
export interface Failure {
  /** The round trip that fails, from 1. */
  readonly roundTrip: number;
  /** Actions of it that Excel still does; none means that the request never arrives. */
  readonly afterActions?: number;
}
export interface StandIn {
  readonly sheets: Sheet[];
  readonly roundTrips: RoundTrip[];
  active: string | null;
}
export interface StandInOptions {
  readonly sheetNames?: readonly string[];
  readonly calculationMode?: string;
  readonly failures?: readonly Failure[];
  /** Called before each round trip: what a user does meanwhile. */
  readonly meanwhile?: (roundTrip: number, workbook: StandIn) => void;
}

let loaded: ExcelNamespace | undefined;

function loadExcel(): ExcelNamespace {
  if (loaded) return loaded;
  const file = require.resolve("@microsoft/office-js/dist/excel-win32-16.01.debug.js");
  const nothing = () => undefined;
  const page: Record<string, unknown> = {
    location: { href: "http://localhost/", search: "", hash: "", protocol: "http:" },
    navigator: { userAgent: "test" },
    document: {
      addEventListener: nothing,
      getElementsByTagName: () => [],
      createElement: () => ({}),
      cookie: "",
    },
    sessionStorage: { getItem: () => null, setItem: nothing },
    localStorage: { getItem: () => null, setItem: nothing },
    addEventListener: nothing,
    removeEventListener: nothing,
    setTimeout,
    Promise,
  };
  page.window = page.self = page;
  // a realm of its own: the script is made for a page and fills its globals
  runInContext(readFileSync(file, "utf8"), createContext(page), { filename: file });
  loaded = page.Excel as ExcelNamespace;
  return loaded;
}

/** Makes `Excel` a global over a new stand-in workbook. */
export function standInWorkbook(options: StandInOptions = {}): StandIn {
  const namespace = loadExcel();
  const names = options.sheetNames ?? ["Sheet1"];
  const workbook: StandIn = {
    sheets: names.map((name, index) => ({ id: `{existing-${index}}`, name })),
    roundTrips: [],
    active: null,
  };
  const executor = {
    executeAsync: (_custom: unknown, _flags: number, message: RequestMessage) =>
      execute(workbook, message, options),
  };
  // each Excel.run makes a context of its own, so the executor goes on the prototype
  Object.defineProperty(namespace.RequestContext.prototype, "_requestExecutor", {
    configurable: true,
    get: () => executor,
    set: () => undefined,
  });
  Object.assign(globalThis, { Excel: namespace });
  return workbook;
}

// a rejection, not a throw, as from a real host
// eslint-disable-next-line @typescript-eslint/require-await
async function execute(workbook: StandIn, message: RequestMessage, options: StandInOptions) {
  const number = workbook.roundTrips.length + 1;
  const operations: Operation[] = [];
  workbook.roundTrips.push({ bytes: Buffer.byteLength(JSON.stringify(message)), operations });
  options.meanwhile?.(number, workbook);
  const failure = options.failures?.find(({ roundTrip }) => roundTrip === number);
  if (failure && failure.afterActions === undefined) throw new Error(`round trip ${number} failed`);

  const { Actions: actions, ObjectPaths: paths } = message.Body;
  const batch = new Batch(workbook, paths, operations, options.calculationMode ?? "Automatic");
  const results: { ActionId: number; Value: unknown }[] = [];
  let problem: object | null = null;
  for (const [index, action] of actions.entries()) {
    try {
      if (index === failure?.afterActions) throw new Error(`round trip ${number} failed`);
      results.push({ ActionId: action.Id, Value: batch.perform(action) });
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      problem = { Code: "GeneralException", Message: text, ActionIndex: index, Location: action.Name };
      break;
    }
  }
  return { ErrorCode: "", ErrorMessage: "", Headers: {}, Body: { Error: problem, Results: results } };
}

/** What a path leads to: the chain of names, from the sheet where it passes through one. */
interface Target {
  /** null: a sheet was asked for, and there is none. */
  readonly sheet?: Sheet | null;
  readonly chain: string;
}

class Batch {
  private readonly made = new Map<number, Target>();

  constructor(
    private readonly workbook: StandIn,
    private readonly paths: Readonly<Record<string, PathInfo>>,
    private readonly operations: Operation[],
    private readonly calculationMode: string,
  ) {}

  perform({ ActionType: type, Name: name, ObjectPathId: pathId, ArgumentInfo: given }: ActionInfo): unknown {
    const target = this.target(pathId);
    const args = given?.Arguments ?? [];
    if (type === 1) return this.identity(target);
    if (type === 2) return this.loaded(target);
    // Excel does nothing, and answers nothing, on an object that is not there
    if (target.sheet === null) return null;
    const { sheet, chain } = target;
    this.operations.push({ sheet: sheet ?? null, on: chain, name, args });
    if (!sheet || chain !== "") return {};
    if (name === "Name") this.rename(sheet, String(args[0]));
    if (name === "Delete") this.workbook.sheets.splice(this.workbook.sheets.indexOf(sheet), 1);
    if (name === "Activate") this.workbook.active = sheet.name;
    return {};
  }

  private identity({ sheet, chain }: Target): unknown {
    if (sheet === null) return null;
    return sheet && chain === "" ? { Id: sheet.id } : {};
  }

  private loaded(target: Target): unknown {
    if (target.sheet || target.sheet === null) return this.identity(target);
    if (target.chain === "Worksheets") {
      return { _Items: this.workbook.sheets.map(({ id, name }) => ({ Id: id, Name: name })) };
    }
    return target.chain === "Application" ? { CalculationMode: this.calculationMode } : {};
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
    const args = given?.Arguments ?? [];
    if (parent.sheet === undefined && parent.chain === "Worksheets")
      return { sheet: this.sheet(name, args), chain: "" };
    const step = type === 4 ? name : `${name || "GetItem"}(${args.join(",")})`;
    const chain = parent.chain === "" ? step : `${parent.chain}.${step}`;
    if (parent.sheet && type === 3 && name === "Add") {
      this.operations.push({ sheet: parent.sheet, on: parent.chain, name, args });
    }
    return { sheet: parent.sheet, chain };
  }

  private sheet(method: string, [key]: readonly unknown[]): Sheet | null {
    if (method === "Add") return this.add(String(key));
    const found = this.workbook.sheets.find(({ id, name }) => id === key || same(name, String(key)));
    if (!found && method !== "GetItemOrNullObject") throw new Error(`there is no sheet ${String(key)}`);
    return found ?? null;
  }

  private add(name: string): Sheet {
    this.refuseTaken(name);
    const sheet = { id: `{${name}}`, name };
    this.workbook.sheets.push(sheet);
    this.operations.push({ sheet, on: "", name: "Add", args: [name] });
    return sheet;
  }

  private rename(sheet: Sheet, name: string): void {
    this.refuseTaken(name);
    sheet.name = name;
  }

  private refuseTaken(name: string): void {
    if (name.length > 31) throw new Error(`the name ${name} is too long`);
    if (this.workbook.sheets.some((sheet) => same(sheet.name, name)))
      throw new Error(`the name ${name} is taken`);
  }
}

const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();
