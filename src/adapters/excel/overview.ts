/** What is in the workbook, asked for in one request. */
import { isStampName, readStamp, stampName, type SheetStamp } from "../../workbook/sheetStamp";
import type { SheetSummary } from "../../workbook/workbook";
import { isAsideName, journalPart, readJournal, type Journal } from "./journal";

export type StandingSheet = SheetSummary & {
  readonly id: string;
  readonly isProtected: boolean;
  readonly hasFilter: boolean;
  /** The hidden name that marks it as ours, and what it holds. */
  readonly stamp: {
    readonly name: string;
    readonly formula: string;
    readonly held: SheetStamp;
  } | null;
};

export type Overview = {
  /** In the order of their tabs, without those that only we see. */
  readonly sheets: readonly StandingSheet[];
  /** The ids of all sheets by name, those that only we see too. */
  readonly ids: ReadonlyMap<string, string>;
  readonly structureProtected: boolean;
  /** All names of the workbook's scope; a table may not have one of them. */
  readonly names: readonly string[];
  /** Stamps whose sheet is gone. */
  readonly brokenStamps: readonly string[];
  readonly journal: Journal | null;
};

export async function readOverview(context: Excel.RequestContext): Promise<Overview> {
  const { workbook } = context;
  const sheets = workbook.worksheets.load(
    "items/id,items/name,items/visibility,items/protection/protected,items/autoFilter/enabled",
  );
  const tables = workbook.tables.load("items/name,items/worksheet/id");
  const names = workbook.names.load("items/name,items/formula");
  const protection = workbook.protection.load("protected");
  const part = journalPart(workbook).load("id");
  const journal = part.getXml();
  await context.sync();

  const stamps = names.items.filter(({ name }) => isStampName(name));
  const held = stamps.map((item) => {
    const formula = String(item.formula);
    return { name: item.name, formula, held: readStamp(formula) };
  });
  return {
    sheets: sheets.items
      .filter(({ name }) => !isAsideName(name))
      .map((sheet) => {
        const stamp = held.find((each) => each.held?.sheet === sheet.name);
        const mark = stamp?.held?.mark ?? null;
        return {
          id: sheet.id,
          name: sheet.name,
          visible: sheet.visibility === "Visible",
          mark,
          tables: tables.items
            .filter((table) => table.worksheet.id === sheet.id)
            .map((table) => table.name),
          isProtected: sheet.protection.protected,
          hasFilter: sheet.autoFilter.enabled,
          stamp: stampOf(stamp),
        };
      }),
    ids: new Map(sheets.items.map(({ name, id }) => [name, id])),
    structureProtected: protection.protected,
    names: names.items.map(({ name }) => name),
    brokenStamps: held.filter((each) => each.held === null).map(({ name }) => name),
    journal: part.isNullObject ? null : readJournal(journal.value),
  };
}

/** Stamp names that no name of the workbook has yet. */
export function* freeStampNames({ names }: Overview): Generator<string, never> {
  const taken = new Set(names.map((name) => name.toLowerCase()));
  for (let count = 1; ; count++) {
    const name = stampName(count);
    if (!taken.has(name.toLowerCase())) yield name;
  }
}

type FoundStamp = {
  readonly name: string;
  readonly formula: string;
  readonly held: SheetStamp | null;
};

const stampOf = (found: FoundStamp | undefined): StandingSheet["stamp"] => {
  if (found === undefined || found.held === null) return null;
  return { name: found.name, formula: found.formula, held: found.held };
};
