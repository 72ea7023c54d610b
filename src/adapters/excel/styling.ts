/** Puts looks and number formats on cells. */
import type { CellStyle, LineStyle, SheetSnapshot } from "../../workbook/snapshot";
import { settingBytes, type Outbox } from "./outbox";
import { addressLists, runsByKey } from "./runs";

/** Sets every look of the sheet, one request's item for all cells that are alike. */
export async function putStyles(
  box: Outbox,
  sheet: Excel.Worksheet,
  { rows }: SheetSnapshot,
  styles: readonly CellStyle[],
): Promise<void> {
  const runs = runsByKey(rows.map((cells) => cells.map((cell) => cell?.style ?? null)));
  for (const [index, areas] of runs) {
    const style = styles[index];
    if (style === undefined) continue;
    for (const list of addressLists(areas)) {
      await box.room(12 * settingBytes + list.length);
      putStyle(sheet.getRanges(list).format, style);
    }
    // A line between the rows of an area is set on areas that have more than one.
    const tall = areas.filter(({ rows: count }) => count > 1);
    const between = style.lineBelow ?? style.lineAbove;
    if (between === undefined) continue;
    for (const list of addressLists(tall)) {
      await box.room(4 * settingBytes + list.length);
      putLine(sheet.getRanges(list).format, "InsideHorizontal", between);
    }
  }
}

/** Sets each number format area by area, or cell by cell where the areas are too many to pay. */
export async function putNumberFormats(
  box: Outbox,
  sheet: Excel.Worksheet,
  { rows }: SheetSnapshot,
  styles: readonly CellStyle[],
): Promise<void> {
  const codes = rows.map((cells) =>
    cells.map((cell) => {
      const style = cell?.style === undefined ? undefined : styles[cell.style];
      return style?.format ?? null;
    }),
  );
  for (const [code, areas] of runsByKey(codes)) {
    for (const { row, column, rows: count, columns } of areas) {
      await box.room(settingBytes + code.length);
      // One value for all cells of a range is allowed; the types know of grids only.
      const range = sheet.getRangeByIndexes(row, column, count, columns);
      range.numberFormat = code as unknown as string[][];
    }
  }
}

function putStyle(format: Excel.RangeFormat, style: CellStyle): void {
  const { font, fill } = format;
  if (style.font !== undefined) font.name = style.font;
  if (style.size !== undefined) font.size = style.size;
  if (style.bold === true) font.bold = true;
  if (style.italic === true) font.italic = true;
  if (style.underline === true) font.underline = "Single";
  if (style.strike === true) font.strikethrough = true;
  if (style.ink !== undefined) font.color = `#${style.ink}`;
  if (style.fill !== undefined) fill.color = `#${style.fill}`;
  if (style.align !== undefined) format.horizontalAlignment = across[style.align];
  if (style.indent === true) format.indentLevel = 1;
  if (style.alignDown !== undefined) format.verticalAlignment = down[style.alignDown];
  if (style.wrap === true) format.wrapText = true;
  if (style.lineAbove !== undefined) putLine(format, "EdgeTop", style.lineAbove);
  if (style.lineBelow !== undefined) putLine(format, "EdgeBottom", style.lineBelow);
  if (style.lineLeft !== undefined) putLine(format, "EdgeLeft", style.lineLeft);
  if (style.lineRight !== undefined) putLine(format, "EdgeRight", style.lineRight);
}

const across = { left: "Left", center: "Center", right: "Right" } as const;
const down = { top: "Top", middle: "Center", bottom: "Bottom" } as const;
const weights = { thin: "Thin", medium: "Medium", thick: "Thick" } as const;

function putLine(
  format: Excel.RangeFormat,
  edge: "EdgeTop" | "EdgeBottom" | "EdgeLeft" | "EdgeRight" | "InsideHorizontal",
  line: LineStyle,
): void {
  const border = format.borders.getItem(edge);
  border.style = "Continuous";
  border.weight = weights[line.weight];
  border.color = `#${line.ink}`;
}
