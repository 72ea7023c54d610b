/** Rows as a text file with commas between the cells, which `readCsv` and any spreadsheet read back. */
import { cellText, type CellValue } from "../../core/base/cell";

/** What a spreadsheet would take for a formula, however many apostrophes stand before it. */
const formulaLike = /^'*[=+@\t\r-]/;

/**
 * UTF-8 with its mark, so that a spreadsheet reads it as that. Text that a spreadsheet would make a
 * formula of gets an apostrophe in front, which `readCsv` takes off again.
 */
export function writeCsv(rows: readonly (readonly CellValue[])[]): Uint8Array {
  const lines = rows.map((cells) => cells.map(csvCell).join(","));
  return new TextEncoder().encode(`\ufeff${lines.map((line) => `${line}\r\n`).join("")}`);
}

function csvCell(value: CellValue): string {
  const text = cellText(value);
  const safe = typeof value === "string" && formulaLike.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
