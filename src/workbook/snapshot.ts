/**
 * A whole workbook as pure data: what passes between a file and the embedded grid, and what the
 * browser keeps between visits. Plain JSON values throughout.
 *
 * Rows and columns count from zero. Formulas stay formulas; a cell's `value` beside a formula is
 * its last result, for readers that do not calculate.
 */
import type { CellValue } from "../core/base/cell";
import type {
  Choice,
  DrawnChart,
  DrawnPicture,
  DrawnTable,
  PrintSetup,
  SheetMark,
} from "./drawing";

export type LineStyle = {
  readonly weight: "thin" | "medium" | "thick";
  /** `RRGGBB`. */
  readonly ink: string;
};

/** How a cell looks. What is absent is the host's own default. Colours are `RRGGBB`. */
export type CellStyle = {
  readonly font?: string;
  /** Points. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  readonly ink?: string;
  readonly fill?: string;
  readonly lineAbove?: LineStyle;
  readonly lineBelow?: LineStyle;
  readonly lineLeft?: LineStyle;
  readonly lineRight?: LineStyle;
  /** A spreadsheet format code such as `#,##0.00`; `@` is text. */
  readonly format?: string;
  readonly align?: "left" | "center" | "right";
  /** Set in by a step from the side that it is aligned to. */
  readonly indent?: true;
  readonly alignDown?: "top" | "middle" | "bottom";
  readonly wrap?: boolean;
};

export type CellSnapshot = {
  readonly value: CellValue;
  /** Starts with `=`. */
  readonly formula?: string;
  /** The cells that an array formula fills, its own included; the others there hold only results. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** Index into `WorkbookSnapshot.styles`. */
  readonly style?: number;
  readonly note?: string;
  /** A person types here (see `CellDress`); known of a sheet that is drawn, never of one that is read. */
  readonly input?: true;
};

export type Merge = {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
};

export type SheetSnapshot = {
  readonly name: string;
  readonly visible: boolean;
  readonly isProtected: boolean;
  /** What sheet of ours it is, or `null`. */
  readonly mark: SheetMark | null;
  /** The fingerprint of what we wrote on a sheet of ours (see `fingerprint.ts`), or `null`. */
  readonly written: string | null;
  /** `null` is a cell with nothing in it; rows may differ in length. */
  readonly rows: readonly (readonly (CellSnapshot | null)[])[];
  /** Characters; `null` is the host's own width. */
  readonly columnWidths: readonly (number | null)[];
  /** Points; `null` is the host's own height. */
  readonly rowHeights: readonly (number | null)[];
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly merges: readonly Merge[];
  readonly tables: readonly DrawnTable[];
  readonly choices: readonly Choice[];
  /** Those that we drew; absent for none. */
  readonly pictures?: readonly DrawnPicture[];
  /** Those that we made; absent for none. */
  readonly charts?: readonly DrawnChart[];
  readonly print: PrintSetup | null;
};

export type DefinedName = {
  readonly name: string;
  /** What it stands for, with `=` in front. */
  readonly formula: string;
};

export type WorkbookSnapshot = {
  /** The file's name as the person knows it, or the empty text. */
  readonly name: string;
  readonly sheets: readonly SheetSnapshot[];
  readonly activeSheet: string;
  readonly styles: readonly CellStyle[];
  readonly names: readonly DefinedName[];
  /** Our own settings, by key. */
  readonly settings: Readonly<Record<string, string>>;
  /** What the file had that a snapshot cannot hold, in plain words such as `2 charts`. */
  readonly leftOut: readonly string[];
};
