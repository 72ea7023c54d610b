/**
 * A hardware sheet as it stands -> what persons typed on it.
 *
 * Rows are known by the name in their last column, so sorting and inserting loses none. A row that
 * holds a quantity and no name was put in by a person.
 */
import { cellText, isBlank, type Block, type CellValue } from "../core/base/cell";
import { readPieces } from "../core/corrections/addedLine";
import {
  nothingTyped,
  type ReadRow,
  type ReadSheet,
  type TypedRow,
} from "../core/corrections/correction";
import type { WrittenRow, WrittenSpares } from "../core/corrections/record";
import { bandMark, readRowName, rowKey, type RowName } from "../core/corrections/rowName";
import { itemKey } from "../core/pricing/item";
import type { CarriedCell } from "../workbook/drawing";
import { carriedColumns, hardwareHeadings, type HardwareTableColumn } from "./hardwareTableColumns";
import { typedSpares } from "./typedSpares";

/** What a hardware sheet is read by. */
export type HardwareRules = {
  /** The subject of the sheet's mark: a job, or the empty text for several. */
  readonly subject: string;
  /** The spares of each item when the sheet was written, by its key. */
  readonly spares: WrittenSpares;
  /** What was typed on it when it was written. */
  readonly written: readonly WrittenRow[];
};

export type HardwareReading = {
  readonly sheet: ReadSheet;
  /** Every cell whose content is in `sheet`. */
  readonly carried: readonly CarriedCell[];
};

/** Reads a hardware sheet; `null` where its headings are gone. */
export function readHardwareTable(block: Block, rules: HardwareRules): HardwareReading | null {
  const headings = hardwareHeadings(block);
  if (headings === null) return null;
  const before = new Map(
    rules.written.flatMap(({ name, typed }) => (name === null ? [] : [[rowKey(name), typed]])),
  );
  const rows: ReadRow[] = [];
  const carried: CarriedCell[] = [];
  let job = rules.subject;
  // Somebody may have sorted the headings along with the rows, so rows above them are read too.
  for (let index = 0; index < block.rows.length; index += 1) {
    if (index === headings.row) continue;
    const row = rowAt(block, index, headings.columns);
    const named = row.text("line");
    const name = readRowName(named);
    if (name === null && (named === bandMark || !isPutIn(row))) continue;
    if (name !== null && name.kind !== "move") job = name.job;
    const written = name === null ? undefined : before.get(rowKey(name));
    const spares = sparesIn(row, name, rules.spares, written);
    rows.push({
      name,
      job,
      ...typedIn(row, name, spares ?? ""),
      place: {
        sheet: block.sheet,
        row: block.row + index,
        column: block.column + (headings.columns.get(tellingColumn(name)) ?? 0),
      },
    });
    for (const key of carriedColumns(name)) {
      const column = headings.columns.get(key);
      // Where it cannot be told whether it was typed, the old sheet had better be kept.
      if (column === undefined || (key === "spares" && spares === null)) continue;
      const value = row.value(key);
      if (value === null) continue;
      carried.push({ row: block.row + index, column: block.column + column, value });
    }
  }
  return { sheet: { subject: rules.subject, rows: withJobs(rows) }, carried };
}

/** Where a finding about a row points: what a row that is added says is its quantity. */
const tellingColumn = (name: RowName | null): HardwareTableColumn =>
  name === null || name.kind === "added" ? "quantity" : "correction";

type Row = {
  readonly value: (key: HardwareTableColumn) => CellValue;
  /** Without the spaces around it. */
  readonly text: (key: HardwareTableColumn) => string;
};

function rowAt(
  block: Block,
  index: number,
  columns: ReadonlyMap<HardwareTableColumn, number>,
): Row {
  const value = (key: HardwareTableColumn): CellValue => {
    const column = columns.get(key);
    return column === undefined ? null : (block.rows[index]?.[column] ?? null);
  };
  return { value, text: (key) => cellText(value(key)).trim() };
}

/** A title or a remark holds no quantity. */
const isPutIn = ({ value }: Row): boolean =>
  !isBlank(value("item")) &&
  (["quantity", "counted", "correction"] as const).some((key) => !isBlank(value(key)));

function sparesIn(
  row: Row,
  name: RowName | null,
  rules: HardwareRules["spares"],
  written: TypedRow | undefined,
): string | null {
  if (name?.kind === "move") return "";
  // In a row added by hand another item or quantity may have been typed since the spares were written.
  const known = written?.item ?? "";
  const key = itemKey(known === "" ? row.text("item") : known);
  const before = readPieces(written?.quantity ?? "");
  return typedSpares(row.value("spares"), [row.value("quantity"), before], {
    rule: Object.hasOwn(rules, key) ? rules[key] : undefined,
    isKnown: Object.keys(rules).length > 0,
    own: written?.spares,
  });
}

function typedIn(
  { value, text }: Row,
  name: RowName | null,
  spares: string,
): Pick<ReadRow, "typed" | "counted"> {
  const shown = value("counted");
  const counted = typeof shown === "number" ? shown : null;
  const said = { correction: text("correction"), reason: text("reason"), by: text("by") };
  if (name?.kind === "move") {
    return { counted: null, typed: { ...nothingTyped, correction: said.correction } };
  }
  if (name?.kind === "line") return { counted, typed: { ...nothingTyped, ...said, spares } };
  const typed = { ...said, spares, item: text("item"), size: text("size") };
  // A row of ours that lost its name shows a count and what is to order of it.
  const isOurs = name === null && counted !== null && !isBlank(value("toOrder"));
  if (isOurs) return { counted, typed: { ...typed, quantity: text("quantity") } };
  const quantity = text("quantity") || text("counted");
  const isCorrection = quantity !== "";
  return {
    counted: null,
    typed: {
      ...typed,
      quantity: isCorrection ? quantity : said.correction,
      correction: isCorrection ? said.correction : "",
    },
  };
}

/** Rows above the first one with a name belong to its job. */
function withJobs(rows: readonly ReadRow[]): readonly ReadRow[] {
  const first = rows.find(({ job }) => job !== "")?.job ?? "";
  return rows.map((row) => (row.job === "" ? { ...row, job: first } : row));
}
