/** Spreadsheet tables: a part each. */
import type { DrawnTable } from "../../workbook/drawing";
import { rangeName, readRange } from "./cellRange";
import { neededText, type Parts } from "./parts";
import { relationshipsOf, xmlStart } from "./relationships";
import { readWorkbookPart } from "./workbookPart";
import { escapeXml, parseXml } from "./xml";

/** A table's place; its totals row, where it has one, is not part of it. */
export function readTable(parts: Parts, path: string): DrawnTable {
  const {
    name,
    displayName,
    ref = "",
    totalsRowCount = "0",
  } = parseXml(neededText(parts, path)).attributes;
  const { row, column, rows, columns } = readRange(ref);
  return {
    name: displayName ?? name ?? "",
    headingRow: row,
    lastRow: Math.max(row, row + rows - 1 - Number(totalsRowCount)),
    firstColumn: column,
    lastColumn: column + columns - 1,
  };
}

/** The names that no new table may have, and the highest number of the tables there are. */
export function tablesOfFile(parts: Parts): {
  readonly names: readonly string[];
  readonly lastId: number;
} {
  const { sheets, names } = readWorkbookPart(parts);
  const tables = sheets
    .flatMap(({ path }) => relationshipsOf(parts, path))
    .filter(({ type }) => type === "table")
    .map(({ target }) => parseXml(neededText(parts, target)).attributes);
  return {
    // Tables and defined names share one set of names.
    names: [
      ...tables.flatMap(({ name = "", displayName = name }) => [name, displayName]),
      ...names.map(({ name }) => name),
    ],
    lastId: tables.reduce((most, { id = "0" }) => Math.max(most, Number(id)), 0),
  };
}

/**
 * The part of `table`. `headings` are the texts of its heading row: a table's columns must be called
 * what their headings say, each differently, so a blank or repeated one is refused.
 *
 * @throws RangeError on a blank or repeated heading, or a table without a row below its headings.
 */
export function tableXml(table: DrawnTable, id: number, headings: readonly string[]): string {
  const { name, headingRow, lastRow, firstColumn, lastColumn } = table;
  const seen = new Set(headings.map((heading) => heading.toLowerCase()));
  if (seen.size < headings.length || seen.has("") || headings.length <= lastColumn - firstColumn) {
    throw new RangeError(`Table ${name}: each column needs a heading of its own.`);
  }
  if (lastRow <= headingRow) throw new RangeError(`Table ${name} has no row below its headings.`);
  const ref = rangeName({
    row: headingRow,
    column: firstColumn,
    rows: lastRow - headingRow + 1,
    columns: lastColumn - firstColumn + 1,
  });
  const columns = headings.map(
    (heading, index) => `<tableColumn id="${index + 1}" name="${escapeHeading(heading)}"/>`,
  );
  return `${xmlStart}<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${id}" name="${escapeXml(name)}" displayName="${escapeXml(name)}" ref="${ref}" totalsRowShown="0"><autoFilter ref="${ref}"/><tableColumns count="${columns.length}">${columns.join("")}</tableColumns><tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>`;
}

/** A line break within a heading is written `_x000a_`. */
const escapeHeading = (heading: string): string => escapeXml(heading).replaceAll("\n", "_x000a_");
