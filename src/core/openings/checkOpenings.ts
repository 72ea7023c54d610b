/** Schedule rows as typed -> checked openings, with a finding for every cell that is wrong or doubtful. */
import { cellText, isBlank, placeName, type CellPlace, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingDetails } from "../base/finding";
import { isPieces, pieces } from "../base/units";
import { nearestName } from "../formulas/names";
import { standardFields, type FieldKind } from "../kitbook/fields";
import { typeKey } from "../kitbook/kitBook";
import type { LengthUnit } from "../lengths/length";
import { readFieldCell, type FieldReading } from "./fieldCell";
import type { Opening, UncountedRow } from "./opening";
import { openingFindings } from "./openingFindings";
import type { OpeningRow, Schedule, ScheduleKey } from "./openingRow";

export type CheckedOpenings = {
  readonly openings: readonly Opening[];
  readonly uncounted: readonly UncountedRow[];
  readonly findings: readonly Finding[];
};

/** A row checked by itself; `opening` is not to be counted where one of the findings is a stop. */
export type CheckedRow = { readonly opening: Opening; readonly findings: readonly Finding[] };

/**
 * Checks every row. A row with a stop is uncounted; all of its findings are reported and not only
 * the first. A blank job is that of no job above: it is counted under the sheet's name, with a warning.
 */
export const checkOpenings = (
  schedule: Schedule,
  types: readonly string[],
  unit: LengthUnit,
): CheckedOpenings => gatherOpenings(schedule.rows, checkRows(schedule, types, unit));

/** Each row by itself, so that a row that did not change need not be checked again. */
export const checkRows = (
  schedule: Schedule,
  types: readonly string[],
  unit: LengthUnit,
): readonly CheckedRow[] => schedule.rows.map((row) => checkRow(schedule, row, types, unit));

/** All rows of a schedule together, each with what `checkRows` made of it: finds marks used twice. */
export function gatherOpenings(
  rows: readonly OpeningRow[],
  checked: readonly CheckedRow[],
): CheckedOpenings {
  const openings: Opening[] = [];
  const uncounted: UncountedRow[] = [];
  const findings: Finding[] = [];
  const firstOfMark = new Map<string, CellPlace>();

  const [first] = rows;
  if (first !== undefined && first.cells.quantity === undefined) {
    findings.push(makeFinding(openingFindings, "quantity-assumed", { place: first.place }));
  }
  if (first !== undefined && first.cells.job === undefined) {
    const values = { job: first.place.sheet };
    findings.push(
      makeFinding(openingFindings, "job-column-missing", { place: first.place, values }),
    );
  }
  for (const [index, { opening, findings: own }] of checked.entries()) {
    const row = rows[index];
    const twice = row === undefined ? null : markTwice(row, opening, firstOfMark);
    const rowFindings = twice === null ? own : [...own, twice];
    for (const finding of rowFindings) findings.push(finding);
    if (rowFindings.some((finding) => finding.level === "stop")) {
      const { place, job, mark } = opening;
      uncounted.push({ place, job, mark, findings: rowFindings });
    } else {
      openings.push(opening);
    }
  }
  return { openings, uncounted, findings };
}

/** The finding where the mark was in `firstOfMark` already; else puts it there. */
function markTwice(
  row: OpeningRow,
  { job, mark }: Opening,
  firstOfMark: Map<string, CellPlace>,
): Finding | null {
  if (isBlank(row.cells.mark?.value ?? null)) return null;
  const key = `${job.toLowerCase()}\n${mark.toLowerCase()}`;
  const place = row.cells.mark?.place ?? row.place;
  const earlier = firstOfMark.get(key);
  if (earlier === undefined) {
    firstOfMark.set(key, place);
    return null;
  }
  const values = { first: placeName(earlier) };
  return makeFinding(openingFindings, "mark-twice", { place, found: mark, values, job, mark });
}

/** Where a cell has a stop, the opening holds a blank in its place and is not to be counted. */
function checkRow(
  schedule: Schedule,
  row: OpeningRow,
  types: readonly string[],
  unit: LengthUnit,
): CheckedRow {
  const findings: Finding[] = [];
  const job = textOf(row.cells.job) || schedule.sheet;
  const mark = textOf(row.cells.mark) || `row ${row.place.row + 1}`;
  const details = (cell: TypedCell | undefined, values = {}): FindingDetails => ({
    place: cell?.place ?? row.place,
    found: textOf(cell),
    values,
    job,
    mark,
  });
  const report = (
    code: keyof typeof openingFindings,
    cell: TypedCell | undefined,
    values: Readonly<Record<string, string>> = {},
  ) => findings.push(makeFinding(openingFindings, code, details(cell, values)));

  if (row.cells.job !== undefined && isBlank(row.cells.job.value)) {
    report("job-missing", row.cells.job, { job });
  }
  if (isBlank(row.cells.mark?.value ?? null)) report("mark-missing", row.cells.mark, { mark });

  const quantity = readQuantity(row.cells.quantity);
  if (quantity === null) {
    const isMissing = isBlank(row.cells.quantity?.value ?? null);
    report(isMissing ? "quantity-missing" : "quantity-not-a-count", row.cells.quantity);
  }

  const type = readType(row.cells.type, types);
  if (type.guessed) report("type-guessed", row.cells.type, { type: type.name });
  if (type.name === "") {
    const code = isBlank(row.cells.type?.value ?? null) ? "type-missing" : "type-unknown";
    const near = nearestName(textOf(row.cells.type), types);
    const guess = near === undefined ? "" : `Did you mean ${near}? `;
    report(code, row.cells.type, { types: types.join(", "), guess });
  }

  const values: Record<string, Opening["fields"][string]> = {};
  const places: Record<string, CellPlace | null> = {};
  const read = (name: string, label: string, kind: FieldKind, cell: TypedCell): void => {
    const isDoor = doorSizes.has(name);
    const columnUnit = schedule.units[name as ScheduleKey] ?? null;
    const reading: FieldReading = readFieldCell(cell, kind, { label, unit, columnUnit, isDoor });
    values[name] = reading.value;
    places[name] = cell.place;
    for (const make of reading.findings) findings.push(make(details(cell)));
  };
  for (const { name, label, kind } of standardFields) {
    const cell = row.cells[name];
    if (cell !== undefined) read(name, label, kind, cell);
  }
  for (const [name, cell] of Object.entries(row.others)) {
    read(name, schedule.otherHeadings[name] ?? name, "found", cell);
  }
  for (const { name, label } of [
    { name: "width", label: "Width" },
    { name: "height", label: "Height" },
  ] as const) {
    if (isBlank(row.cells[name]?.value ?? null)) {
      report("size-is-missing", row.cells[name], { column: label });
    }
  }

  // A transom given as a height is a transom, of that height.
  if (typeof values["transom"] === "number") {
    values["transom_height"] ??= values["transom"];
    places["transom_height"] ??= places["transom"] ?? null;
    values["transom"] = true;
  }
  const counted = quantity ?? 1;
  return {
    opening: {
      place: row.place,
      job,
      mark,
      quantity: pieces(counted),
      type: type.name,
      fields: { ...values, job, mark, quantity: counted, type: type.name },
      places,
    },
    findings,
  };
}

/** Lengths that are sizes of a door, for which a number out of range is likely in another unit. */
const doorSizes: ReadonlySet<string> = new Set(["width", "height", "post_height"]);

const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();

/** One where the schedule has no such column; `null` for anything that is not a whole number above 0. */
function readQuantity(cell: TypedCell | undefined): number | null {
  if (cell === undefined) return 1;
  const { value } = cell;
  const isWritten =
    typeof value === "string" && /^\s*\d{1,9}(\.0+)?\s*(ea|each|pcs?|off)?\.?\s*$/i.test(value);
  const count = isWritten ? Number.parseFloat(value) : value;
  return typeof count === "number" && isPieces(count) && count > 0 ? count : null;
}

/** The kit book's type of that name, or the only one that starts with it, or that it starts. */
function readType(
  cell: TypedCell | undefined,
  types: readonly string[],
): { readonly name: string; readonly guessed: boolean } {
  const wanted = typeKey(textOf(cell));
  if (wanted === "") return { name: "", guessed: false };
  const exact = types.find((type) => typeKey(type) === wanted);
  if (exact !== undefined) return { name: exact, guessed: false };
  const plain = plainWords(wanted)
    .replace(/ ?\bsingle\b/, "")
    .trim();
  const near = types.filter((type) => {
    const known = plainWords(typeKey(type));
    return known === plain || `${known} `.startsWith(`${plain} `) || `${known}s` === plain;
  });
  const same = near.find((type) => plainWords(typeKey(type)) === plain);
  if (same !== undefined) return { name: same, guessed: true };
  const [only] = near;
  return near.length === 1 && only !== undefined
    ? { name: only, guessed: true }
    : { name: "", guessed: false };
}

const plainWords = (words: string): string => words.replace(/[^\p{L}\p{N}]+/gu, " ").trim();
