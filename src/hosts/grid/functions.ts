/**
 * The add-in's functions in the grid's formula engine, driven by functions.json. What Excel does for a custom
 * function (blanks, errors, lifting over ranges) is done here.
 */
import { FunctionType, type IFunctionInfo } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
} from "@univerjs/engine-formula";
import { isRefusal } from "../../cellar/refusal";
import { compareAnew } from "./comparing";

/** The part of functions.json that is used here. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description?: string;
    readonly optional?: boolean;
    readonly dimensionality?: string;
  }[];
}

export type CustomFunction = (...args: unknown[]) => unknown;

export const NAMESPACE = "MOUSSE";

type Plain = string | number | boolean | null;
type Engine = {
  readonly function: [new (name: string) => BaseFunction, string][];
  readonly description: IFunctionInfo[];
};

/** Told of each call: in which cell, of what function, and with which values. */
export type Called = (
  sheetId: string,
  row: number,
  column: number,
  id: string,
  args: readonly unknown[],
) => void;

/** What the grid's formula option takes: a class for each function, and what autocomplete shows of it. */
export function engineFunctions(
  metadata: readonly FunctionMetadata[],
  implementations: ReadonlyMap<string, CustomFunction>,
  called: Called = () => undefined,
): Engine {
  compareAnew();
  return {
    function: metadata.map((each) => [
      functionClass(each, implementations.get(each.id), called),
      `${NAMESPACE}.${each.name}`,
    ]),
    description: metadata.map(({ name, description, parameters }) => ({
      functionName: `${NAMESPACE}.${name}`,
      functionType: FunctionType.User,
      description,
      abstract: description,
      functionParameter: parameters.map((parameter) => ({
        name: parameter.name,
        detail: parameter.description ?? "",
        example: "",
        require: parameter.optional ? 0 : 1,
        repeat: 0,
      })),
    })),
  };
}

function functionClass(
  metadata: FunctionMetadata,
  implementation: CustomFunction | undefined,
  called: Called,
): Engine["function"][number][0] {
  if (!implementation) throw new Error(`no function is associated with ${metadata.id}`);
  const takesRange = metadata.parameters.map((parameter) => parameter.dimensionality === "matrix");
  return class extends BaseFunction {
    // a missing argument is refused by the function itself, which can say which one
    override minParams = 0;
    override maxParams = metadata.parameters.length;

    override calculate(...args: BaseValueObject[]) {
      const failed = args.find((arg) => arg.isError());
      if (failed) return failed as ErrorValueObject;
      const plain = args.map((arg) => matrixOf(arg));
      const rows = Math.max(1, ...plain.map((matrix, index) => (takesRange[index] ? 1 : matrix.length)));
      const columns = Math.max(
        1,
        ...plain.map((matrix, index) => (takesRange[index] ? 1 : (matrix[0]?.length ?? 1))),
      );
      if (rows === 1 && columns === 1) {
        return this.#called(plain.map((matrix, index) => (takesRange[index] ? matrix : matrix[0]![0]!)));
      }
      // a range where one value is wanted: one result for each of its cells
      const results = Array.from({ length: rows }, (_, row) =>
        Array.from({ length: columns }, (_, column) =>
          firstOf(
            this.#called(
              plain.map((matrix, index) => (takesRange[index] ? matrix : liftedCell(matrix, row, column))),
            ),
          ),
        ),
      );
      return this.#array(results);
    }

    #called(args: unknown[]): BaseValueObject {
      const error = args.find((arg) => arg instanceof ErrorValueObject);
      if (error) return error;
      called(this.subUnitId ?? "", this.row, this.column, metadata.id, args);
      try {
        const result = implementation(...args);
        return Array.isArray(result)
          ? this.#array((result as Plain[][]).map((row) => row.map(valueObject)))
          : valueObject(result as Plain);
      } catch (refusal) {
        // the functions come from a script of their own, so their Refusal is not this script's class
        if (!isRefusal(refusal)) throw refusal;
        return ErrorValueObject.create(
          (refusal.kind === "domain" ? "#VALUE!" : "#N/A") as never,
          refusal.message,
        );
      }
    }

    #array(cells: BaseValueObject[][]): BaseValueObject {
      return ArrayValueObject.create({
        calculateValueList: cells,
        rowCount: cells.length,
        columnCount: cells[0]?.length ?? 0,
        unitId: this.unitId ?? "",
        sheetId: this.subUnitId ?? "",
        row: this.row,
        column: this.column,
      });
    }
  };
}

type CellArgument = Plain | ErrorValueObject;

function matrixOf(arg: BaseValueObject): CellArgument[][] {
  if (!arg.isArray()) return [[plainOf(arg)]];
  return (arg as ArrayValueObject).getArrayValue().map((row) => row.map(plainOf));
}

function plainOf(value: BaseValueObject | null | undefined | void): CellArgument {
  if (!value || value.isNull()) return null;
  if (value.isError()) return value as ErrorValueObject;
  return value.getValue();
}

/** Excel's lifting: a single value holds for every cell, a single row or column for every row or column. */
function liftedCell(matrix: CellArgument[][], row: number, column: number): CellArgument {
  const cells = matrix[matrix.length === 1 ? 0 : row];
  const found = cells?.[cells.length === 1 ? 0 : column];
  return found === undefined ? ErrorValueObject.create("#N/A" as never) : found;
}

function firstOf(value: BaseValueObject): BaseValueObject {
  return value.isArray() ? (value as ArrayValueObject).getFirstCell() : value;
}

function valueObject(value: Plain): BaseValueObject {
  if (typeof value === "number") return NumberValueObject.create(value);
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  return StringValueObject.create(value ?? "");
}
