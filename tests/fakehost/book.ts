/**
 * The fake workbook as plain data, and what happens to it. Its semantics are ours, written after
 * Excel's documented behaviour; what was never tried in real Excel is on the list of manual checks.
 */
import { allColumns, cellKey, contains, keyColumn, keyRow, type Area } from "./areas";
import { evaluate, type FakeValue } from "./evaluate";
import {
  referenceArea,
  tokens,
  withSheetGone,
  withSheetRenamed,
  withTableRenamed,
} from "./formulaText";
import { badArgument, denied, notThere, refuse } from "./hostObject";

export type FakeCell = {
  /** The empty text is a blank cell. A formula's cell is calculated when it is read. */
  value: FakeValue;
  formula: string | null;
  format: string;
  style: Record<string, unknown>;
  validation: Record<string, unknown> | null;
};

export type FakeSheet = {
  readonly id: string;
  name: string;
  visibility: "Visible" | "Hidden" | "VeryHidden";
  isProtected: boolean;
  readonly cells: Map<number, FakeCell>;
  readonly columnWidths: Map<number, number>;
  readonly rowHeights: Map<number, number>;
  readonly hiddenRows: Set<number>;
  readonly hiddenColumns: Set<number>;
  /** Rows that a filter hides. */
  readonly filteredRows: Set<number>;
  hasFilter: boolean;
  merges: Area[];
  frozen: Area | null;
  readonly page: Record<string, unknown>;
  readonly headers: Record<string, unknown>;
  readonly looks: Record<string, unknown>;
  titleRows: Area | null;
  printArea: Area | null;
  breaks: number[];
  readonly notes: Map<number, string>;
  readonly comments: Map<number, string>;
  shapes: FakeShape[];
  charts: FakeChart[];
};

/** `image` is the picture's bytes in base64, `null` for what is no image. */
export type FakeShape = {
  readonly id: string;
  name: string;
  readonly image: string | null;
  readonly looks: Record<string, unknown>;
};

export type FakeSeries = {
  readonly looks: Record<string, unknown>;
  /** Addresses with their sheets. */
  values: string;
  names: string;
};

export type FakeChart = {
  readonly id: string;
  name: string;
  /** Of the chart, its title, its legend and its axes, by their paths. */
  readonly looks: Record<string, unknown>;
  series: FakeSeries[];
};

export type FakeTable = {
  readonly id: string;
  name: string;
  readonly sheet: FakeSheet;
  /** With its heading row, and its total row if it shows one. */
  area: Area;
  readonly looks: Record<string, unknown>;
};

export type FakeName = {
  readonly name: string;
  formula: string;
  visible: boolean;
  comment: string;
  /** `null` is the workbook's scope. */
  readonly sheet: FakeSheet | null;
};

export type FakePart = { readonly id: string; xml: string };

export type FakeBook = {
  name: string;
  sheets: FakeSheet[];
  active: FakeSheet;
  /** A chart sheet, which is no worksheet, is in front. */
  chartInFront: boolean;
  selection: Area[];
  tables: FakeTable[];
  names: FakeName[];
  parts: FakePart[];
  readonly settings: Map<string, unknown>;
  structureProtected: boolean;
  /** Without a printer some hosts refuse to set up a page. */
  hasPrinter: boolean;
  /** Some hosts take no images, or make no charts. */
  takesImages: boolean;
  makesCharts: boolean;
  count: number;
};

export function newBook(...sheetNames: readonly [string, ...string[]]): FakeBook {
  const [first, ...others] = sheetNames;
  const sheet = newSheet("{S1}", first);
  const book: FakeBook = {
    name: "Job.xlsx",
    sheets: [sheet],
    active: sheet,
    chartInFront: false,
    selection: [{ row: 0, column: 0, rows: 1, columns: 1 }],
    tables: [],
    names: [],
    parts: [],
    settings: new Map(),
    structureProtected: false,
    hasPrinter: true,
    takesImages: true,
    makesCharts: true,
    count: 1,
  };
  for (const name of others) addSheet(book, name);
  return book;
}

const newSheet = (id: string, name: string): FakeSheet => ({
  id,
  name,
  visibility: "Visible",
  isProtected: false,
  cells: new Map(),
  columnWidths: new Map(),
  rowHeights: new Map(),
  hiddenRows: new Set(),
  hiddenColumns: new Set(),
  filteredRows: new Set(),
  hasFilter: false,
  merges: [],
  frozen: null,
  page: { orientation: "Portrait", zoom: { scale: 100 } },
  headers: {},
  looks: { showGridlines: true, tabColor: "" },
  titleRows: null,
  printArea: null,
  breaks: [],
  notes: new Map(),
  comments: new Map(),
  shapes: [],
  charts: [],
});

export const blankCell = (): FakeCell => ({
  value: "",
  formula: null,
  format: "General",
  style: {},
  validation: null,
});

/** A fresh identifier in the style of real ones. */
export const nextId = (book: FakeBook, letter: string): string => `{${letter}${++book.count}}`;

const sameName = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

export const findSheet = (book: FakeBook, key: string): FakeSheet | undefined =>
  book.sheets.find((sheet) => sheet.id === key || sameName(sheet.name, key));

/** The cell to write to. */
export function cellOf(sheet: FakeSheet, row: number, column: number): FakeCell {
  const key = cellKey(row, column);
  const known = sheet.cells.get(key);
  if (known !== undefined) return known;
  const cell = blankCell();
  sheet.cells.set(key, cell);
  return cell;
}

export const isEmpty = (cell: FakeCell): boolean => cell.value === "" && cell.formula === null;

/** The area with anything in it, formats too unless `valuesOnly`. */
export function usedArea(sheet: FakeSheet, valuesOnly = false): Area | null {
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
  for (const [key, cell] of sheet.cells) {
    if (valuesOnly && isEmpty(cell)) continue;
    const [row, column] = [keyRow(key), keyColumn(key)];
    top = Math.min(top, row);
    left = Math.min(left, column);
    bottom = Math.max(bottom, row);
    right = Math.max(right, column);
  }
  if (bottom < 0) return null;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** The value as it shows, formulas calculated. */
export function shownAt(book: FakeBook, sheet: FakeSheet, row: number, column: number): FakeValue {
  const cell = sheet.cells.get(cellKey(row, column));
  if (cell === undefined) return "";
  if (cell.formula === null) return cell.value;
  const work = calculating.get(book) ?? { busy: new Set(), done: null, circles: 0 };
  calculating.set(book, work);
  const known = work.done?.get(cell);
  if (known !== undefined) return known;
  if (work.busy.has(cell)) {
    work.circles += 1;
    return 0;
  }
  work.busy.add(cell);
  const { circles } = work;
  try {
    const value = evaluate(cell.formula, surroundings(book, sheet, row));
    if (work.circles === circles) work.done?.set(cell, value);
    return value;
  } finally {
    work.busy.delete(cell);
  }
}

/** Looks at the book while nothing in it changes: each formula is calculated once. */
export function whileStill<T>(book: FakeBook, look: () => T): T {
  const before = calculating.get(book);
  calculating.set(book, { busy: new Set(), done: before?.done ?? new Map(), circles: 0 });
  try {
    return look();
  } finally {
    if (before === undefined) calculating.delete(book);
    else calculating.set(book, before);
  }
}

type Calculation = {
  readonly busy: Set<FakeCell>;
  /** What is known of cells, where the book stands still. */
  readonly done: Map<FakeCell, FakeValue> | null;
  /** How often a formula came back to itself. */
  circles: number;
};

const calculating = new WeakMap<FakeBook, Calculation>();

const surroundings = (
  book: FakeBook,
  own: FakeSheet,
  row: number,
): Parameters<typeof evaluate>[1] => {
  const sheetOf = (name: string | null): FakeSheet | undefined =>
    name === null ? own : findSheet(book, name);
  return {
    used: (name) => {
      const sheet = sheetOf(name);
      return sheet === undefined ? null : usedArea(sheet, true);
    },
    values: (name, area) => {
      const sheet = sheetOf(name);
      if (sheet === undefined) return null;
      return Array.from({ length: area.rows }, (_, down) =>
        Array.from({ length: area.columns }, (__, right) =>
          shownAt(book, sheet, area.row + down, area.column + right),
        ),
      );
    },
    structured: (table, inside) => structuredArea(book, own, row, table, inside),
    named: (name) =>
      book.names.find((each) => sameName(each.name, name) && each.sheet === null)?.formula ?? null,
  };
};

function structuredArea(
  book: FakeBook,
  own: FakeSheet,
  row: number,
  name: string,
  inside: string,
): { sheet: string; area: Area } | null {
  const table =
    name === ""
      ? book.tables.find((each) => each.sheet === own && contains(each.area, row, each.area.column))
      : book.tables.find((each) => sameName(each.name, name));
  if (table === undefined) return null;
  const thisRow = inside.startsWith("@") || /#this row/i.test(inside);
  const heading = inside.replace(/^@|^\[#This Row\],?|^\[|\]$/gi, "").replace(/^\[|\]$/g, "");
  const headings = tableHeadings(table);
  const column = headings.findIndex((each) => sameName(each, heading));
  if (column < 0 && heading !== "") return null;
  const { area } = table;
  return {
    sheet: table.sheet.name,
    area: {
      row: thisRow ? row : area.row + 1,
      column: area.column + Math.max(column, 0),
      rows: thisRow ? 1 : area.rows - 1,
      columns: heading === "" ? area.columns : 1,
    },
  };
}

export const tableHeadings = (table: FakeTable): string[] =>
  Array.from({ length: table.area.columns }, (_, column) => {
    const value = table.sheet.cells.get(cellKey(table.area.row, table.area.column + column))?.value;
    return typeof value === "string" ? value : "";
  });

/** Refuses what real Excel refuses in a formula: sheets and tables that are not there. */
export function checkFormula(book: FakeBook, formula: string): void {
  for (const token of tokens(formula)) {
    if (token.kind === "reference") {
      const { sheet } = token.reference;
      if (sheet !== null && findSheet(book, sheet) === undefined) badArgument();
      if (referenceArea(token.reference) === null && !token.text.includes("#REF!")) badArgument();
    }
    const isNamed = token.kind === "structured" && token.table !== "";
    if (isNamed && !book.tables.some(({ name }) => sameName(name, token.table))) badArgument();
  }
  if ((formula.match(/\(/g) ?? []).length !== (formula.match(/\)/g) ?? []).length) badArgument();
}

/** Rewrites every formula of the workbook: in cells, names and drop-downs. */
export function changeFormulas(
  book: FakeBook,
  change: (formula: string, own: FakeSheet | null) => string,
): void {
  for (const sheet of book.sheets) {
    for (const cell of sheet.cells.values()) {
      if (cell.formula !== null) cell.formula = change(cell.formula, sheet);
      const source = listSource(cell);
      if (source?.startsWith("=") === true) {
        cell.validation = {
          rule: { list: { inCellDropDown: true, source: change(source, sheet) } },
        };
      }
    }
  }
  for (const name of book.names) name.formula = change(name.formula, name.sheet);
  for (const { charts } of book.sheets) {
    for (const series of charts.flatMap((chart) => chart.series)) {
      series.values = change(series.values, null);
      series.names = change(series.names, null);
    }
  }
}

export function listSource(cell: FakeCell): string | null {
  const rule = cell.validation?.["rule"] as { list?: { source?: unknown } } | undefined;
  return typeof rule?.list?.source === "string" ? rule.list.source : null;
}

function checkSheetName(book: FakeBook, name: string, except?: FakeSheet): void {
  if (
    name === "" ||
    name.length > 31 ||
    /[\\/?*:[\]]|^'|'$/.test(name) ||
    sameName(name, "history")
  ) {
    badArgument();
  }
  const taken = book.sheets.find((sheet) => sheet !== except && sameName(sheet.name, name));
  if (taken !== undefined) {
    refuse("ItemAlreadyExists", "A resource with the same name or identifier already exists.");
  }
}

export function addSheet(book: FakeBook, wanted?: string): FakeSheet {
  if (book.structureProtected) denied();
  const name = wanted ?? freeName(book, "Sheet", "");
  checkSheetName(book, name);
  const sheet = newSheet(nextId(book, "S"), name);
  book.sheets.push(sheet);
  return sheet;
}

const freeName = (book: FakeBook, start: string, end: string): string => {
  for (let count = end === "" ? 1 : 2; ; count++) {
    const name = `${start}${count}${end}`;
    if (findSheet(book, name) === undefined) return name;
  }
};

export function renameSheet(book: FakeBook, sheet: FakeSheet, name: string): void {
  if (book.structureProtected) denied();
  checkSheetName(book, name, sheet);
  const old = sheet.name;
  sheet.name = name;
  changeFormulas(book, (formula) => withSheetRenamed(formula, old, name));
}

const otherVisible = (book: FakeBook, sheet: FakeSheet): FakeSheet | undefined =>
  book.sheets.find((each) => each !== sheet && each.visibility === "Visible");

export function setVisibility(book: FakeBook, sheet: FakeSheet, value: unknown): void {
  if (book.structureProtected) denied();
  if (value !== "Visible" && value !== "Hidden" && value !== "VeryHidden") return badArgument();
  const other = otherVisible(book, sheet);
  if (value !== "Visible" && other === undefined) {
    return refuse("InvalidOperation", "The last visible sheet cannot be hidden.");
  }
  sheet.visibility = value;
  if (value !== "Visible" && book.active === sheet && other !== undefined) book.active = other;
}

/**
 * A very hidden sheet has to be hidden or shown first. (Source: API reference of `Excel.Worksheet`,
 * `delete`.)
 */
export function deleteSheet(book: FakeBook, sheet: FakeSheet): void {
  if (book.structureProtected) denied();
  if (sheet.visibility === "VeryHidden") {
    refuse("InvalidOperation", "The operation attempted is invalid on the object.");
  }
  const other = otherVisible(book, sheet);
  if (other === undefined) {
    return refuse("InvalidOperation", "The last visible sheet cannot be deleted.");
  }
  if (!book.sheets.includes(sheet)) notThere();
  book.sheets = book.sheets.filter((each) => each !== sheet);
  for (const table of book.tables.filter((each) => each.sheet === sheet)) dropTable(book, table);
  book.names = book.names.filter((name) => name.sheet !== sheet);
  changeFormulas(book, (formula) => withSheetGone(formula, sheet.name));
  if (book.active === sheet) book.active = other;
}

export function moveSheet(book: FakeBook, sheet: FakeSheet, position: number): void {
  if (book.structureProtected) denied();
  const others = book.sheets.filter((each) => each !== sheet);
  if (position < 0 || position > others.length) badArgument();
  others.splice(position, 0, sheet);
  book.sheets = others;
}

/**
 * A copy as Excel makes it: tables get other names, formulas that name the sheet name the copy, and
 * names of the workbook's scope that refer to the sheet are copied into the copy's own scope.
 */
export function copySheet(book: FakeBook, sheet: FakeSheet, position: number): FakeSheet {
  if (book.structureProtected) denied();
  const base = sheet.name.replace(/ \(\d+\)$/, "").slice(0, 26);
  const name = freeName(book, `${base} (`, ")");
  const copy: FakeSheet = { ...structuredClone(sheet), id: nextId(book, "S"), name };
  const own = (formula: string): string => withSheetRenamed(formula, sheet.name, name);
  for (const cell of copy.cells.values()) {
    if (cell.formula !== null) cell.formula = own(cell.formula);
  }
  copy.shapes = copy.shapes.map((shape) => ({ ...shape, id: nextId(book, "P") }));
  copy.charts = copy.charts.map((chart) => ({
    ...chart,
    id: nextId(book, "C"),
    series: chart.series.map((each) => ({
      ...each,
      values: own(each.values),
      names: own(each.names),
    })),
  }));
  book.sheets.splice(position, 0, copy);
  for (const table of book.tables.filter((each) => each.sheet === sheet)) {
    const looks = structuredClone(table.looks);
    const tableName = freeTableName(book, table.name);
    book.tables.push({
      id: nextId(book, "T"),
      name: tableName,
      sheet: copy,
      area: table.area,
      looks,
    });
    for (const cell of copy.cells.values()) {
      if (cell.formula !== null) {
        cell.formula = withTableRenamed(cell.formula, table.name, tableName);
      }
    }
  }
  for (const each of [...book.names]) {
    const refers = tokens(each.formula).some(
      (token) => token.kind === "reference" && sameName(token.reference.sheet ?? "", sheet.name),
    );
    if (each.sheet === sheet || (each.sheet === null && refers)) {
      book.names.push({ ...each, sheet: copy, formula: own(each.formula) });
    }
  }
  return copy;
}

export function freeTableName(book: FakeBook, start: string): string {
  for (let count = 2; ; count++) {
    const name = `${start}${count}`;
    if (!book.tables.some((table) => sameName(table.name, name))) return name;
  }
}

/** Deletes the table and leaves its cells: structured references to it break. */
export function dropTable(book: FakeBook, table: FakeTable): void {
  book.tables = book.tables.filter((each) => each !== table);
  changeFormulas(book, (formula) => withTableRenamed(formula, table.name, null));
}

/** Fills blank headings and tells equal ones apart, as Excel does after each change. */
export function fixHeadings(table: FakeTable): void {
  const seen = new Set<string>();
  for (let column = 0; column < table.area.columns; column++) {
    const cell = cellOf(table.sheet, table.area.row, table.area.column + column);
    const typed = cell.value;
    let text = typeof typed === "object" ? typed.error : String(typed);
    if (text === "") text = `Column${column + 1}`;
    for (let count = 2; seen.has(text.toLowerCase()); count++) text = `${text}${count}`;
    seen.add(text.toLowerCase());
    cell.value = text;
    cell.formula = null;
  }
}

/** Each cell of the area that holds something, by row. */
export function* cellsIn(sheet: FakeSheet, area: Area): Generator<[key: number, cell: FakeCell]> {
  if (area.rows * area.columns > sheet.cells.size) {
    for (const [key, cell] of sheet.cells) {
      if (contains(area, keyRow(key), keyColumn(key))) yield [key, cell];
    }
    return;
  }
  for (let row = area.row; row < area.row + area.rows; row++) {
    for (let column = area.column; column < area.column + area.columns; column++) {
      const key = row * allColumns + column;
      const cell = sheet.cells.get(key);
      if (cell !== undefined) yield [key, cell];
    }
  }
}
