/** The boundary table as a sheet: each exact value at which something changes, and what is on its sides. */
import { inches, type Inches } from "../../core/base/units";
import type { Boundary, BoundaryTable } from "../../core/bookcheck/boundaries";
import { boundaryLines, type BoundaryLine } from "../../core/bookcheck/boundaryLines";
import { rowName } from "../../core/bookcheck/rowName";
import type { Field } from "../../core/kitbook/fields";
import type { RowSource } from "../../core/kitbook/kitBook";
import type { Drawing, DrawnCell, DrawnRow } from "../../workbook/drawing";
import { caution } from "../caution";
import { blank, headingRow, number, row, text, wordsRow } from "../cells";
import { titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";

export type BoundaryWish = {
  readonly table: BoundaryTable;
  /** The field that runs. */
  readonly field: Field;
  readonly type: string;
  /** The opening's other fields in words, such as `Height 7'-0"`. */
  readonly others: readonly string[];
  readonly show: (length: Inches) => string;
};

const headingsFor = ({ label, kind }: Field) => [
  { words: label, width: 16, numbers: true },
  { words: kind === "length" ? "In inches" : "Value", width: 11, numbers: true },
  { words: "Itself goes with", width: 16 },
  { words: "What changes", width: 44 },
  { words: "Below", width: 16, numbers: true },
  { words: "At it", width: 16, numbers: true },
  { words: "Above", width: 16, numbers: true },
  { words: "Kit-book rows", width: 40 },
];

const goesWithWords = {
  below: "what is below",
  above: "what is above",
  neither: "neither side",
} as const;

/** What is proven of the table, in a sentence. */
export const proofWords = ({ isProven }: BoundaryTable): string =>
  isProven
    ? "Worked out from the book's formulas: there is no other value at which a row does something else."
    : "Some formulas could only be tried point by point: there may be other values.";

export function boundarySheet({ table, field, type, others, show }: BoundaryWish): Drawing {
  const headings = headingsFor(field);
  const width = headings.length;
  const widths = headings.map((heading) => heading.width);
  const title = `Boundaries of ${field.label}: ${type}`;
  const given = others.length === 0 ? "" : ` with ${others.join(", ")}`;
  return {
    name: `Boundaries ${field.label} ${type}`,
    mark: { kind: "boundaries", subject: `${type} ${field.label}` },
    columnWidths: widths,
    rows: [
      titleRow(title, widths),
      wordsRow(`For an opening${given}.`, "subtitle", width),
      wordsRow(proofWords(table), table.isProven ? "subtitle" : "warn", width),
      headingRow(headings),
      ...table.boundaries.flatMap((boundary) => boundaryRows(boundary, field, show)),
      ...(table.boundaries.length > 0 ? [] : [wordsRow("Nothing changes.", "body", width)]),
    ],
    frozenRows: 4,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: 3,
      subject: type,
      title: `Boundaries of ${field.label}`,
      caution,
    }),
  };
}

/** The value stands in each of its rows, so that the sheet can be sorted and filtered. */
function boundaryRows(
  boundary: Boundary,
  { kind }: Field,
  show: (length: Inches) => string,
): readonly DrawnRow[] {
  const { value, goesWith, rows } = boundary;
  return boundaryLines(boundary).map((line) =>
    row(
      text(kind === "length" ? show(inches(value)) : String(value), { align: "right" }),
      number(Number(value.toPrecision(12)), "general"),
      text(goesWithWords[goesWith]),
      text(line.what, { wrap: true, look: lookOf(line) }),
      ...[line.below, line.at, line.above].map(sideCell),
      line.source === null && rows.length === 0
        ? blank()
        : text(rowsText(line.source === null ? rows : [line.source]), { wrap: true }),
    ),
  );
}

/** What stops or warns looks like it. */
const lookOf = ({ kind, below, above }: BoundaryLine): "stop" | "warn" | "body" => {
  if (kind !== "limit") return kind === "counted" ? "stop" : "body";
  return [below, above].includes("stop") ? "stop" : "warn";
};

const sideCell = (side: number | string): DrawnCell =>
  typeof side === "number" ? number(side, "count") : text(side, { align: "right", wrap: true });

/** `Parts rows 3, 4, 7`. */
const rowsText = (rows: readonly RowSource[]): string => {
  const [first] = rows;
  if (first === undefined) return "";
  if (rows.length === 1) return rowName(first);
  return `${rowName(first).replace(/ row .*/, " rows")} ${rows.map(({ number: at }) => at).join(", ")}`;
};
