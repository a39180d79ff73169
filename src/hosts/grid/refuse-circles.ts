/**
 * A defect of the grid's engine, kept away: a formula that needs its own result is calculated from whatever it gave
 * the last time, so that it gives another number each time. It is an error instead, and so is what reads from it.
 */
import type { Injector } from "@univerjs/core";
import {
  ErrorType,
  ErrorValueObject,
  FORMULA_REF_TO_ARRAY_CACHE,
  IDependencyManagerService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { inCircles } from "./circles";

type Cells = Parameters<IDependencyManagerService["searchDependency"]>[0];
/** A formula that is about to be calculated. */
interface Due {
  readonly treeId: number;
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly column: number;
  readonly rowCount: number;
  readonly columnCount: number;
  /** Of a rule or a highlight, which stands in no cell though it names one. */
  readonly formulaId: string | null | undefined;
  readonly featureId: string | null | undefined;
  toRTreeItem(): Cells;
}
/** A part of a formula: a function by its name, a reference, an operator. */
interface Part {
  getParent(): Part | null | undefined;
  getChildren(): readonly Part[];
  getToken(): string;
}
/** What the engine keeps to itself. */
interface Generator {
  /** What a formula reads, found from its whole down to its parts. */
  _nodeTraversalRef(whole: Part, found: Part[]): void;
  /** Asked before each calculation; nothing is done about it. */
  _checkIsCycleDependency(due: readonly Due[]): boolean;
  /** Who reads a cell whose address is itself a result, as that of INDIRECT. */
  readonly _dependencyRTreeCacheForAddressFunction: { bulkSearch(cells: Cells): Iterable<number> };
}

/** They ask where a cell is, not what it holds: it may be their own. OFFSET asks that of its first argument alone. */
const ASK_WHERE: ReadonlySet<string> = new Set(["ROW", "ROWS", "COLUMN", "COLUMNS", "AREAS"]);
function isPlaceOnly(part: Part): boolean {
  const asking = part.getParent();
  const name = asking?.getToken().toUpperCase() ?? "";
  return ASK_WHERE.has(name) || (name === "OFFSET" && asking?.getChildren()[0] === part);
}

const place = (unitId: string, sheetId: string, row: number, column: number) =>
  `${unitId} ${sheetId} ${row} ${column}`;

export function refuseCircles(injector: Injector): void {
  const dependencies = injector.get(IDependencyManagerService);
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as Generator;
  const runtime = injector.get(IFormulaRuntimeService);
  const setResult = runtime.setRuntimeData.bind(runtime);
  const circular = () => ErrorValueObject.create(ErrorType.CYCLE);
  let refused: ReadonlySet<string> = new Set();

  const referencesIn = generator._nodeTraversalRef.bind(generator);
  generator._nodeTraversalRef = (whole, found) => {
    const all: Part[] = [];
    referencesIn(whole, all);
    found.push(...all.filter((part) => !isPlaceOnly(part)));
  };
  function* readersOf(one: Due): Iterable<number> {
    const cells = one.toRTreeItem();
    yield* dependencies.searchDependency(cells);
    yield* generator._dependencyRTreeCacheForAddressFunction.bulkSearch(cells);
  }
  generator._checkIsCycleDependency = (due) => {
    const formulas = due.filter(({ formulaId, featureId }) => !formulaId && !featureId);
    const found = inCircles(formulas, readersOf);
    refused = new Set(found.map((one) => place(one.unitId, one.subUnitId, one.row, one.column)));
    // before any of them is read: what was read once is read from a cache
    FORMULA_REF_TO_ARRAY_CACHE.clear();
    for (const { row, column, rowCount, columnCount, subUnitId, unitId } of found) {
      runtime.setCurrent(row, column, rowCount, columnCount, subUnitId, unitId);
      setResult(circular());
    }
    return found.length > 0;
  };
  const reset = runtime.reset.bind(runtime);
  runtime.reset = () => {
    // what addresses hang on is calculated before it is known who is in a circle
    refused = new Set();
    reset();
  };
  runtime.setRuntimeData = (result) => {
    const { currentUnitId, currentSubUnitId, currentRow, currentColumn } = runtime;
    const isRefused = refused.has(place(currentUnitId, currentSubUnitId, currentRow, currentColumn));
    setResult(isRefused ? circular() : result);
  };
}
