/** A revision: what changed from one count to a later one, and what that means in hardware and money. */
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { blankRow, bandRow, text, wordsRow } from "../cells";
import { caution } from "../caution";
import { titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { lineRows, orderedRows, sumRows } from "./revisionHardware";
import { openingRows } from "./revisionOpenings";
import { revisionWidths, type RevisionWish } from "./revisionWish";
import { doubtTexts, summaryText } from "./revisionWords";

/** A sheet of ours for these two counts: a later comparison of the same two takes its place. */
export function revisionSheet(wish: RevisionWish): Drawing {
  const { from, to, comparison } = wish;
  const width = revisionWidths.length;
  const title = `Changes from ${from} to ${to}`;
  const rows: DrawnRow[] = [
    titleRow(title, revisionWidths),
    wordsRow(
      sentence(summaryText(comparison, wish.withCosts ? wish.currency : null)),
      "subtitle",
      width,
    ),
    ...doubtTexts(wish).map((words) => wordsRow(words, "warn", width)),
    wordsRow(caution, "caution", width),
    blankRow,
  ];
  const part = (words: string, content: readonly DrawnRow[]): void => {
    rows.push(bandRow("group", width, { 0: text(words) }), ...content, blankRow);
  };
  part("Openings", openingRows(wish));
  const { lines, items, jobs } = comparison.hardware;
  if (lines.length > 0) part("Hardware by job", sumRows("Job", jobs, wish));
  if (wish.ordered.length > 0) part("Ordered otherwise than needed now", orderedRows(wish));
  if (lines.length > 0) part("Hardware by item", sumRows("Item", items, wish));
  // The lines come last, so that their headings can stand on each page that they fill.
  const lineHeadings = rows.length + 1;
  part(
    "Hardware by line",
    lines.length === 0
      ? [wordsRow("No hardware differs.", "body", width)]
      : lineRows(wish, lineHeadings),
  );
  return {
    name: `Changes ${from} to ${to}`,
    mark: { kind: "changes", subject: `${from}|${to}` },
    columnWidths: [...revisionWidths],
    rows,
    frozenRows: 1,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: lines.length === 0 ? 0 : lineHeadings,
      subject: "",
      title,
      caution,
    }),
  };
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
