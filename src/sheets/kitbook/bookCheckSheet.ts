/** The kit book's check as a sheet: what does not work, what fits badly, what is left open; then its bolts. */
import { placeName } from "../../core/base/cell";
import { findingCell, findingLevels, type Finding } from "../../core/base/finding";
import type { BookConnection } from "../../core/bookcheck/connections";
import { joinedWords } from "../../core/bookcheck/connectionFindings";
import { rowName } from "../../core/bookcheck/rowName";
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { caution } from "../caution";
import { blankRow, headingRow, row, text, wordsRow } from "../cells";
import { printSetup } from "../printSetup";

export type BookCheckWish = {
  readonly findings: readonly Finding[];
  readonly connections: readonly BookConnection[];
  /** Each with how many parts it has. */
  readonly types: readonly { readonly name: string; readonly parts: number }[];
  /** Which book it is, such as `The workbook's own kit book`. */
  readonly book: string;
};

const headings = [
  { words: "Level", width: 18 },
  { words: "Cell", width: 24 },
  { words: "Found", width: 36 },
  { words: "What it means and what to do", width: 110 },
] as const;

const boltHeadings = [
  { words: "Bolt" },
  { words: "Cell" },
  { words: "With" },
  { words: "Joins, and in which opening types" },
] as const;

const levelWords = { stop: "Stop: left out", warn: "Warning", note: "Note" } as const;

/** Stops, then warnings, then notes; within a level in the order given. */
export function bookCheckSheet({ findings, connections, types, book }: BookCheckWish): Drawing {
  const width = headings.length;
  const byLevel = findingLevels.map((level) => findings.filter((found) => found.level === level));
  const [stops = [], warnings = [], notes = []] = byLevel;
  const counts = `${warnings.length} warnings, ${notes.length} notes`;
  const rows: readonly DrawnRow[] = [
    wordsRow("Kit book check", "title", width, { height: 26 }),
    stops.length > 0
      ? wordsRow(
          `${book}: ${stops.length} ${stops.length === 1 ? "STOP" : "STOPS"}, ${counts}. A row with a stop is left out of every count.`,
          "stop",
          width,
        )
      : wordsRow(`${book}: every row works. ${counts}.`, "subtitle", width),
    wordsRow(
      `Opening types: ${types.map(({ name, parts }) => `${name} (${parts} parts)`).join(", ")}.`,
      "subtitle",
      width,
    ),
    headingRow(headings),
    ...byLevel
      .flat()
      .map((finding) =>
        row(
          text(levelWords[finding.level], { look: finding.level }),
          text(findingCell(finding)),
          text(finding.found, { wrap: true }),
          text(finding.message, { wrap: true }),
        ),
      ),
    ...(connections.length === 0
      ? []
      : [
          blankRow,
          wordsRow("Bolts with their washers and nuts", "group", width),
          headingRow(boltHeadings),
          ...connections.map(boltRow),
        ]),
  ];
  return {
    name: "Kit book check",
    mark: { kind: "book-check", subject: "" },
    columnWidths: headings.map((column) => column.width),
    rows,
    frozenRows: 4,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: 3,
      subject: "",
      title: "Kit book check",
      caution,
    }),
  };
}

function boltRow({ source, items, joined, types, faults }: BookConnection): DrawnRow {
  const [bolt = "", ...others] = items;
  const checked = faults.length === 0 ? "fits" : "see above";
  return row(
    text(bolt, { wrap: true }),
    text(source.place === null ? rowName(source) : placeName(source.place)),
    text(others.join(" + "), { wrap: true }),
    text(`${joinedWords(joined)}: ${checked}. ${types.join(", ")}`, { wrap: true }),
  );
}
