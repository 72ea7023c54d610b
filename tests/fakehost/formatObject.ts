/** The format of some areas of a sheet: fonts, fills, lines, alignment, sizes. */
import { cellsIn, cellOf, type FakeCell, type FakeSheet } from "./book";
import type { Area } from "./areas";
import { badArgument, denied, hostObject, textOf, type HostObject } from "./hostObject";

/** Points; a column has 255 characters at most. (Source: Microsoft's page on Excel specifications.) */
const highestRow = 409.5;
const widestColumn = (255 * 7 + 5) * 0.75;

const fontNames = ["bold", "italic", "underline", "strikethrough", "size", "name", "color"];

export function formatObject(sheet: FakeSheet, areas: readonly Area[]): HostObject {
  const part = (prefix: string, names: readonly string[]): HostObject =>
    hostObject({ kind: `format ${prefix}`, ...members(sheet, areas, prefix, names) });
  const sizes = (
    sizes: (sheet: FakeSheet) => Map<number, number>,
    start: (area: Area) => number,
    count: (area: Area) => number,
    standard: number,
    most: number,
  ): { get: () => unknown; set: (value: unknown) => void } => ({
    get: () => {
      const found = areas.flatMap((area) =>
        Array.from(
          { length: Math.min(count(area), 1000) },
          (_, index) => sizes(sheet).get(start(area) + index) ?? standard,
        ),
      );
      return new Set(found).size === 1 ? found[0] : null;
    },
    set: (value) => {
      if (sheet.isProtected) denied();
      if (typeof value !== "number" || value < 0 || value > most) return void badArgument();
      for (const area of areas) {
        for (let index = 0; index < count(area); index++) {
          sizes(sheet).set(start(area) + index, value);
        }
      }
    },
  });
  const width = sizes(
    (each) => each.columnWidths,
    ({ column }) => column,
    ({ columns }) => columns,
    48,
    widestColumn,
  );
  const height = sizes(
    (each) => each.rowHeights,
    ({ row }) => row,
    ({ rows }) => rows,
    15,
    highestRow,
  );
  const own = members(sheet, areas, "", [
    "wrapText",
    "horizontalAlignment",
    "verticalAlignment",
    "indentLevel",
  ]);
  return hostObject({
    kind: "format",
    get: { ...own.get, columnWidth: width.get, rowHeight: height.get },
    set: { ...own.set, columnWidth: width.set, rowHeight: height.set },
    link: {
      font: () => part("font.", fontNames),
      fill: () => part("fill.", ["color"]),
      protection: () => part("protection.", ["locked"]),
      borders: () =>
        hostObject({
          kind: "borders",
          call: {
            getItem: (edge) => borderObject(sheet, areas, textOf(edge)),
          },
        }),
    },
    call: {
      autofitColumns: () => null,
      autofitRows: () => {
        for (const { row, rows } of areas) {
          for (let index = row; index < row + rows; index++) sheet.rowHeights.delete(index);
        }
      },
    },
  });
}

/** Lines at an edge belong to the cells there; a line between rows to the cells on both sides. */
function borderObject(sheet: FakeSheet, areas: readonly Area[], edge: string): HostObject {
  const put = (area: Area, side: string, name: string, value: unknown): void => {
    for (let down = 0; down < area.rows; down++) {
      for (let right = 0; right < area.columns; right++) {
        const cell = cellOf(sheet, area.row + down, area.column + right);
        cell.style[`borders.${side}.${name}`] = value;
      }
    }
  };
  const set = (name: string) => (value: unknown) => {
    if (sheet.isProtected) denied();
    for (const area of areas) {
      const last = { ...area, row: area.row + area.rows - 1, rows: 1 };
      if (edge === "EdgeTop") put({ ...area, rows: 1 }, edge, name, value);
      else if (edge === "EdgeBottom") put(last, edge, name, value);
      else if (edge === "InsideHorizontal") {
        put({ ...area, rows: area.rows - 1 }, "EdgeBottom", name, value);
        put({ ...area, row: area.row + 1, rows: area.rows - 1 }, "EdgeTop", name, value);
      } else badArgument(`The fake has no line ${edge}.`);
    }
  };
  const names = ["style", "color", "weight"];
  return hostObject({
    kind: "border",
    set: Object.fromEntries(names.map((name) => [name, set(name)])),
  });
}

function members(
  sheet: FakeSheet,
  areas: readonly Area[],
  prefix: string,
  names: readonly string[],
): {
  readonly get: Record<string, () => unknown>;
  readonly set: Record<string, (value: unknown) => void>;
} {
  const every = (use: (cell: FakeCell) => void): void => {
    for (const { row, column, rows, columns } of areas) {
      if (rows * columns > 5_000_000) badArgument("The range is too large for the fake.");
      for (let down = 0; down < rows; down++) {
        for (let right = 0; right < columns; right++)
          use(cellOf(sheet, row + down, column + right));
      }
    }
  };
  const get = names.map((name): [string, () => unknown] => [
    name,
    () => {
      const found = new Set(
        areas.flatMap((area) =>
          Array.from(cellsIn(sheet, area), ([, cell]) => cell.style[prefix + name]),
        ),
      );
      return found.size === 1 ? ([...found][0] ?? null) : null;
    },
  ]);
  const set = names.map((name): [string, (value: unknown) => void] => [
    name,
    (value) => {
      if (sheet.isProtected) denied();
      every((cell) => (cell.style[prefix + name] = value));
    },
  ]);
  return { get: Object.fromEntries(get), set: Object.fromEntries(set) };
}
