/** A whole file as a snapshot. Each sheet is read once, when it is first asked for. */
import { listsMark } from "../../workbook/choiceLists";
import type { Choice } from "../../workbook/drawing";
import { blankSheet } from "../../workbook/blankSheet";
import { isStampName, readStamp } from "../../workbook/sheetStamp";
import { sameSheetName } from "../../workbook/sheetNames";
import type { SheetSummary } from "../../workbook/workbook";
import type { DefinedName, SheetSnapshot, WorkbookSnapshot } from "../../workbook/snapshot";
import { colourReader } from "./colours";
import { formulaFromFile } from "./fileFormula";
import type { Parts } from "./parts";
import type { CellContext } from "./readCells";
import { listAt } from "./readChoices";
import { readSheet, tablesOf, type ReadSheet, type SheetAround } from "./readSheet";
import { readStyles } from "./readStyles";
import { relationshipsOf } from "./relationships";
import { readSettings } from "./settingsPart";
import { readSharedStrings } from "./sharedStrings";
import { readWorkbookPart, type SheetEntry, type WorkbookPart } from "./workbookPart";

export type FileReader = {
  readonly workbook: WorkbookPart;
  /** All sheets but that of the lists of drop-downs, without reading their cells. */
  readonly summaries: () => readonly SheetSummary[];
  /** The cells and all else of the sheet at a position; one without cells is blank. */
  readonly sheetAt: (position: number) => ReadSheet;
  readonly snapshot: (name: string) => WorkbookSnapshot;
};

/** @throws DamagedFile, here or when a sheet is asked for. */
export function fileReader(parts: Parts): FileReader {
  const workbook = readWorkbookPart(parts);
  const linked = relationshipsOf(parts, workbook.path);
  const target = (type: string): string | undefined =>
    linked.find((each) => each.type === type)?.target;
  const styles = readStyles(parts, target("styles"), colourReader(parts, target("theme")));
  const stringsPath = target("sharedStrings");
  const context: CellContext = {
    styles,
    strings: stringsPath === undefined ? [] : readSharedStrings(parts, stringsPath),
    startsIn1904: workbook.startsIn1904,
  };
  const stamps = workbook.names
    .filter(({ name, sheet }) => sheet === null && isStampName(name))
    .flatMap(({ formula }) => readStamp(formula) ?? []);
  const ownName = (position: number, wanted: string): string =>
    workbook.names.find(({ sheet, name }) => sheet === position && name === wanted)?.formula ?? "";
  const around = (position: number, { name }: SheetEntry): SheetAround => ({
    stamp: stamps.find((stamp) => sameSheetName(stamp.sheet, name)) ?? null,
    printTitles: ownName(position, printTitlesName),
    printArea: ownName(position, printAreaName),
  });

  const read = new Map<number, ReadSheet>();
  const sheetAt = (position: number): ReadSheet => {
    const there = read.get(position);
    if (there !== undefined) return there;
    const entry = workbook.sheets[position];
    if (entry === undefined) throw new RangeError(`No sheet at ${position}.`);
    const made = entry.isWorksheet
      ? readSheet(parts, entry, around(position, entry), context)
      : {
          sheet: { ...blankSheet(entry.name), visible: entry.isVisible },
          linkedChoices: [],
          leftOut: [`the sheet “${entry.name}”, which has no cells`],
        };
    read.set(position, made);
    return made;
  };

  return {
    workbook,
    sheetAt,
    summaries: () =>
      workbook.sheets
        .map((entry, position) => ({
          name: entry.name,
          visible: entry.isVisible,
          mark: around(position, entry).stamp?.mark ?? null,
          tables: entry.isWorksheet
            ? tablesOf(parts, relationshipsOf(parts, entry.path)).map(({ name }) => name)
            : [],
        }))
        .filter(({ mark }) => mark?.kind !== listsMark.kind),
    snapshot: (name) => {
      const all = workbook.sheets.map((_, position) => sheetAt(position));
      const { sheets, isWhole } = withLinkedChoices(all);
      const isShown = ({ mark }: SheetSnapshot, position: number): boolean =>
        workbook.sheets[position]?.isWorksheet === true && mark?.kind !== listsMark.kind;
      return {
        name,
        sheets: sheets.filter(isShown),
        activeSheet: activeSheetName(workbook),
        styles: styles.map(({ style }) => style),
        names: workbook.names
          .filter(isOfThePerson)
          .map(({ name: named, formula }): DefinedName => ({
            name: named,
            formula: formulaFromFile(formula),
          })),
        settings: readSettings(parts, workbook.path),
        leftOut: [
          ...all.flatMap(({ leftOut }) => leftOut),
          ...(isWhole ? [] : ["drop-downs whose lists are worked out"]),
          ...leftOutOf(linked),
        ],
      };
    },
  };
}

/** The sheets with all their drop-downs, also those whose lists stand in cells of other sheets. */
function withLinkedChoices(all: readonly ReadSheet[]): {
  readonly sheets: readonly SheetSnapshot[];
  readonly isWhole: boolean;
} {
  const sheets = all.map(({ sheet }) => sheet);
  let isWhole = true;
  const linked = ({ sheet, linkedChoices }: ReadSheet): Choice[] =>
    linkedChoices.flatMap(({ reference, ...choice }) => {
      const list = listAt(reference, sheet.name, sheets);
      isWhole &&= list !== null;
      return list === null ? [] : [{ ...choice, list }];
    });
  return {
    sheets: all.map((each) => ({
      ...each.sheet,
      choices: [...each.sheet.choices, ...linked(each)],
    })),
    isWhole,
  };
}

/** The name of the sheet that the file opens at: a visible one with cells where there is one. */
export function activeSheetName({ sheets, activeTab }: WorkbookPart): string {
  const isGood = (sheet: SheetEntry | undefined): boolean =>
    sheet?.isVisible === true && sheet.isWorksheet;
  const active = sheets[activeTab];
  return (isGood(active) ? active : (sheets.find(isGood) ?? sheets[0]))?.name ?? "";
}

export const printTitlesName = "_xlnm.Print_Titles";
export const printAreaName = "_xlnm.Print_Area";

const isOfThePerson = ({ name, sheet, isHidden }: WorkbookPart["names"][number]): boolean =>
  sheet === null && !isHidden && !name.startsWith("_xlnm.") && !isStampName(name);

function leftOutOf(linked: ReturnType<typeof relationshipsOf>): string[] {
  const has = (type: string): boolean => linked.some((each) => each.type === type);
  return [
    ...(has("vbaProject") ? ["macros"] : []),
    ...(has("externalLink") ? ["links to other workbooks"] : []),
    ...(has("connections") ? ["connections to data outside"] : []),
  ];
}
