/** One cell of a schedule -> the value that formulas read. */
import { cellText, isBlank, type CellValue, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingDetails } from "../base/finding";
import { formulaError, type FormulaValue } from "../formulas/value";
import type { FieldKind } from "../kitbook/fields";
import { toInches, type LengthUnit } from "../lengths/length";
import { lengthFinding } from "../lengths/lengthFindings";
import { readLength } from "../lengths/readLength";
import { openingFindings } from "./openingFindings";
import type { ColumnUnit } from "./openingRow";
import { readYesNo } from "./yesNo";

export type FieldReading = {
  /**
   * Lengths in inches; `null` for a blank, and for what could not be read. A cell that shows an error
   * is that error, so that it matters only where a formula reads it.
   */
  readonly value: FormulaValue;
  /** Each becomes a finding once it is told the place, what was found, the job and the mark. */
  readonly findings: readonly ((details: FindingDetails) => Finding)[];
};

export type FieldRules = {
  readonly label: string;
  /** The workbook's unit for bare numbers. */
  readonly unit: LengthUnit;
  /** The column's own, where its heading says one. */
  readonly columnUnit: ColumnUnit;
  /** Whether a number that no door can have is to be doubted. */
  readonly isDoor: boolean;
};

const blankWords = /^(-|–|—|n\/?a|none|nil)$/i;

/** Reads a cell as its kind of field. `found` takes numbers, yes and no and text as they are. */
export function readFieldCell(cell: TypedCell, kind: FieldKind, rules: FieldRules): FieldReading {
  const { value } = cell;
  if (isBlank(value)) return { value: null, findings: [] };
  switch (kind) {
    case "length":
      return readLengthField(value, rules);
    case "yesNo":
      return readYesNoField(value, rules);
    case "number":
    case "text":
    case "found":
      return readFound(value, kind, rules);
  }
}

function readLengthField(value: CellValue, rules: FieldRules): FieldReading {
  if (!rules.isDoor && typeof value === "string" && blankWords.test(value.trim())) {
    return { value: null, findings: [] };
  }
  const unit =
    rules.columnUnit === "mm" || rules.columnUnit === "in" ? rules.columnUnit : rules.unit;
  const inFeet = rules.columnUnit === "ft" && isBareNumber(value);
  const read = readLength(inFeet ? `${cellText(value).trim()} ft` : value, unit);
  if (!read.ok) {
    const fault = read.error;
    return { value: null, findings: [(details) => lengthFinding(fault, details)] };
  }
  const doubts = read.value.doubts.filter(
    (doubt) => rules.isDoor || doubt.code !== "length-not-a-door",
  );
  return {
    value: toInches(read.value.length),
    findings: doubts.map((doubt) => (details: FindingDetails) => lengthFinding(doubt, details)),
  };
}

const isBareNumber = (value: CellValue): boolean =>
  typeof value === "number" || (typeof value === "string" && /^\s*\d+(\.\d+)?\s*$/.test(value));

/** Yes or no; a length where a yes is asked for (a transom's height) is that length. */
function readYesNoField(value: CellValue, rules: FieldRules): FieldReading {
  const answer = readYesNo(value);
  if (answer !== undefined) return { value: answer, findings: [] };
  const length = typeof value === "object" ? null : readLength(value, rules.unit);
  if (rules.label === "Transom" && length?.ok === true) {
    return { value: toInches(length.value.length), findings: [] };
  }
  const refusal = (details: FindingDetails): Finding =>
    makeFinding(openingFindings, "not-yes-or-no", { ...details, values: { column: rules.label } });
  return { value: null, findings: [refusal] };
}

function readFound(
  value: CellValue,
  kind: "number" | "text" | "found",
  rules: FieldRules,
): FieldReading {
  if (value !== null && typeof value === "object") {
    return value.kind === "date"
      ? { value: kind === "text" ? cellText(value) : value.serial, findings: [] }
      : { value: formulaError("cell", `${rules.label} shows ${value.error}`), findings: [] };
  }
  if (kind === "text") return { value: cellText(value).trim(), findings: [] };
  if (typeof value !== "string") return { value, findings: [] };
  // Text with a unit's mark is a length, so that formulas can reckon with it.
  const length = /\d\s*(['"′″’”]|mm|cm|in|ft)\s*$/i.test(value)
    ? readLength(value, rules.unit)
    : null;
  return {
    value: length?.ok === true ? toInches(length.value.length) : value.trim(),
    findings: [],
  };
}
