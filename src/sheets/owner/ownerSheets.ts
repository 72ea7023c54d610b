/** The sheets that an owner types into: quotation terms, ranges, alternates, actuals. */
import type { CellValue } from "../../core/base/cell";
import { alternateKinds } from "../../core/pricing/alternates/alternates";
import { alternateActs } from "../../core/pricing/alternates/alternateRows";
import { rangeShapes, rangeWords, type OwnerRange } from "../../core/pricing/chances/ownerRanges";
import { shareOf } from "../../core/pricing/rates/percent";
import { termKinds, type TermKind } from "../../core/pricing/quotationTerms";
import { actualKinds } from "../../core/pricing/actuals/typedActuals";
import type { Drawing } from "../../workbook/drawing";
import { typedTableSheet } from "../typedTableSheet";

type Rows = readonly (readonly CellValue[])[];

/** A term by its kind, for one job or (the empty text) for every one. */
export type WrittenTerm = readonly [kind: TermKind, job: string, text: string | number];

export const termsSheet = (terms: readonly WrittenTerm[], notice: string | null): Drawing =>
  typedTableSheet({
    name: "Quotation terms",
    columns: [
      { words: "Quotation term", width: 20, list: termKinds.map(({ label }) => label) },
      { words: "Job", width: 30, note: "Blank for every job." },
      { words: "Text", width: 84, note: "Only this is shown to the customer." },
    ],
    rows: terms.map(([kind, job, words]) => [
      termKinds.find(({ key }) => key === kind)?.label ?? null,
      job === "" ? null : job,
      words,
    ]),
    notice,
  });

export const rangesSheet = (ranges: readonly OwnerRange[], notice: string | null): Drawing =>
  typedTableSheet({
    name: "Ranges",
    columns: [
      {
        words: "Range of",
        width: 28,
        list: Object.values(rangeWords),
        note: "One family of material: material: FAMILY. The price: what winning the job may take off it.",
      },
      { words: "Job", width: 30, note: "Blank for every job." },
      {
        words: "Lowest",
        width: 12,
        format: "percent",
        note: "Against the estimate: -5 % is less.",
      },
      { words: "Most likely", width: 12, format: "percent", note: "Blank is as estimated." },
      { words: "Highest", width: 12, format: "percent" },
      {
        words: "Shape",
        width: 14,
        list: rangeShapes,
        note: "uniform: all alike likely. triangular. pert: as a triangle, thinner at both ends.",
      },
    ],
    rows: ranges.map(({ subject, family, job, low, likely, high, shape }) => [
      family === "" ? rangeWords[subject] : `${rangeWords[subject]}: ${family}`,
      job === "" ? null : job,
      shareOf(low),
      shareOf(likely),
      shareOf(high),
      shape,
    ]),
    notice,
  });

export const alternatesSheet = (rows: Rows, notice: string | null): Drawing =>
  typedTableSheet({
    name: "Alternates",
    columns: [
      {
        words: "Alternate",
        width: 34,
        note: "The customer reads this name. Rows of one name are one alternate.",
      },
      { words: "Kind", width: 12, list: alternateKinds },
      { words: "Job", width: 30, note: "Blank for every job." },
      {
        words: "Adds",
        width: 14,
        list: alternateActs,
        note: "change: the job is counted again with another value in a column of the schedule.",
      },
      {
        words: "Item or name",
        width: 24,
        note: "For a change the schedule's column; for an item its code; else a family or a name.",
      },
      {
        words: "Quantity",
        width: 10,
        format: "general",
        note: "Below zero takes away. Blank is 1.",
      },
      {
        words: "Each",
        width: 12,
        format: "unitCost",
        note: "Blank for an item: as the items say.",
      },
      {
        words: "To",
        width: 16,
        note: "For a change: what the schedule would say instead. Blank empties the cell.",
      },
      {
        words: "Openings",
        width: 22,
        note: "For a change: marks or opening types, with commas. Blank is every opening of the job.",
      },
    ],
    rows,
    notice,
  });

/** `name` is the sheet's. Rows: job, what of, name, actual, estimated. */
export const actualsSheet = (name: string, rows: Rows, notice: string | null): Drawing =>
  typedTableSheet({
    name,
    columns: [
      { words: "Job", width: 30 },
      { words: "Actual of", width: 12, list: actualKinds },
      { words: "Name", width: 36, note: "A cost, a bag or an item as the estimate names it." },
      { words: "Actual", width: 14, format: "general", note: "Blank says nothing yet." },
      { words: "Estimated", width: 14, format: "decimal", note: "To compare; nothing reads it." },
    ],
    rows,
    notice,
  });
