/** Ranges of the fake host: what `Excel.Range` can do, as far as Cribsheet uses it. */
import { sheetReference } from "../../src/core/base/cell";
import {
  allColumns,
  allRows,
  areaAddress,
  around,
  checkedArea,
  parseArea,
  within,
  type Area,
} from "./areas";
import {
  cellOf,
  cellsIn,
  fixHeadings,
  shownAt,
  whileStill,
  usedArea,
  type FakeCell,
  type FakeSheet,
} from "./book";
import { copyCells } from "./copyCells";
import { enter } from "./entry";
import { formatObject } from "./formatObject";
import {
  badArgument,
  denied,
  hostObject,
  isHostObject,
  nothing,
  recordOf,
  refuse,
  textOf,
  wholeOf,
  type HostObject,
} from "./hostObject";
import { overlap } from "./areas";
import { shiftRows } from "./shiftRows";
import { sheetObject } from "./sheetObject";
import { tell, type World } from "./world";

/** Where a range object is; other objects take ranges as arguments. */
const places = new WeakMap<HostObject, { readonly sheet: FakeSheet; readonly area: Area }>();

export const placeOf = (value: unknown): { sheet: FakeSheet; area: Area } =>
  (isHostObject(value) ? places.get(value) : undefined) ?? badArgument();

/** A range as an argument: an object, or an address on `sheet`. */
export const rangeArgument = (
  sheet: FakeSheet,
  value: unknown,
): { sheet: FakeSheet; area: Area } =>
  typeof value === "string" ? { sheet, area: parseArea(value) } : placeOf(value);

export function rangeObject(world: World, sheet: FakeSheet, area: Area): HostObject {
  const { book } = world;
  const { row, column, rows, columns } = checkedArea(area);
  const at = (place: Partial<Area>): HostObject => rangeObject(world, sheet, { ...area, ...place });
  const bounded = (): void => {
    if (rows === allRows || columns === allColumns || rows * columns > 5_000_000) {
      refuse("InvalidOperation", "The range is too large.");
    }
  };
  const grid = (read: (row: number, column: number, cell: FakeCell | undefined) => unknown) => {
    bounded();
    return whileStill(book, () =>
      Array.from({ length: rows }, (_, down) =>
        Array.from({ length: columns }, (__, right) =>
          read(
            row + down,
            column + right,
            sheet.cells.get((row + down) * allColumns + column + right),
          ),
        ),
      ),
    );
  };
  const changed = (): void => {
    for (const table of book.tables) {
      if (table.sheet === sheet && overlap(table.area, { ...area, rows: Math.max(rows, 1) })) {
        fixHeadings(table);
      }
    }
    tell(world, "changed", sheet, area);
  };
  /** One value for all cells, or a grid of the range's own shape; `null` leaves a cell alone. */
  const write = (values: unknown, use: (cell: FakeCell, value: unknown) => void): void => {
    if (sheet.isProtected) denied();
    bounded();
    const table = Array.isArray(values) ? (values as unknown[]) : null;
    if (table !== null) checkShape(table, rows, columns);
    for (let down = 0; down < rows; down++) {
      const line = table?.[down] as readonly unknown[] | undefined;
      for (let right = 0; right < columns; right++) {
        const value = line === undefined ? values : line[right];
        if (value !== null) use(cellOf(sheet, row + down, column + right), value);
      }
    }
  };
  const shown = (down: number, right: number): unknown => {
    const value = shownAt(book, sheet, down, right);
    return typeof value === "object" ? value.error : value;
  };
  const used = (valuesOnly: unknown): HostObject | null => {
    const found = usedArea(sheet, valuesOnly === true);
    const part = found === null ? null : within(found, area);
    return part === null ? null : at(part);
  };
  const range = hostObject({
    kind: "range",
    get: {
      address: () => `${sheetReference(sheet.name)}!${areaAddress(area)}`,
      rowIndex: () => row,
      columnIndex: () => column,
      rowCount: () => rows,
      columnCount: () => columns,
      cellCount: () => rows * columns,
      left: () => pointsBefore(column, sheet.columnWidths, sheet.hiddenColumns, usualWidth),
      top: () => pointsBefore(row, sheet.rowHeights, sheet.hiddenRows, usualHeight),
      values: () => grid((down, right) => shown(down, right)),
      text: () => grid((down, right) => String(shown(down, right))),
      formulas: () => grid((down, right, cell) => cell?.formula ?? shown(down, right)),
      numberFormat: () => grid((_, __, cell) => cell?.format ?? "General"),
      valueTypes: () =>
        grid((down, right, cell) => valueType(shownAt(book, sheet, down, right), cell)),
      rowHidden: () => hidden(rows, (index) => sheet.hiddenRows.has(row + index)),
      columnHidden: () => hidden(columns, (index) => sheet.hiddenColumns.has(column + index)),
    },
    set: {
      values: (values) => {
        write(values, (cell, value) => enter(book, cell, value));
        changed();
      },
      formulas: (values) => {
        write(values, (cell, value) => enter(book, cell, value));
        changed();
      },
      numberFormat: (values) => write(values, (cell, value) => (cell.format = textOf(value))),
      rowHidden: (value) => setHidden(sheet, sheet.hiddenRows, row, rows, value),
      columnHidden: (value) => setHidden(sheet, sheet.hiddenColumns, column, columns, value),
    },
    link: {
      worksheet: () => sheetObject(world, sheet),
      format: () => formatObject(sheet, [area]),
      dataValidation: () => validationObject(sheet, [area]),
    },
    call: {
      getCell: (down, right) =>
        at({ row: row + wholeOf(down), column: column + wholeOf(right), rows: 1, columns: 1 }),
      getRow: (index) => at({ row: row + wholeOf(index), rows: 1 }),
      getColumn: (index) => at({ column: column + wholeOf(index), columns: 1 }),
      getResizedRange: (down, right) =>
        at({ rows: rows + wholeOf(down), columns: columns + wholeOf(right) }),
      getAbsoluteResizedRange: (down, right) =>
        at({ rows: wholeOf(down), columns: wholeOf(right) }),
      getOffsetRange: (down, right) =>
        at({ row: row + wholeOf(down), column: column + wholeOf(right) }),
      getLastRow: () => at({ row: row + rows - 1, rows: 1 }),
      getEntireRow: () => at({ column: 0, columns: allColumns }),
      getEntireColumn: () => at({ row: 0, rows: allRows }),
      getBoundingRect: (other) => at(around(area, rangeArgument(sheet, other).area)),
      getUsedRange: (valuesOnly) => used(valuesOnly) ?? at({ rows: 1, columns: 1 }),
      getUsedRangeOrNullObject: (valuesOnly) => used(valuesOnly) ?? nothing,
      clear: () => {
        if (sheet.isProtected) denied();
        for (const [key] of [...cellsIn(sheet, area)]) sheet.cells.delete(key);
        sheet.merges = sheet.merges.filter((merge) => !overlap(merge, area));
        changed();
      },
      copyFrom: (source, kind, skipBlanks, transpose) => {
        if (sheet.isProtected) denied();
        if (skipBlanks === true || transpose === true) badArgument("Not in the fake.");
        const from = rangeArgument(sheet, source);
        copyCells(from.sheet, from.area, sheet, area, textOf(kind ?? "All"));
        changed();
      },
      merge: (across = false) => {
        if (sheet.isProtected) denied();
        if (across === true) badArgument("Not in the fake.");
        sheet.merges = [...sheet.merges.filter((merge) => !overlap(merge, area)), area];
        for (const [key, cell] of [...cellsIn(sheet, area)]) {
          if (key !== row * allColumns + column) Object.assign(cell, { value: "", formula: null });
        }
      },
      unmerge: () => {
        if (sheet.isProtected) denied();
        sheet.merges = sheet.merges.filter((merge) => !overlap(merge, area));
      },
      delete: (direction) => {
        if (direction !== "Up") badArgument("Not in the fake.");
        shiftRows(world, sheet, row, -rows, { column, columns });
      },
      insert: (direction) => {
        if (direction !== "Down") badArgument("Not in the fake.");
        shiftRows(world, sheet, row, rows, { column, columns });
        return range;
      },
      select: () => {
        if (sheet.visibility !== "Visible") refuse("InvalidOperation", "The sheet is hidden.");
        book.active = sheet;
        book.selection = [area];
        tell(world, "selectionChanged", sheet, area);
      },
      _ValidateArraySize: (height, width) => {
        if (height !== rows || width !== columns) badShape();
      },
    },
  });
  places.set(range, { sheet, area });
  return range;
}

const badShape = (): never =>
  badArgument(
    "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
  );

function checkShape(table: readonly unknown[], rows: number, columns: number): void {
  const fits =
    table.length === rows && table.every((line) => Array.isArray(line) && line.length === columns);
  if (!fits) badShape();
}

const valueType = (value: unknown, cell: FakeCell | undefined): string => {
  if (value === "") return (cell?.formula ?? null) === null ? "Empty" : "String";
  if (typeof value === "object") return "Error";
  return typeof value === "number" ? "Double" : typeof value === "boolean" ? "Boolean" : "String";
};

const hidden = (count: number, isHidden: (index: number) => boolean): boolean | null => {
  const found = new Set(
    Array.from({ length: Math.min(count, 2000) }, (_, index) => isHidden(index)),
  );
  return found.size === 1 ? found.has(true) : null;
};

function setHidden(
  sheet: FakeSheet,
  set: Set<number>,
  first: number,
  count: number,
  value: unknown,
): void {
  if (sheet.isProtected) denied();
  for (let index = first; index < first + count; index++) {
    if (value === true) set.add(index);
    else set.delete(index);
  }
}

/** Several ranges of one sheet as one: `Excel.RangeAreas`. */
export function areasObject(world: World, sheet: FakeSheet, areas: readonly Area[]): HostObject {
  return hostObject({
    kind: "areas",
    get: {
      address: () =>
        areas.map((area) => `${sheetReference(sheet.name)}!${areaAddress(area)}`).join(","),
      areaCount: () => areas.length,
    },
    link: {
      worksheet: () => sheetObject(world, sheet),
      format: () => formatObject(sheet, areas),
      dataValidation: () => validationObject(sheet, areas),
      areas: () => {
        const ranges = areas.map((area) => rangeObject(world, sheet, area));
        return hostObject({
          kind: "ranges",
          items: () => ranges,
          call: { getItemAt: (index) => ranges[wholeOf(index)] ?? badArgument() },
        });
      },
    },
  });
}

function validationObject(sheet: FakeSheet, areas: readonly Area[]): HostObject {
  const change = (name: string) => (value: unknown) => {
    if (sheet.isProtected) denied();
    const record = recordOf(value);
    if (name === "rule") checkRule(record);
    for (const area of areas) {
      for (let down = 0; down < area.rows; down++) {
        for (let right = 0; right < area.columns; right++) {
          const cell = cellOf(sheet, area.row + down, area.column + right);
          cell.validation = { ...cell.validation, [name]: record };
        }
      }
    }
  };
  return hostObject({
    kind: "validation",
    set: { rule: change("rule"), prompt: change("prompt"), errorAlert: change("errorAlert") },
    call: {
      clear: () => {
        for (const area of areas)
          for (const [, cell] of cellsIn(sheet, area)) cell.validation = null;
      },
    },
  });
}

/** A list that is typed out holds at most 255 characters. */
function checkRule(rule: Record<string, unknown>): void {
  const list = rule["list"];
  if (list === undefined) return;
  const source = recordOf(list)["source"];
  if (typeof source !== "string" || source === "" || source.length > 255) badArgument();
}

/** Points of a column and of a row that nobody gave another size. */
const usualWidth = 48;
const usualHeight = 15;

/** How far from the sheet's edge a row or a column begins. */
function pointsBefore(
  index: number,
  sizes: ReadonlyMap<number, number>,
  hidden: ReadonlySet<number>,
  usual: number,
): number {
  let points = 0;
  for (let before = 0; before < index; before++) {
    if (!hidden.has(before)) points += sizes.get(before) ?? usual;
  }
  return points;
}
