/** A small notation for openings, so that a test reads like a schedule: `8' x 7' on 7'`. */
import type { Inches } from "../../../src/core/base/units";
import { estimate, type Estimate } from "../../../src/core/estimate/estimate";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import type { KitBookRows } from "../../../src/core/kitbook/rows";
import { usDollar } from "../../../src/core/money/currency";
import { numberStyle, writeLength, writeSize } from "../../../src/core/lengths/writeLength";
import { readSchedule } from "../../../src/tables/scheduleTable";
import type { CellValue } from "../../../src/core/base/cell";

/** What an opening has beside its sizes. A tail post and concrete unless a test says otherwise. */
export type OpeningWords = {
  readonly job?: string;
  readonly mark?: string;
  readonly quantity?: CellValue;
  readonly type?: string;
  readonly tailPost?: CellValue;
  readonly tailRun?: CellValue;
  readonly transom?: CellValue;
  readonly floor?: CellValue;
  readonly hand?: CellValue;
};

/** The headings that `scheduleRow` fills. */
export const scheduleHeadings = [
  "Job",
  "Mark",
  "Quantity",
  "Type",
  "Width",
  "Height",
  "Post height",
  "Tail post",
  "Tail run",
  "Transom",
  "Floor",
  "Hand",
];

export const showLength = (length: Inches): string =>
  writeLength(length, { kind: "feet-inches", denominator: 16 });

/** Rows of a schedule from `8' x 7' on 7'`; the post height may be left out. */
export function scheduleRow(sizes: string, words: OpeningWords = {}): readonly CellValue[] {
  const [width = "", height = "", post = null] = sizes.split(/ x | on /);
  return [
    words.job ?? "Job",
    words.mark ?? "A-1",
    words.quantity === undefined ? 1 : words.quantity,
    words.type ?? "sliding door",
    width,
    height,
    post,
    words.tailPost === undefined ? "yes" : words.tailPost,
    words.tailRun ?? null,
    words.transom ?? null,
    words.floor === undefined ? "concrete" : words.floor,
    words.hand ?? null,
  ];
}

/** Estimates rows of a schedule with the starter book and items, or with another book. */
export function estimateRows(
  rows: readonly (readonly CellValue[])[],
  kitBook: KitBookRows = starterKitBook,
): Estimate {
  const reading = readSchedule({
    sheet: "Schedule",
    row: 0,
    column: 0,
    rows: [scheduleHeadings, ...rows],
  });
  if (!reading.ok) throw new Error(reading.error.message);
  return estimate({
    schedules: [reading.value.schedule],
    kitBook,
    items: starterItems,
    unit: "in",
    currency: usDollar,
    showLength,
  });
}

/** Estimates one opening. */
export const estimateOpening = (sizes: string, words: OpeningWords = {}): Estimate =>
  estimateRows([scheduleRow(sizes, words)]);

/** The counts of the first job: `{ "CB 1/4 x 1/2": 2, "PANEL (48 x 84)": 2 }`. */
export function countsOf({ jobs }: Estimate): Readonly<Record<string, number>> {
  const lines = jobs[0]?.takeOff.lines ?? [];
  return Object.fromEntries(
    lines.map(({ item, size, quantity }) => [
      size.length === 0 ? item : `${item} (${writeSize(size, numberStyle)})`,
      quantity,
    ]),
  );
}

/** The counts by item with sizes left out. */
export function itemsOf({ jobs }: Estimate): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const { item, quantity } of jobs[0]?.takeOff.lines ?? []) {
    counts[item] = (counts[item] ?? 0) + quantity;
  }
  return counts;
}

/** The codes of the findings of a level. */
export const codesOf = (result: Estimate, level: "stop" | "warn" | "note"): readonly string[] =>
  result.findings.filter((finding) => finding.level === level).map((finding) => finding.code);
