/**
 * Our worksheet functions in the grid's formula engine.
 *
 * A function that throws would stop all calculation of the workbook for good, so nothing leaves one
 * but a value; and the engine's own way of taking in functions would hand blank cells over as zero,
 * so they are taken in as the engine's built-in ones are.
 */
import { BooleanNumber } from "@univerjs/core";
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  IFunctionService,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
} from "@univerjs/engine-formula";
import type { CellValue } from "../../core/base/cell";
import type { Result } from "../../core/base/result";
import type { Engine } from "./engine";
import type { FunctionFault, FunctionFaults } from "./functionFaults";

/** What a cell gives a function: one value, or the rows of a range. A cell alone is its value. */
export type FunctionInput = CellValue | readonly (readonly CellValue[])[];

/** One value, or rows that spill. */
export type FunctionAnswer =
  number | string | boolean | readonly (readonly (number | string | boolean | null)[])[];

export type GridFunction = {
  /** As it is typed, with its namespace: `CRIB.COUNT`. */
  readonly name: string;
  readonly says: string;
  readonly arguments: readonly {
    readonly name: string;
    readonly says: string;
    readonly optional: boolean;
  }[];
  readonly example: string;
  /** An argument that is left out is `null`. The fault's code becomes #VALUE! or #N/A. */
  readonly run: (inputs: readonly FunctionInput[]) => Result<FunctionAnswer, FunctionFault>;
};

/**
 * Takes `functions` in, with their help while typing. Before a workbook that uses them is loaded.
 * `faults` hears why one has no answer.
 */
export function registerFunctions(
  { injector }: Engine,
  functions: readonly GridFunction[],
  faults: FunctionFaults,
): void {
  const service = injector.get(IFunctionService);
  service.registerExecutors(...functions.map((each) => new TableFunction(each, faults)));
  service.registerDescriptions(
    ...functions.map(({ name, says, example, arguments: taken }) => ({
      functionName: name,
      functionType: FunctionType.User,
      description: `${says} ${example}`,
      abstract: says,
      functionParameter: taken.map((argument) => ({
        name: argument.name,
        detail: argument.says,
        example: "",
        require: argument.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
        repeat: BooleanNumber.FALSE,
      })),
    })),
  );
}

class TableFunction extends BaseFunction {
  readonly #function: GridFunction;
  readonly #faults: FunctionFaults;

  constructor(each: GridFunction, faults: FunctionFaults) {
    super(each.name);
    this.#function = each;
    this.#faults = faults;
    this.minParams = each.arguments.filter(({ optional }) => !optional).length;
    this.maxParams = each.arguments.length;
  }

  override calculate(...given: BaseValueObject[]): BaseValueObject {
    const fault = given.find((value) => value.isError());
    if (fault !== undefined) return fault;
    try {
      const answer = this.#function.run(this.#function.arguments.map((_, at) => input(given[at])));
      this.#hear(answer.ok ? null : answer.error);
      if (!answer.ok)
        return errorValue(answer.error.code === "na" ? ErrorType.NA : ErrorType.VALUE);
      return typeof answer.value === "object" ? rows(answer.value) : value(answer.value);
    } catch {
      // A fault of ours must not take the person's whole workbook with it.
      this.#hear(ownFault);
      return errorValue(ErrorType.VALUE);
    }
  }

  /** The engine says before each call which cell asks. */
  #hear(fault: FunctionFault | null): void {
    const { unitId, subUnitId, row, column } = this;
    if (unitId && subUnitId) this.#faults.heard({ unitId, sheetId: subUnitId, row, column }, fault);
  }
}

const ownFault: FunctionFault = {
  code: "value",
  message: "Cribsheet could not work this out. The fault is its own, not yours.",
};

function input(given: BaseValueObject | undefined): FunctionInput {
  if (given === undefined) return null;
  if (!(given instanceof ArrayValueObject)) return cellOf(given);
  const found: CellValue[][] = Array.from({ length: given.getRowCount() }, () =>
    Array.from({ length: given.getColumnCount() }, () => null),
  );
  given.iterator((cell, row, column) => {
    const line = found[row];
    if (cell && line) line[column] = cellOf(cell);
  });
  const [first] = found;
  return found.length === 1 && first?.length === 1 ? (first[0] ?? null) : found;
}

function cellOf(given: BaseValueObject): CellValue {
  if (given.isNull()) return null;
  const found = given.getValue();
  return given.isError() ? { kind: "error", error: String(found) } : found;
}

function value(answer: number | string | boolean | null): BaseValueObject {
  if (answer === null) return StringValueObject.create("");
  if (typeof answer === "string") return StringValueObject.create(answer);
  if (typeof answer === "boolean") return BooleanValueObject.create(answer);
  return Number.isFinite(answer) ? NumberValueObject.create(answer) : errorValue(ErrorType.NUM);
}

const errorValue = (type: ErrorType): BaseValueObject => ErrorValueObject.create(type);

function rows(answer: readonly (readonly (number | string | boolean | null)[])[]): BaseValueObject {
  const columnCount = Math.max(0, ...answer.map((line) => line.length));
  if (answer.length === 0 || columnCount === 0) return StringValueObject.create("");
  const cells = answer.map((line) =>
    Array.from({ length: columnCount }, (_, column) => value(line[column] ?? null)),
  );
  return ArrayValueObject.create({
    calculateValueList: cells,
    rowCount: cells.length,
    columnCount,
    unitId: noPlace,
    sheetId: noPlace,
    row: -1,
    column: -1,
  });
}

/** The engine fills these in for the cell that asked. */
const noPlace = "";
