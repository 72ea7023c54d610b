/** What stood on the sheets that a broken-off swap was exchanging, from the copies made before it. */
import { wholeFingerprint } from "../../workbook/fingerprint";
import { areaOf, fromFirstCell, loadArea, loadBands, type Area } from "./bands";
import type { LateFormula } from "./drawSheet";
import { currentSheet } from "./finishing";
import type { Journal, JournalSheet } from "./journal";
import type { Overview } from "./overview";
import type { StandingTable } from "./tables";
import { fingerprintOf, formulaIn, loadTyped } from "./typed";

export type OldContents = {
  readonly sheet: JournalSheet;
  /** The sheet itself, and the copy of what it held. */
  readonly live: Excel.Worksheet;
  readonly liveName: string;
  readonly copy: Excel.Worksheet;
  readonly copyName: string;
  /** The cells that either covers. */
  readonly extent: Area;
  readonly liveTables: readonly StandingTable[];
  readonly copyTables: readonly StandingTable[];
  readonly formulas: readonly LateFormula[];
  /** A person typed into the sheet after the swap broke off. */
  readonly isTouched: boolean;
  /** The sheet can't be changed; `isAsBefore`: it was not changed yet. */
  readonly isProtected: boolean;
  readonly isAsBefore: boolean;
};

/** `isLongAgo`: look whether a person typed since then. */
export async function oldContents(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
  isLongAgo: boolean,
): Promise<readonly OldContents[]> {
  const { worksheets } = context.workbook;
  const found = journal.sheets.flatMap((sheet) => {
    const standing = currentSheet(sheet, overview);
    const copyId = sheet.old === null ? undefined : overview.ids.get(sheet.old);
    if (sheet.old === null || standing === null || copyId === undefined) return [];
    const live = worksheets.getItem(standing.id);
    const copy = worksheets.getItem(copyId);
    return [
      {
        sheet,
        live,
        liveName: standing.name,
        isProtected: standing.isProtected,
        copy,
        copyName: sheet.old,
        liveUsed: loadArea(live.getUsedRange()),
        copyUsed: loadArea(copy.getUsedRange()),
        // Formats alone may reach to the sheet's last row.
        copyHolds: loadArea(copy.getUsedRange(true)),
        liveTables: live.tables.load("items/name"),
        copyTables: copy.tables.load("items/name"),
      },
    ];
  });
  if (found.length === 0) return [];
  await context.sync();

  const tables = found.map(({ liveTables, copyTables }) => ({
    live: rangesOf(liveTables),
    copy: rangesOf(copyTables),
  }));
  await context.sync();
  const contents = await loadBands(
    context,
    found.map(({ copy, copyHolds }) => ({ ...areaOf(copyHolds), sheet: copy })),
    loadTyped,
  );
  const nowHeld = await fingerprints(
    context,
    found.map(({ live }) => live),
  );
  const asides = isLongAgo ? await asidesHeld(context, journal, overview) : new Map();
  return found.map((each, index): OldContents => {
    const bands = contents[index] ?? [];
    const now = nowHeld[index] ?? "";
    const before = fingerprintOf(bands);
    const written = wholeFingerprint(each.sheet.written ?? "");
    const expected = [before, written, asides.get(each.sheet.aside)];
    return {
      ...each,
      extent: fromFirstCell(areaOf(each.liveUsed), areaOf(each.copyUsed)),
      liveTables: (tables[index]?.live ?? []).map(standing),
      copyTables: (tables[index]?.copy ?? []).map(standing),
      formulas: bands.flatMap(formulasIn),
      isTouched: isLongAgo && !expected.includes(now),
      isAsBefore: now === before,
    };
  });
}

type NamedRange = { readonly name: string; readonly range: Excel.Range };

const rangesOf = ({ items }: Excel.TableCollection): readonly NamedRange[] =>
  items.map((table) => ({ name: table.name, range: loadArea(table.getRange()) }));

const standing = ({ name, range }: NamedRange): StandingTable => ({ name, area: areaOf(range) });

/** What was prepared for each sheet, by the name of the sheet aside. */
async function asidesHeld(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
): Promise<ReadonlyMap<string, string>> {
  const asides = journal.sheets.flatMap(({ aside }) => {
    const id = overview.ids.get(aside);
    return id === undefined ? [] : [{ aside, id }];
  });
  const held = await fingerprints(
    context,
    asides.map(({ id }) => context.workbook.worksheets.getItem(id)),
  );
  return new Map(asides.map(({ aside }, index) => [aside, held[index] ?? ""]));
}

async function fingerprints(
  context: Excel.RequestContext,
  sheets: readonly Excel.Worksheet[],
): Promise<readonly string[]> {
  const used = sheets.map((sheet) => ({ sheet, range: loadArea(sheet.getUsedRange(true)) }));
  await context.sync();
  const bands = await loadBands(
    context,
    used.map(({ sheet, range }) => ({ ...areaOf(range), sheet })),
    loadTyped,
  );
  return bands.map((each) => fingerprintOf(each));
}

const formulasIn = ({ values, formulas, rowIndex, columnIndex }: Excel.Range): LateFormula[] =>
  (values as unknown[][]).flatMap((line, down) =>
    line.flatMap((value, right) => {
      const formula = formulaIn((formulas[down] as readonly unknown[] | undefined)?.[right], value);
      return formula === null
        ? []
        : [{ row: rowIndex + down, column: columnIndex + right, formula }];
    }),
  );
