/** The purchasing tables of the workbooks that an order is made from: offers, the shelf, dates. */
import type { Block } from "../../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { readOfferTable } from "../../tables/offerTable";
import {
  readJobDates,
  readOrderRules,
  readStockTable,
  readSupplierTable,
} from "../../tables/purchasingTables";
import { readBlocks } from "../reading/sourceBlocks";

const readers = {
  offers: readOfferTable,
  stock: readStockTable,
  dates: readJobDates,
  suppliers: readSupplierTable,
  rules: readOrderRules,
} as const satisfies Readonly<Record<string, (block: Block) => unknown>>;

type Readers = typeof readers;
type TableName = keyof Readers;

/** The first table of each kind in a workbook; `null` where it has none. */
export type OrderTables = { readonly [Name in TableName]: ReturnType<Readers[Name]> };

export const orderTableFindings = {
  "table-in-two-files": {
    level: "warn",
    says: "{found} has another sheet of {table} than {first}, whose sheet is used.",
    todo: "Name the workbook first whose sheet is right, or remove the other.",
  },
  "no-offers": {
    level: "warn",
    says: "No sheet says what suppliers offer, so nothing can be ordered.",
    todo: "Add a sheet with the headings Item, Size, Supplier, Pieces in a pack and Price per pack.",
  },
} as const satisfies FindingTable;

const tableWords: Readonly<Record<TableName, string>> = {
  offers: "offers",
  stock: "stock on hand",
  dates: "job dates",
  suppliers: "suppliers",
  rules: "order rules",
};

/** Error: the host could not read. */
export async function readOrderTables(
  workbook: Workbook,
): Promise<Result<OrderTables, WorkbookFault>> {
  const blocks = await readBlocks(await workbook.sheets(), (source) => workbook.read(source));
  if (!blocks.ok) return err(blocks.error);
  const first = <Rows>(read: (block: Block) => Rows | null): Rows | null => {
    for (const { block } of blocks.value) {
      const rows = read(block);
      if (rows !== null) return rows;
    }
    return null;
  };
  return ok({
    offers: first(readers.offers),
    stock: first(readers.stock),
    dates: first(readers.dates),
    suppliers: first(readers.suppliers),
    rules: first(readers.rules),
  });
}

/** The file whose table of that kind holds: the first that has one. */
export const fileWith = <Each extends { readonly tables: OrderTables }>(
  files: readonly Each[],
  name: Exclude<TableName, "dates">,
): Each | null => files.find(({ tables }) => tables[name] !== null) ?? null;

/** What is not read because an earlier workbook has a table of that kind that says something else. */
export function otherTables(
  files: readonly { readonly file: string; readonly tables: OrderTables }[],
): readonly Finding[] {
  const names = ["offers", "stock", "suppliers", "rules"] as const;
  const doubts = names.flatMap((table) => {
    const holder = fileWith(files, table);
    if (holder === null) return [];
    const used = typedText(holder.tables[table]);
    return files
      .filter(({ tables }) => tables[table] !== null && typedText(tables[table]) !== used)
      .map(({ file }) =>
        makeFinding(orderTableFindings, "table-in-two-files", {
          found: file,
          values: { table: tableWords[table], first: holder.file },
        }),
      );
  });
  return fileWith(files, "offers") === null
    ? [makeFinding(orderTableFindings, "no-offers", {}), ...doubts]
    : doubts;
}

/** What was typed, wherever it stands: the same text for the same. */
export const typedText = (typed: unknown): string =>
  JSON.stringify(typed, (key, value: unknown) => (key === "place" ? undefined : value));
