/**
 * A defect of the grid's engine, kept away: a formula that needs its own result is calculated from whatever it gave
 * the last time, so that it gives another number each time. It is an error instead, and so is what reads from it.
 */
import type { Injector } from "@univerjs/core";
import {
  ErrorType,
  ErrorValueObject,
  IDependencyManagerService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";

type Cells = Parameters<IDependencyManagerService["searchDependency"]>[0];
/** A formula that is about to be calculated. */
interface Due {
  readonly treeId: number;
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly column: number;
  toRTreeItem(): Cells;
}
/** A part of a formula: a function by its name, a reference, an operator. */
interface Part {
  getParent(): Part | null | undefined;
  getToken(): string;
}
interface Generator {
  /** What a formula reads, found from its whole down to its parts. */
  _nodeTraversalRef(whole: Part, found: Part[]): void;
  /** The engine asks itself this before each calculation, and does nothing about it. */
  _checkIsCycleDependency(due: readonly Due[]): boolean;
  /** Who reads a cell whose address is itself a result, as that of INDIRECT. */
  readonly _dependencyRTreeCacheForAddressFunction: { bulkSearch(cells: Cells): Iterable<number> };
}

/** They ask where a cell is, not what it holds: it may be their own. */
const ASK_WHERE: ReadonlySet<string> = new Set(["ROW", "ROWS", "COLUMN", "COLUMNS", "AREAS"]);

const place = (unitId: string, sheetId: string, row: number, column: number) =>
  `${unitId} ${sheetId} ${row} ${column}`;

export function refuseCircles(injector: Injector): void {
  const dependencies = injector.get(IDependencyManagerService);
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as Generator;
  const runtime = injector.get(IFormulaRuntimeService);
  let inCircles: ReadonlySet<string> = new Set();

  const referencesIn = generator._nodeTraversalRef.bind(generator);
  generator._nodeTraversalRef = (whole, found) => {
    const all: Part[] = [];
    referencesIn(whole, all);
    found.push(...all.filter((one) => !ASK_WHERE.has(one.getParent()?.getToken().toUpperCase() ?? "")));
  };
  generator._checkIsCycleDependency = (due) => {
    const found = circles(due, (one) => [
      ...dependencies.searchDependency(one.toRTreeItem()),
      ...generator._dependencyRTreeCacheForAddressFunction.bulkSearch(one.toRTreeItem()),
    ]);
    inCircles = new Set(found.map((one) => place(one.unitId, one.subUnitId, one.row, one.column)));
    return found.length > 0;
  };
  const setResult = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (result) => {
    const { currentUnitId, currentSubUnitId, currentRow, currentColumn } = runtime;
    const round = inCircles.has(place(currentUnitId, currentSubUnitId, currentRow, currentColumn));
    setResult(round ? ErrorValueObject.create(ErrorType.CYCLE) : result);
  };
}

/**
 * Those that need their own result, or lie between such. Whatever needs nothing of the others, or gives them nothing,
 * is taken away until no such is left.
 */
export function circles<T extends { readonly treeId: number }>(
  all: readonly T[],
  readersOf: (one: T) => Iterable<number>,
): T[] {
  const readers = new Map(all.map((one) => [one.treeId, new Set(readersOf(one))]));
  const sources = new Map(all.map((one) => [one.treeId, new Set<number>()]));
  for (const [id, reading] of readers)
    for (const reader of reading) {
      if (sources.has(reader)) sources.get(reader)!.add(id);
      else reading.delete(reader);
    }
  const left = new Set(readers.keys());
  const ends = [...left].filter((id) => readers.get(id)!.size === 0 || sources.get(id)!.size === 0);
  for (let id = ends.pop(); id !== undefined; id = ends.pop()) {
    if (!left.delete(id)) continue;
    for (const reader of readers.get(id)!) if (emptied(sources.get(reader)!, id)) ends.push(reader);
    for (const source of sources.get(id)!) if (emptied(readers.get(source)!, id)) ends.push(source);
  }
  return all.filter(({ treeId }) => left.has(treeId));
}

function emptied(ids: Set<number>, without: number): boolean {
  ids.delete(without);
  return ids.size === 0;
}
