/** What a worksheet function is: a row of the table from which registration, help and docs come. */
import type { CellValue } from "../core/base/cell";
import type { Result } from "../core/base/result";
import type { OpeningCounter } from "../app/openings/oneOpening";

export type FunctionArgument = {
  /** As the spreadsheet shows it while a person types. */
  readonly name: string;
  readonly says: string;
  readonly optional: boolean;
  /** `cells`: a range of several cells may be given. */
  readonly takes: "value" | "cells";
};

/** What a cell gives a function: one value, or the rows of a range. */
export type FunctionInput = CellValue | readonly (readonly CellValue[])[];

/** One value, or rows that spill. */
export type FunctionAnswer = number | string | boolean | readonly (readonly (number | string)[])[];

/**
 * Why there is no answer: `value` where an argument is wrong (#VALUE!), `na` where the question has
 * no answer for this opening (#N/A). The message says which argument and why.
 */
export type FunctionFault = { readonly code: "value" | "na"; readonly message: string };

export type WorksheetFunction = {
  /** Behind the namespace: `COUNT` is `CRIB.COUNT` in a cell. */
  readonly name: string;
  readonly says: string;
  readonly arguments: readonly FunctionArgument[];
  readonly answers: "number" | "text" | "rows";
  readonly example: string;
  /** `inputs[i]` is the argument in place `i`; one left out is `null`. */
  readonly run: (
    inputs: readonly FunctionInput[],
    counter: OpeningCounter,
  ) => Result<FunctionAnswer, FunctionFault>;
};

export const namespace = "CRIB";
