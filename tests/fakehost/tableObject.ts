/** Tables of the fake host. */
import { allColumns, overlap, type Area } from "./areas";
import {
  changeFormulas,
  dropTable,
  fixHeadings,
  nextId,
  tableHeadings,
  type FakeSheet,
  type FakeTable,
} from "./book";
import { enter } from "./entry";
import { cellOf } from "./book";
import { withTableRenamed } from "./formulaText";
import {
  badArgument,
  denied,
  hostObject,
  notThere,
  plainProperties,
  refuse,
  textOf,
  wholeOf,
  type HostObject,
} from "./hostObject";
import { rangeArgument, rangeObject } from "./rangeObject";
import { sheetObject } from "./sheetObject";
import { shiftRows } from "./shiftRows";
import { tell, type World } from "./world";

const sameName = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** All tables, or those of one sheet. */
export function tablesObject(world: World, sheet: FakeSheet | null): HostObject {
  const { book } = world;
  const own = (): FakeTable[] =>
    book.tables.filter((table) => sheet === null || table.sheet === sheet);
  return hostObject({
    kind: "tables",
    get: { count: () => own().length },
    items: () => own().map((table) => tableObject(world, table)),
    call: {
      getCount: () => own().length,
      getItem: (key) => {
        const table = own().find(({ id, name }) => id === key || sameName(name, textOf(key)));
        return table === undefined ? notThere() : tableObject(world, table);
      },
      add: (at, hasHeaders) => {
        // API reference of `Excel.TableCollection`, `add`: an address without a sheet is one on the
        // sheet in front.
        const place = rangeArgument(book.active, at);
        if (place.sheet.isProtected) denied();
        if (hasHeaders !== true) badArgument("Not in the fake.");
        if (
          book.tables.some(
            (table) => table.sheet === place.sheet && overlap(table.area, place.area),
          )
        ) {
          refuse("InvalidOperation", "A table cannot overlap another table.");
        }
        if (place.sheet.merges.some((merge) => overlap(merge, place.area))) {
          refuse("MergedRangeConflict", "A table cannot hold merged cells.");
        }
        const area = place.area.rows === 1 ? { ...place.area, rows: 2 } : place.area;
        const table: FakeTable = {
          id: nextId(book, "T"),
          name: freeName(world),
          sheet: place.sheet,
          area,
          looks: {
            style: "TableStyleMedium2",
            showTotals: false,
            showHeaders: true,
            showBandedRows: true,
            showFilterButton: true,
          },
        };
        book.tables.push(table);
        fixHeadings(table);
        return tableObject(world, table);
      },
    },
  });
}

const freeName = ({ book }: World): string => {
  for (let count = 1; ; count++) {
    const name = `Table${count}`;
    if (!book.tables.some((table) => sameName(table.name, name))) return name;
  }
};

function tableObject(world: World, table: FakeTable): HostObject {
  const { book } = world;
  const { sheet } = table;
  const range = (area: Area): HostObject => rangeObject(world, sheet, area);
  const open = (): void => {
    if (sheet.isProtected) denied();
    if (!book.tables.includes(table)) notThere();
  };
  const body = (): Area => ({
    ...table.area,
    row: table.area.row + 1,
    rows: Math.max(table.area.rows - 1 - (table.looks["showTotals"] === true ? 1 : 0), 1),
  });
  const looks = plainProperties(
    table.looks,
    ["style", "showTotals", "showHeaders", "showBandedRows", "showFilterButton"],
    open,
  );
  return hostObject({
    kind: "table",
    id: table.id,
    get: { ...looks.get, id: () => table.id, name: () => table.name },
    set: {
      ...looks.set,
      name: (value) => {
        open();
        const name = textOf(value);
        if (!/^[\p{L}_\\][\p{L}\p{N}_.]*$/u.test(name) || /^[a-z]{1,3}\d+$/i.test(name)) {
          badArgument();
        }
        if (book.tables.some((each) => each !== table && sameName(each.name, name))) {
          refuse("InvalidArgument", "There is a table of that name.");
        }
        const old = table.name;
        table.name = name;
        changeFormulas(book, (formula) => withTableRenamed(formula, old, name));
      },
    },
    link: {
      worksheet: () => sheetObject(world, sheet),
      rows: () =>
        hostObject({
          kind: "rows",
          get: { count: () => table.area.rows - 1 },
          call: {
            getCount: () => table.area.rows - 1,
            add: (index, values) => {
              open();
              if (index !== null) badArgument("Not in the fake.");
              const lines = Array.isArray(values) ? (values as unknown[][]) : badArgument();
              const { area } = table;
              shiftRows(world, sheet, area.row + area.rows, lines.length, area);
              table.area = { ...area, rows: area.rows + lines.length };
              lines.forEach((line, down) =>
                line.forEach((value, right) =>
                  enter(
                    book,
                    cellOf(sheet, area.row + area.rows + down, area.column + right),
                    value,
                  ),
                ),
              );
              return hostObject({ kind: "tableRow", id: String(wholeOf(area.rows)) });
            },
          },
        }),
      autoFilter: () =>
        hostObject({
          kind: "autoFilter",
          get: { isDataFiltered: () => filtered(table).length > 0, enabled: () => true },
        }),
    },
    call: {
      getRange: () => range(table.area),
      getHeaderRowRange: () => range({ ...table.area, rows: 1 }),
      getDataBodyRange: () => range(body()),
      clearFilters: () => {
        open();
        for (const row of filtered(table)) sheet.filteredRows.delete(row);
      },
      resize: (to) => {
        open();
        const { area } = rangeArgument(sheet, to);
        if (area.row !== table.area.row || !overlap(area, table.area)) badArgument();
        const others = book.tables.filter((each) => each !== table && each.sheet === sheet);
        if (others.some((each) => overlap(each.area, area))) badArgument();
        table.area = area.rows === 1 ? { ...area, rows: 2 } : area;
        fixHeadings(table);
      },
      convertToRange: () => {
        open();
        const { area } = table;
        const headings = tableHeadings(table);
        book.tables = book.tables.filter((each) => each !== table);
        changeFormulas(book, (formula) => plain(formula, table, area, headings));
        return range(area);
      },
      delete: () => {
        open();
        dropTable(book, table);
        for (let row = area(table).row; row < area(table).row + area(table).rows; row++) {
          for (
            let column = area(table).column;
            column < area(table).column + area(table).columns;
            column++
          ) {
            sheet.cells.delete(row * allColumns + column);
          }
        }
        tell(world, "changed", sheet, table.area);
      },
    },
  });
}

const area = (table: FakeTable): Area => table.area;

const filtered = ({ sheet, area: { row, rows } }: FakeTable): number[] =>
  [...sheet.filteredRows].filter((each) => each > row && each < row + rows);

/** A structured reference to a table that became plain cells becomes a plain reference. */
function plain(
  formula: string,
  table: FakeTable,
  { row, column, rows }: Area,
  headings: readonly string[],
): string {
  return formula.replace(
    /([\p{L}_][\p{L}\p{N}_.]*)\[([^[\]]*)\]/gu,
    (whole, name: string, heading: string) => {
      const index = headings.findIndex((each) => sameName(each, heading));
      if (!sameName(name, table.name) || index < 0) return whole;
      const letter = String.fromCharCode(65 + column + index);
      return `'${table.sheet.name.replaceAll("'", "''")}'!$${letter}$${row + 2}:$${letter}$${row + rows}`;
    },
  );
}
