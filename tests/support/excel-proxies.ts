/**
 * The genuine Excel proxies of the package @microsoft/office-js without Excel: what they would send goes to a
 * stand-in workbook, which keeps sheets as Excel does and records everything else.
 */
import { readFileSync } from "node:fs";
import { createContext, runInContext } from "node:vm";
import { Batch, type Operation, type Workbook } from "./excel-batch";
import type { RequestMessage } from "./excel-wire";
import { addressed, emptySheet, type Content, type Name } from "./excel-workbook";

export type { Operation } from "./excel-batch";

type ExcelNamespace = typeof Excel;

export interface RoundTrip {
  readonly bytes: number;
  /** How many things were asked for, reading and the making of objects included. */
  readonly actions: number;
  /** Of the answer; 0 where there was none. */
  answerBytes: number;
  readonly operations: readonly Operation[];
}
export interface Failure {
  /** The round trip that fails, from 1. */
  readonly roundTrip: number;
  /** Actions of it that Excel still does; none means that the request never arrives. */
  readonly afterActions?: number;
  /** All of it is done, but the answer is lost. */
  readonly unanswered?: boolean;
  /** Excel's code for the error. */
  readonly code?: string;
}
export interface StandIn extends Workbook {
  readonly roundTrips: RoundTrip[];
  /** Called by Excel whenever another cell is selected. */
  readonly watchers: (() => void)[];
}
/** A sheet that is there from the start; cells by their address. */
export interface GivenSheet {
  readonly name: string;
  readonly cells?: Readonly<Record<string, Content>>;
  readonly names?: readonly Name[];
  readonly notes?: Readonly<Record<string, string>>;
  readonly protected?: boolean;
}
export interface StandInOptions {
  readonly sheetNames?: readonly string[];
  readonly sheets?: readonly GivenSheet[];
  readonly calculationMode?: string;
  /** The workbook's own, by what they stand for. */
  readonly names?: readonly Name[];
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly failures?: readonly Failure[];
  /** Whether Excel refuses to do something, whenever it comes. */
  readonly refuses?: (operation: Operation) => boolean;
  /** Called before each round trip: what a user does meanwhile. */
  readonly meanwhile?: (roundTrip: number, workbook: StandIn) => void;
}

let loaded: ExcelNamespace | undefined;
/** Where Office.js leaves what is to be called on events. */
let registration: {
  register: (event: number, target: string, handler: (args: object) => void) => Promise<void>;
};

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
  const extension = page.OfficeExtension as {
    readonly _Internal: { readonly officeJsEventRegistration: typeof registration };
  };
  registration = extension._Internal.officeJsEventRegistration;
  knowNotes(loaded, extension);
  return loaded;
}

/**
 * The package's Office.js does not know the notes of ExcelApi 1.18 yet. Comments stand in for them: their collection
 * has an `add` of the same form, and each has its content.
 */
function knowNotes({ Worksheet, CommentCollection }: ExcelNamespace, extension: unknown): void {
  const { createPropertyObject } = (
    extension as {
      BatchApiHelper: { createPropertyObject: (...given: readonly unknown[]) => unknown };
    }
  ).BatchApiHelper;
  if ("notes" in Worksheet.prototype) throw new Error("the package knows notes now: use its own");
  Object.defineProperty(Worksheet.prototype, "notes", {
    configurable: true,
    get(this: Excel.Worksheet) {
      return createPropertyObject(CommentCollection, this, "Notes", true, 4);
    },
  });
}

/** Makes `Excel` a global over a new stand-in workbook. */
export function standInWorkbook(options: StandInOptions = {}): StandIn {
  const namespace = loadExcel();
  const given = options.sheets ?? (options.sheetNames ?? ["Sheet1"]).map((name) => ({ name }));
  const workbook: StandIn = {
    sheets: given.map(
      ({ name, cells = {}, names = [], notes = {}, protected: locked = false }: GivenSheet, index) => ({
        ...emptySheet(`{existing-${index}}`, name),
        cells: addressed(cells),
        names: [...names],
        notes: new Map(Object.entries(notes)),
        protected: locked,
      }),
    ),
    names: [...(options.names ?? [])],
    settings: new Map(Object.entries(options.settings ?? {})),
    roundTrips: [],
    active: null,
    watchers: [],
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
  registration.register = (_event, _target, handler) => {
    workbook.watchers.push(() => handler({}));
    return Promise.resolve();
  };
  Object.assign(globalThis, { Excel: namespace });
  return workbook;
}

const TRACE = 5;

// a rejection, not a throw, as from a real host
// eslint-disable-next-line @typescript-eslint/require-await
async function execute(workbook: StandIn, message: RequestMessage, options: StandInOptions) {
  const number = workbook.roundTrips.length + 1;
  const operations: Operation[] = [];
  const actions = message.Body.Actions;
  const trip: RoundTrip = { bytes: bytesOf(message), actions: actions.length, answerBytes: 0, operations };
  workbook.roundTrips.push(trip);
  options.meanwhile?.(number, workbook);
  const failure = options.failures?.find(({ roundTrip }) => roundTrip === number);
  const failed = () => new Error(`round trip ${number} failed`);
  if (failure && failure.afterActions === undefined && !failure.unanswered) throw failed();

  const record = (operation: Operation) => {
    if (options.refuses?.(operation)) throw new Error(`Excel refuses ${operation.on} ${operation.name}`);
    operations.push(operation);
  };
  const batch = new Batch(workbook, message.Body.ObjectPaths, record, options.calculationMode ?? "Automatic");
  const results: { ActionId: number; Value: unknown }[] = [];
  const traces: number[] = [];
  let problem: object | null = null;
  for (const [index, action] of actions.entries()) {
    try {
      if (index === failure?.afterActions) throw failed();
      if (action.ActionType === TRACE) traces.push(action.Id);
      else results.push({ ActionId: action.Id, Value: batch.perform(action) });
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      const code = failure?.code ?? "GeneralException";
      problem = { Code: code, Message: text, ActionIndex: index, Location: action.Name };
      break;
    }
  }
  if (failure?.unanswered) throw failed();
  const body = { Error: problem, Results: results, TraceIds: traces };
  const answer = { ErrorCode: "", ErrorMessage: "", Headers: {}, Body: body };
  trip.answerBytes = bytesOf(answer);
  return answer;
}

const bytesOf = (message: object) => Buffer.byteLength(JSON.stringify(message));
