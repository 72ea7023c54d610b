/**
 * A sheet as pure data: what a host must draw, and nothing about how.
 *
 * Rows and columns count from zero. Text is text: a host writes it so that it can never become a
 * formula, whatever it starts with. A formula carries the result it has now, for viewers that do
 * not calculate.
 */
import type { CellValue, DateValue } from "../core/base/cell";
import type { Picture } from "../core/base/picture";

/** How a cell looks. `looks.ts` says what each means in fonts and fills. */
export const lookNames = [
  "body",
  "title",
  "subtitle",
  "heading",
  "group",
  "total",
  "input",
  "caution",
  "stop",
  "warn",
  "note",
  "muted",
  "label",
  "labelTitle",
] as const;
export type Look = (typeof lookNames)[number];

/** How a number is shown. `looks.ts` gives each its spreadsheet format code. */
export const numberFormatNames = [
  "general",
  "text",
  "count",
  "decimal",
  "money",
  "unitCost",
  "weight",
  "hours",
  "percent",
  "rate",
  "date",
] as const;
export type NumberFormat = (typeof numberFormatNames)[number];

export type CellDress = {
  readonly look: Look;
  readonly format?: NumberFormat;
  /** Numbers go right and text left unless this says otherwise. */
  readonly align?: "left" | "center" | "right";
  readonly wrap?: boolean;
  /** Words are set in though no number stands before them, to be in line with others that are. */
  readonly setIn?: true;
  /** A comment shown when the pointer rests on the cell. */
  readonly note?: string;
  /** This many columns to the right are joined into the cell. */
  readonly span?: number;
  /** A person types here; what stands here is read and goes on to the next sheet (`CarriedCell`). */
  readonly input?: true;
};

export type DrawnCell = CellDress &
  (
    | { readonly kind: "text"; readonly text: string }
    | { readonly kind: "number"; readonly number: number }
    | { readonly kind: "yesNo"; readonly yes: boolean }
    | { readonly kind: "date"; readonly date: DateValue }
    /** `formula` starts with `=`; `result` is what it comes to now. */
    | {
        readonly kind: "formula";
        readonly formula: string;
        readonly result: number | string | boolean;
      }
    | { readonly kind: "blank" }
  );

/**
 * Whether the cell's words stand right behind a number, which goes to the right end of its own cell:
 * they are set in, so that the two are not read as one.
 */
export function isSetIn(cells: readonly (DrawnCell | null)[], column: number): boolean {
  const [before, cell] = [cells[column - 1], cells[column]];
  if (cell?.kind === "blank" || !isAtLeft(cell)) return false;
  return cell?.setIn === true || isAtRight(before);
}

const isAtRight = (cell: DrawnCell | null | undefined): boolean =>
  cell !== null &&
  cell !== undefined &&
  cell.span === undefined &&
  (cell.align === "right" ||
    (cell.align === undefined && cell.kind !== "blank" && typeof shownValue(cell) === "number"));

const isAtLeft = (cell: DrawnCell | null | undefined): boolean =>
  cell !== null &&
  cell !== undefined &&
  (cell.align === "left" || (cell.align === undefined && typeof shownValue(cell) === "string"));

/**
 * A cell holds 32,767 characters, and the apostrophe that tells a text from a formula may be one of
 * them. (Source: Microsoft's page on Excel specifications and limits.)
 */
const longestText = 32_766;

/** What the cell shows: a formula's result, else what is written. A text that no cell holds is cut. */
export function shownValue(cell: DrawnCell): CellValue {
  switch (cell.kind) {
    case "text":
      return cell.text.length <= longestText
        ? cell.text
        : `${cell.text.slice(0, longestText - 1)}…`;
    case "number":
      return cell.number;
    case "yesNo":
      return cell.yes;
    case "date":
      return cell.date;
    case "formula":
      return cell.result;
    case "blank":
      return null;
  }
}

export type DrawnRow = {
  readonly cells: readonly (DrawnCell | null)[];
  /** Points; the host's own height where absent. */
  readonly height?: number;
};

/** A drop-down on a run of cells of one column. */
export type Choice = {
  readonly column: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly list: readonly string[];
  /** Whether something not on the list may be typed too. */
  readonly othersToo: boolean;
};

/** A spreadsheet table over part of the sheet: its heading row and the rows below. */
export type DrawnTable = {
  /** Letters, digits and `_`; unique in the workbook. */
  readonly name: string;
  readonly headingRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
};

export const papers = ["letter", "a4"] as const;
export type Paper = (typeof papers)[number];

/** Inches from the edges of the paper to the cells. */
export type Margins = {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
};

/**
 * A line drawing over the cells, its upper left corner at that of a cell. A host that cannot draw
 * leaves it out: all that it says stands in the cells too.
 */
export type DrawnPicture = Picture & { readonly row: number; readonly column: number };

/**
 * A chart of the spreadsheet's own, over numbers of its sheet: bars by name, a series for each column. A
 * host that makes no charts leaves it out: all that it shows stands in the cells too.
 */
export type DrawnChart = {
  /** The cell of its upper left corner. */
  readonly row: number;
  readonly column: number;
  /** Points. */
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly nameColumn: number;
  /** Each with its words in `headingRow`. */
  readonly valueColumns: readonly number[];
  readonly headingRow: number;
  readonly format: NumberFormat;
};

export type PrintSetup = {
  readonly orientation: "portrait" | "landscape";
  /** The rows repeated on top of each page, from zero; absent for none. */
  readonly titleRows?: { readonly first: number; readonly last: number };
  /** The columns that are printed, from zero; all where absent. */
  readonly columns?: { readonly first: number; readonly last: number };
  readonly fitToOnePageWide: boolean;
  /** The host's own paper where absent. */
  readonly paper?: Paper;
  /** The host's own margins where absent. */
  readonly margins?: Margins;
  /** A page starts before each of these rows. */
  readonly breaksBefore: readonly number[];
  /** Tabs split it into left, middle and right; `{page}`, `{pages}`, `{date}` are filled (`printText.ts`). */
  readonly header: string;
  readonly footer: string;
};

/** What sheet of ours it is; kept inside the workbook so that we know it again under any name. */
export type SheetMark = {
  /** Such as `hardware`, `reasons`, `findings`. */
  readonly kind: string;
  /** What of: a job's name; the empty text for a sheet about all jobs. */
  readonly subject: string;
};

/** A cell that was read from the sheet that a drawing replaces, and whose content the drawing has. */
export type CarriedCell = {
  readonly row: number;
  readonly column: number;
  /** What it showed. While it shows just that, it is not lost with the old sheet. */
  readonly value: CellValue;
};

export type Drawing = {
  /** The name wanted; the host shortens it and makes it free where it must. */
  readonly name: string;
  /** `null` for a sheet that belongs to the person from the moment it is made: never replaced. */
  readonly mark: SheetMark | null;
  /** Widths in characters, one per column. */
  readonly columnWidths: readonly number[];
  readonly rows: readonly DrawnRow[];
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly tables: readonly DrawnTable[];
  readonly choices: readonly Choice[];
  /** None where absent. */
  readonly pictures?: readonly DrawnPicture[];
  /** None where absent. */
  readonly charts?: readonly DrawnChart[];
  readonly print: PrintSetup;
  /** What it carries on from the sheet that it replaces; none where absent. */
  readonly carried?: readonly CarriedCell[];
};
