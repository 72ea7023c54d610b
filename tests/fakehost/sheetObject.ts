/** Worksheets of the fake host and their collection. */
import { parseArea, wholeSheet, type Area } from "./areas";
import { chartsObject } from "./chartObject";
import {
  addSheet,
  copySheet,
  deleteSheet,
  findSheet,
  moveSheet,
  renameSheet,
  setVisibility,
  usedArea,
  type FakeSheet,
} from "./book";
import { commentsObject, notesObject } from "./commentObject";
import {
  badArgument,
  denied,
  hostObject,
  nothing,
  noWorksheet,
  notThere,
  plainProperties,
  refuse,
  textOf,
  wholeOf,
  type HostObject,
} from "./hostObject";
import { namesObject } from "./nameObject";
import { breaksObject, pageLayoutObject } from "./pageObject";
import { shapesObject } from "./shapeObject";
import { areasObject, rangeArgument, rangeObject } from "./rangeObject";
import { tablesObject } from "./tableObject";
import { tell, type EventKind, type World } from "./world";

/** The sheets behind the objects; `Worksheet.copy` takes one as an argument. */
const sheets = new WeakMap<HostObject, FakeSheet>();

export function sheetObject(world: World, sheet: FakeSheet): HostObject {
  const { book } = world;
  const range = (area: Area): HostObject => rangeObject(world, sheet, area);
  const used = (valuesOnly: unknown): HostObject | null => {
    const area = usedArea(sheet, valuesOnly === true);
    return area === null ? null : range(area);
  };
  const looks = plainProperties(sheet.looks, ["showGridlines", "tabColor"], () => {
    if (sheet.isProtected) denied();
  });
  const alive = (): void => {
    if (!book.sheets.includes(sheet)) notThere();
  };
  const object = hostObject({
    kind: "worksheet",
    id: sheet.id,
    get: {
      ...looks.get,
      id: () => sheet.id,
      name: () => sheet.name,
      position: () => book.sheets.indexOf(sheet),
      visibility: () => sheet.visibility,
    },
    set: {
      ...looks.set,
      name: (value) => {
        alive();
        renameSheet(book, sheet, textOf(value));
        tell(world, "renamed", sheet);
      },
      position: (value) => moveSheet(book, sheet, wholeOf(value)),
      visibility: (value) => setVisibility(book, sheet, value),
    },
    link: {
      tables: () => tablesObject(world, sheet),
      names: () => namesObject(world, sheet),
      comments: () => commentsObject(sheet),
      notes: () => notesObject(sheet),
      shapes: () => shapesObject(world, sheet),
      charts: () => chartsObject(world, sheet),
      pageLayout: () => pageLayoutObject(world, sheet),
      horizontalPageBreaks: () => breaksObject(sheet),
      protection: () =>
        hostObject({
          kind: "protection",
          get: { protected: () => sheet.isProtected },
          call: {
            protect: () => (sheet.isProtected = true),
            unprotect: () => (sheet.isProtected = false),
          },
        }),
      autoFilter: () =>
        hostObject({
          kind: "autoFilter",
          get: {
            enabled: () => sheet.hasFilter,
            isDataFiltered: () => sheet.filteredRows.size > 0,
          },
          call: {
            remove: () => {
              if (sheet.isProtected) denied();
              sheet.hasFilter = false;
              sheet.filteredRows.clear();
            },
          },
        }),
      freezePanes: () =>
        hostObject({
          kind: "freezePanes",
          call: {
            freezeAt: (at) => (sheet.frozen = rangeArgument(sheet, at).area),
            freezeRows: (count) => (sheet.frozen = { ...wholeSheet, rows: wholeOf(count) }),
            freezeColumns: (count) => (sheet.frozen = { ...wholeSheet, columns: wholeOf(count) }),
            unfreeze: () => (sheet.frozen = null),
          },
        }),
    },
    call: {
      getRange: (address) => range(typeof address === "string" ? parseArea(address) : wholeSheet),
      getRanges: (address) => {
        const text = textOf(address);
        if (text.length > 8192) badArgument("The address is too long.");
        return areasObject(world, sheet, text.split(",").map(parseArea));
      },
      getCell: (row, column) =>
        range({ row: wholeOf(row), column: wholeOf(column), rows: 1, columns: 1 }),
      getRangeByIndexes: (row, column, rows, columns) =>
        range({
          row: wholeOf(row),
          column: wholeOf(column),
          rows: wholeOf(rows),
          columns: wholeOf(columns),
        }),
      getUsedRange: (valuesOnly) =>
        used(valuesOnly) ?? range({ row: 0, column: 0, rows: 1, columns: 1 }),
      getUsedRangeOrNullObject: (valuesOnly) => used(valuesOnly) ?? nothing,
      activate: () => {
        if (sheet.visibility !== "Visible") refuse("InvalidOperation", "The sheet is hidden.");
        book.active = sheet;
        tell(world, "activated", sheet);
      },
      delete: () => {
        deleteSheet(book, sheet);
        tell(world, "deleted", sheet);
      },
      copy: (position, relativeTo) => {
        const beside = sheets.get(relativeTo as HostObject) ?? sheet;
        const index = book.sheets.indexOf(beside);
        const where =
          position === "After"
            ? index + 1
            : position === "Before"
              ? index
              : position === "Beginning"
                ? 0
                : book.sheets.length;
        const copy = copySheet(book, sheet, where);
        tell(world, "added", copy);
        return sheetObject(world, copy);
      },
      _GetAnotherWorksheetById: (id) => sheetOfKey(world, textOf(id)),
      _GetSheetById: (id) => sheetOfKey(world, textOf(id)),
    },
  });
  sheets.set(object, sheet);
  return object;
}

const sheetOfKey = (world: World, key: string): HostObject => {
  const sheet = findSheet(world.book, key);
  return sheet === undefined ? notThere() : sheetObject(world, sheet);
};

export function sheetsObject(world: World): HostObject {
  const { book } = world;
  const listen = (kind: EventKind) => () => void world.listening.add(kind);
  const forget = (kind: EventKind) => () => void world.listening.delete(kind);
  return hostObject({
    kind: "worksheets",
    items: () => book.sheets.map((sheet) => sheetObject(world, sheet)),
    call: {
      getItem: (key) => sheetOfKey(world, textOf(key)),
      getActiveWorksheet: () => {
        if (book.chartInFront) noWorksheet();
        return sheetObject(world, book.active);
      },
      getCount: () => book.sheets.length,
      add: (name) => {
        const sheet = addSheet(book, typeof name === "string" ? name : undefined);
        tell(world, "added", sheet);
        return sheetObject(world, sheet);
      },
      _RegisterDataChangedEvent: listen("changed"),
      _UnregisterDataChangedEvent: forget("changed"),
      _RegisterSelectionChangedEvent: listen("selectionChanged"),
      _UnregisterSelectionChangedEvent: forget("selectionChanged"),
      _RegisterAddedEvent: listen("added"),
      _UnregisterAddedEvent: forget("added"),
      _RegisterDeletedEvent: listen("deleted"),
      _UnregisterDeletedEvent: forget("deleted"),
      _RegisterActivatedEvent: listen("activated"),
      _UnregisterActivatedEvent: forget("activated"),
      _RegisterEventNameChanged: listen("renamed"),
      _UnregisterEventNameChanged: forget("renamed"),
    },
  });
}
