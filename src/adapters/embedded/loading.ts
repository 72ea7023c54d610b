/** Opens a snapshot in the grid, and takes a snapshot of what the grid holds. */
import {
  BooleanNumber,
  generateRandomId,
  IUniverInstanceService,
  LocaleType,
  UniverInstanceType,
  type Workbook as GridWorkbook,
  type Worksheet,
} from "@univerjs/core";
import { IDefinedNamesService, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { styleTable, type StyleTable } from "../../workbook/drawnSheet";
import type {
  CellSnapshot,
  DefinedName,
  Merge,
  SheetSnapshot,
  WorkbookSnapshot,
} from "../../workbook/snapshot";
import { openGridWorkbook, type Engine } from "./engine";
import { charactersWide, gridSheet, pointsHigh, type GridSheet } from "./gridSheet";
import { isSheetProtected, protectSheet } from "./protection";
import { bookCustom, readLeftOut, readSettings, sheetRecord } from "./records";
import { addParts, choicesOf, drawnTable, gridNotes, sheetIds, tablesOf } from "./sheetParts";
import { ownFreeze } from "./shownFreeze";
import { readSheet, type SheetReading } from "./sheetReading";
import { execute } from "./steps";
import { gridStyles, plainStyle } from "./styles";

/** Opens `snapshot` in place of what is open now, which is gone with its undo history. */
export function loadSnapshot(engine: Engine, snapshot: WorkbookSnapshot): void {
  const { univer, injector, commands, calculation } = engine;
  const instances = injector.get(IUniverInstanceService);
  const before = instances.getAllUnitsForType<GridWorkbook>(UniverInstanceType.UNIVER_SHEET);
  const unitId = generateRandomId(12);
  const sheets = snapshot.sheets.map((sheet) => ({ sheet, id: generateRandomId(8) }));
  calculation.expect();
  const styles = gridStyles(snapshot.styles);
  const made: Record<string, GridSheet> = Object.fromEntries(
    sheets.map(({ sheet, id }) => [id, gridSheet(sheet, id, styles)]),
  );
  const book = univer.createUnit<object, GridWorkbook>(UniverInstanceType.UNIVER_SHEET, {
    id: unitId,
    name: snapshot.name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: { ...styles.byId },
    sheetOrder: sheets.map(({ id }) => id),
    sheets: made,
    custom: bookCustom(snapshot),
  });
  for (const { name, formula } of snapshot.names) {
    const params = {
      unitId,
      id: generateRandomId(8),
      name,
      formulaOrRefString: nameMeaning(formula),
    };
    execute(commands, { id: SetDefinedNameMutation.id, params });
  }
  for (const { sheet, id } of sheets) {
    for (const { redo } of addParts(sheet, { unitId, subUnitId: id })) execute(commands, redo);
    if (sheet.isProtected) protectSheet(engine, { unitId, subUnitId: id });
  }
  const active = book.getSheetBySheetName(snapshot.activeSheet);
  if (active) book.setActiveSheet(active);
  // Undo asks for the workbook that has the focus.
  instances.focusUnit(unitId);
  for (const old of before) instances.disposeUnit(old.getUnitId());
}

/** A reference stands in the grid without `=`, anything else with it. */
const nameMeaning = (formula: string): string =>
  /^=(?:'(?:[^']|'')*'|[\p{L}\p{N}_.]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/iu.test(formula)
    ? formula.slice(1)
    : formula;

/** What the grid holds now, cells, looks and all. */
export function takeSnapshot(engine: Engine): WorkbookSnapshot {
  const book = openGridWorkbook(engine);
  const styles = styleTable();
  return {
    name: book.name,
    sheets: book.getSheets().map((sheet) => takeSheet(engine, book, sheet, styles)),
    activeSheet: book.getActiveSheet(true)?.getName() ?? "",
    styles: styles.styles,
    names: definedNames(engine, book.getUnitId()),
    settings: readSettings(book),
    leftOut: readLeftOut(book),
  };
}

function definedNames({ injector }: Engine, unitId: string): DefinedName[] {
  const names = injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {};
  return Object.values(names).map(({ name, formulaOrRefString }) => ({
    name,
    formula: formulaOrRefString.startsWith("=") ? formulaOrRefString : `=${formulaOrRefString}`,
  }));
}

function takeSheet(
  engine: Engine,
  book: GridWorkbook,
  sheet: Worksheet,
  styles: StyleTable,
): SheetSnapshot {
  const ids = sheetIds(sheet);
  const config = sheet.getConfig();
  const freeze = ownFreeze(config);
  const record = sheetRecord(sheet);
  return {
    name: sheet.getName(),
    visible: sheet.isSheetHidden() === BooleanNumber.FALSE,
    isProtected: isSheetProtected(engine, ids),
    mark: record?.mark ?? null,
    written: record?.written ?? null,
    rows: takeRows(engine, book, sheet, styles),
    columnWidths: sizes(config.columnData, ({ w }) => w, charactersWide),
    rowHeights: sizes(
      config.rowData,
      ({ h, ia }) => (ia === BooleanNumber.TRUE ? undefined : h),
      pointsHigh,
    ),
    frozenRows: Math.max(0, freeze.ySplit),
    frozenColumns: Math.max(0, freeze.xSplit),
    merges: config.mergeData.map(({ startRow, startColumn, endRow, endColumn }): Merge => ({
      row: startRow,
      column: startColumn,
      rows: endRow - startRow + 1,
      columns: endColumn - startColumn + 1,
    })),
    tables: tablesOf(engine, ids).map(drawnTable),
    choices: choicesOf(engine, ids),
    ...(record?.pictures === undefined ? {} : { pictures: record.pictures }),
    ...(record?.charts === undefined ? {} : { charts: record.charts }),
    print: record?.print ?? null,
  };
}

function takeRows(
  engine: Engine,
  book: GridWorkbook,
  sheet: Worksheet,
  styles: StyleTable,
): (CellSnapshot | null)[][] {
  const reading = readSheet(engine, book, sheet);
  const matrix = sheet.getCellMatrix();
  const notes = new Map(
    gridNotes(engine, sheetIds(sheet)).map(({ row, col, note }) => [`${row},${col}`, note]),
  );
  const styleIndex = styleIndexes(book, styles);
  const rows: (CellSnapshot | null)[][] = [];
  const put = (row: number, column: number): void => {
    while (rows.length <= row) rows.push([]);
    const line = rows[row] ?? [];
    while (line.length <= column) line.push(null);
    const style = styleIndex(matrix.getValue(row, column)?.s);
    const note = notes.get(`${row},${column}`);
    line[column] = {
      ...cellSnapshot(reading, row, column),
      ...(style === undefined ? {} : { style }),
      ...(note === undefined ? {} : { note }),
    };
  };
  matrix.forValue((row, column) => put(row, column));
  for (const [row, column] of reading.spilledPlaces()) put(row, column);
  for (const place of notes.keys()) {
    const [row = 0, column = 0] = place.split(",").map(Number);
    put(row, column);
  }
  return rows;
}

function cellSnapshot(reading: SheetReading, row: number, column: number): CellSnapshot {
  const value = reading.valueAt(row, column);
  const formula = reading.formulaAt(row, column);
  if (formula === undefined) return { value };
  const area = reading.spillAt(row, column);
  if (area === undefined) return { value, formula };
  const spill = {
    rows: area.lastRow - area.firstRow + 1,
    columns: area.lastColumn - area.firstColumn + 1,
  };
  return { value, formula, spill };
}

/** A cell's style as an index into `styles`; each of the grid's styles is turned into ours once. */
function styleIndexes(
  book: GridWorkbook,
  styles: StyleTable,
): (style: unknown) => number | undefined {
  const known = new Map<string, number>();
  return (style) => {
    if (style === undefined || style === null) return undefined;
    const key = typeof style === "string" ? style : JSON.stringify(style);
    const place = known.get(key);
    if (place !== undefined) return place;
    const whole = typeof style === "string" ? book.getStyles().get(style) : style;
    if (!whole) return undefined;
    const index = styles.indexOf(plainStyle(whole));
    known.set(key, index);
    return index;
  };
}

/** The sizes that were set, as a list with `null` where the host's own holds. */
function sizes<Data>(
  data: Readonly<Record<number, Data | undefined>>,
  pixelsOf: (one: Data) => number | undefined,
  inOurs: (pixels: number) => number,
): (number | null)[] {
  const list: (number | null)[] = [];
  for (const [index, one] of Object.entries(data)) {
    const pixels = one === undefined ? undefined : pixelsOf(one);
    if (pixels === undefined) continue;
    while (list.length < Number(index)) list.push(null);
    list[Number(index)] = inOurs(pixels);
  }
  return list;
}
