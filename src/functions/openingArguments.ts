/** The arguments that tell of an opening, the same for every function that asks about one. */
import { cellText, isBlank, type CellValue } from "../core/base/cell";
import { err, ok, type Result } from "../core/base/result";
import { normalName } from "../core/formulas/names";
import { standardFields, type StandardFieldName } from "../core/kitbook/fields";
import type { GivenOpening } from "../app/openings/givenOpening";
import type { OpeningAnswer, OpeningCounter } from "../app/openings/oneOpening";
import type { FunctionArgument, FunctionFault, FunctionInput } from "./worksheetFunction";

const lengthSays = `a number in the workbook's unit, or text such as "7'-0"""`;

type OpeningArgument = FunctionArgument & { readonly field: StandardFieldName };

const argument = (
  field: StandardFieldName,
  name: string,
  says: string,
  optional: boolean,
): OpeningArgument => ({ field, name, says, optional, takes: "value" });

const fieldArguments: readonly OpeningArgument[] = [
  argument("type", "type", "opening type of the kit book", false),
  argument("width", "width", `width of the opening: ${lengthSays}`, false),
  argument("height", "height", `height of the door: ${lengthSays}`, false),
  argument("post_height", "post_height", "height of the line posts; blank or 0 is not given", true),
  argument(
    "tail_post",
    "tail_post",
    "yes where a post stands at the tail end; left out is no",
    true,
  ),
  argument("floor", "floor", "concrete or wood; left out is not given", true),
  argument("tail_run", "tail_run", "free run on the tail side; blank or 0 is not given", true),
  argument("transom", "transom", "yes where there is one; left out is no", true),
];

/** Opening arguments follow a function's own. */
export const openingArguments: readonly FunctionArgument[] = [
  ...fieldArguments,
  {
    name: "fields",
    says: "further fields: a range of two columns, names and values, or of two rows",
    optional: true,
    takes: "cells",
  },
];

const optionalLengths: ReadonlySet<string> = new Set(["post_height", "tail_run"]);

/** Counts the opening that `inputs` tell of. Error: which argument is wrong, or why it cannot be counted. */
export function countGiven(
  inputs: readonly FunctionInput[],
  counter: OpeningCounter,
): Result<OpeningAnswer, FunctionFault> {
  const fields: Partial<Record<StandardFieldName, CellValue>> = {};
  for (const [index, { field, name, optional }] of fieldArguments.entries()) {
    const value = oneValue(inputs[index] ?? null);
    if (value === undefined) return err(wrong(name, "give it one cell or one value"));
    if (typeof value === "object" && value?.kind === "error") {
      return err(wrong(name, `it shows the error ${value.error}`));
    }
    const isLeftOut = isBlank(value) || (value === 0 && optionalLengths.has(field));
    if (isLeftOut && !optional) return err(wrong(name, "it is blank"));
    fields[field] = isLeftOut ? null : value;
  }
  const others = furtherFields(inputs[fieldArguments.length] ?? null);
  if (!others.ok) return others;
  const given = openingOf(fields, others.value);
  const answer = counter.count(given);
  return answer.ok ? answer : err({ code: "value", message: answer.error });
}

/** A single value; `undefined` for a range of several cells. */
export function oneValue(input: FunctionInput): CellValue | undefined {
  if (!Array.isArray(input)) return input as CellValue;
  const rows = input as readonly (readonly CellValue[])[];
  const [row] = rows;
  return rows.length === 1 && row?.length === 1 ? (row[0] ?? null) : undefined;
}

export const wrong = (name: string, why: string): FunctionFault => ({
  code: "value",
  message: `The argument ${name} is wrong: ${why}.`,
});

/** A further field whose name is one of the standard fields is that field. */
function openingOf(
  fields: Readonly<Partial<Record<StandardFieldName, CellValue>>>,
  others: Readonly<Record<string, CellValue>>,
): GivenOpening {
  const names: readonly string[] = standardFields.map(({ name }) => name);
  const isStandard = ([name]: readonly [string, CellValue]): boolean => names.includes(name);
  const entries = Object.entries(others);
  return {
    fields: { ...fields, ...Object.fromEntries(entries.filter(isStandard)) },
    others: Object.fromEntries(entries.filter((entry) => !isStandard(entry))),
  };
}

function furtherFields(
  input: FunctionInput,
): Result<Readonly<Record<string, CellValue>>, FunctionFault> {
  if (!Array.isArray(input)) {
    return isBlank(input as CellValue)
      ? ok({})
      : err(wrong("fields", "give it a range with names and values"));
  }
  const rows = input as readonly (readonly CellValue[])[];
  const width = Math.max(0, ...rows.map((row) => row.length));
  const pairs: readonly (readonly [CellValue, CellValue])[] =
    width === 2
      ? rows.map((row) => [row[0] ?? null, row[1] ?? null])
      : rows.length === 2
        ? Array.from({ length: width }, (_, at) => [rows[0]?.[at] ?? null, rows[1]?.[at] ?? null])
        : [];
  if (pairs.length === 0 && rows.length > 0) {
    return err(wrong("fields", "give it two columns or two rows, names first"));
  }
  return ok(
    Object.fromEntries(
      pairs
        .map(([name, value]): [string, CellValue] => [normalName(cellText(name)), value])
        .filter(([name]) => name !== ""),
    ),
  );
}
