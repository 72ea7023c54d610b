/** A schedule of openings as a sheet that belongs to the person: headings, drop-downs, notes. */
import type { CellValue } from "../core/base/cell";
import { standardFields } from "../core/kitbook/fields";
import type { Drawing, DrawnCell } from "../workbook/drawing";
import { blank, date, headingRow, number, row, text, wordsRow, yesNo } from "./cells";
import { printSetup } from "./printSetup";

/** What a heading's note tells the person who types below it. */
const notes: Readonly<Partial<Record<string, string>>> = {
  Job: "One contract at one site. Each job gets its own list.",
  Mark: "The opening's label on the drawings; once in a job.",
  Qty: "How many alike: a whole number above 0.",
  Type: "An opening type of the kit book.",
  Width: "Clear width, such as 7'-6\", 90 or 2286 mm. A bare number is in the workbook's unit.",
  Height: "Height of the door, such as 7'-0\".",
  "Post height": "Height of the line posts beside the opening.",
  "Tail post": "Yes where a post stands at the far end of the track.",
  "Tail run": "Free length of partition beyond the opening on the tail side.",
  Transom: "Yes where a fixed panel goes above the door.",
  Floor: "What the floor guide is anchored to: concrete or wood.",
};

const lengthHeadings = new Set(["Width", "Height", "Post height", "Tail run"]);
const widths: Readonly<Record<string, number>> = { Job: 26, Type: 24, Note: 34 };

export type ScheduleWish = {
  readonly name: string;
  /** Such as that the jobs are invented; `null` for a schedule of the person's own. */
  readonly notice: string | null;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
  /** Opening types to choose from. */
  readonly types: readonly string[];
  /** Rows below the last one that get the drop-downs too. */
  readonly spareRows: number;
};

export function scheduleSheet(wish: ScheduleWish): Drawing {
  const { headings, rows } = wish;
  const width = headings.length;
  const above = wish.notice === null ? [] : [wordsRow(wish.notice, "caution", width)];
  const heading = above.length;
  const first = heading + 1;
  const last = heading + rows.length + wish.spareRows;
  const choice = (words: string, list: readonly string[], othersToo: boolean) => {
    const column = headings.indexOf(words);
    return column < 0 || last < first
      ? []
      : [{ column, firstRow: first, lastRow: last, list, othersToo }];
  };
  return {
    name: wish.name,
    mark: null,
    columnWidths: headings.map((words) => widths[words] ?? 12),
    rows: [
      ...above,
      headingRow(
        headings.map((words) => ({
          words,
          ...(notes[words] === undefined ? {} : { note: notes[words] }),
        })),
      ),
      ...rows.map((cells) =>
        row(...headings.map((words, column) => cellOf(cells[column] ?? null, words))),
      ),
    ],
    frozenRows: first,
    frozenColumns: 2,
    tables: [],
    choices: [
      ...choice("Type", wish.types, true),
      ...choice("Tail post", ["yes", "no"], true),
      ...choice("Transom", ["yes", "no"], true),
      ...choice("Floor", ["concrete", "wood"], true),
    ],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: wish.name,
      caution: "",
    }),
  };
}

/** The headings of an empty schedule: every field that the starter kit book reads. */
export const scheduleHeadings: readonly string[] = [
  ...standardFields.map(({ label }) => (label === "Quantity" ? "Qty" : label)),
  "Note",
];

function cellOf(value: CellValue, heading: string): DrawnCell {
  const isLength = lengthHeadings.has(heading);
  // Lengths are kept as text, or a spreadsheet would make a date of 7-0.
  const dress = isLength ? ({ align: "right" } as const) : {};
  if (value === null) return isLength ? blank({ format: "text", ...dress }) : blank();
  if (typeof value === "number") return number(value, "general", dress);
  if (typeof value === "boolean") return yesNo(value);
  if (typeof value === "string") return text(value, dress);
  return value.kind === "date" ? date(value) : text(value.error);
}
