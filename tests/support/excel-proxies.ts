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
}
/** A sheet that is there from the start; cells by their address. */
export interface GivenSheet {
  readonly name: string;
  readonly cells?: Readonly<Record<string, Content>>;
  readonly names?: readonly Name[];
}
export interface StandInOptions {
  readonly sheetNames?: readonly string[];
  readonly sheets?: readonly GivenSheet[];
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
  knowNotes(loaded, page.OfficeExtension as typeof OfficeExtension);
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
    sheets: given.map(({ name, cells = {}, names = [] }: GivenSheet, index) => ({
      ...emptySheet(`{existing-${index}}`, name),
      cells: addressed(cells),
      names: [...names],
    })),
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
  const trip: RoundTrip = { bytes: bytesOf(message), answerBytes: 0, operations };
  workbook.roundTrips.push(trip);
  options.meanwhile?.(number, workbook);
  const failure = options.failures?.find(({ roundTrip }) => roundTrip === number);
  const failed = () => new Error(`round trip ${number} failed`);
  if (failure && failure.afterActions === undefined && !failure.unanswered) throw failed();

  const { Actions: actions, ObjectPaths: paths } = message.Body;
  const batch = new Batch(workbook, paths, operations, options.calculationMode ?? "Automatic");
  const results: { ActionId: number; Value: unknown }[] = [];
  let problem: object | null = null;
  for (const [index, action] of actions.entries()) {
    try {
      if (index === failure?.afterActions) throw failed();
      results.push({ ActionId: action.Id, Value: batch.perform(action) });
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      const code = failure?.code ?? "GeneralException";
      problem = { Code: code, Message: text, ActionIndex: index, Location: action.Name };
      break;
    }
  }
  if (failure?.unanswered) throw failed();
  const answer = { ErrorCode: "", ErrorMessage: "", Headers: {}, Body: { Error: problem, Results: results } };
  trip.answerBytes = bytesOf(answer);
  return answer;
}

const bytesOf = (message: object) => Buffer.byteLength(JSON.stringify(message));
