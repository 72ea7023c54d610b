/** A block of cells as plain text, as programs put it on the clipboard. */

/** The text as an HTML table; the empty text for one that is no block, but a single cell. */
export function tableOfText(text: string): string {
  const block = text.replace(/\r\n?/g, "\n").replace(/\n+$/, "");
  if (!/[\n\t]/.test(block)) return block === text ? "" : tableOf([[block]]);
  return tableOf(rowsOf(block));
}

/**
 * A cell of several lines stands in quotes, with its own quotes doubled. A quote alone is an inch or
 * a ditto mark, so nothing else is read that way.
 */
const cellOfLines = /"((?:[^"\n\t]|"")(?:[^"\t]|"")*)"(?=[\t\n]|$)/y;
const cellOfOneLine = /[^\t\n]*/y;

function rowsOf(block: string): string[][] {
  const rows: string[][] = [[]];
  for (let at = 0; at <= block.length; at += 1) {
    const cell = cellFrom(block, at);
    rows.at(-1)?.push(cell.text);
    at += cell.length;
    if (block[at] === "\n") rows.push([]);
  }
  return rows;
}

function cellFrom(block: string, at: number): { readonly text: string; readonly length: number } {
  cellOfLines.lastIndex = at;
  const [quoted, inner = ""] = cellOfLines.exec(block) ?? [];
  if (quoted !== undefined && inner.includes("\n")) {
    return { text: inner.replaceAll('""', '"'), length: quoted.length };
  }
  cellOfOneLine.lastIndex = at;
  const [text = ""] = cellOfOneLine.exec(block) ?? [];
  return { text, length: text.length };
}

const tableOf = (rows: readonly (readonly string[])[]): string => {
  const lines = rows.map(
    (cells) => `<tr>${cells.map((text) => `<td>${words(text)}</td>`).join("")}</tr>`,
  );
  return `<table>${lines.join("")}</table>`;
};

const words = (text: string): string =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll("\n", "<br>");
