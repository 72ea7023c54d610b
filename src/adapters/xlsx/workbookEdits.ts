/** Changes of the part that lists the sheets; all that is not named here stays as it is. */
import { sheetReference } from "../../core/base/cell";
import {
  isStampName,
  readStamp,
  stampFormula,
  stampName,
  type SheetStamp,
} from "../../workbook/sheetStamp";
import { sameSheetName } from "../../workbook/sheetNames";
import { formulaForFile } from "./fileFormula";
import { encode } from "./parts";
import { printTitlesName } from "./readWorkbook";
import {
  addRelationship,
  relationshipNamespace,
  relationshipsOf,
  removePart,
  removeRelationships,
} from "./relationships";
import { readWorkbookPart, type NameEntry, type WorkbookPart } from "./workbookPart";
import {
  append,
  childNamed,
  escapeXml,
  splice,
  withAttributes,
  type Splice,
  type XmlElement,
} from "./xml";

/** Adds a sheet behind all others, or right behind the one at `after`; its part is at `path`. */
export function addSheet(
  parts: Map<string, Uint8Array>,
  name: string,
  path: string,
  after: number | null,
): void {
  const { path: workbookPath } = readWorkbookPart(parts);
  const id = addRelationship(parts, workbookPath, "worksheet", path);
  edit(parts, (workbook) => {
    const { sheets, source } = workbook;
    const sheetId = sheets.reduce((most, sheet) => Math.max(most, sheet.sheetId), 0) + 1;
    const list = needed(childNamed(workbook.root, "sheets"), "sheets");
    const declared = ` xmlns:r="${relationshipNamespace}"`;
    const isDeclared = source.slice(0, workbook.root.innerStart).includes(declared);
    const row = `<${list.prefix}sheet name="${escapeXml(name)}" sheetId="${sheetId}" r:id="${id}"${isDeclared ? "" : declared}/>`;
    const before = after === null ? undefined : sheets[after]?.element;
    if (before === undefined || after === null) return [append(source, list, row)];
    return [{ start: before.end, end: before.end, text: row }, ...movedPositions(workbook, after)];
  });
}

/** Sheets behind `after` are one further: names and the view count sheets by position. */
function movedPositions({ names, root, source }: WorkbookPart, after: number): Splice[] {
  const moved = (text: string | undefined): string | null =>
    text === undefined || Number(text) <= after ? null : String(Number(text) + 1);
  const change = (element: XmlElement, attributes: readonly string[]): Splice[] => {
    const changes = attributes.flatMap((name): [string, string][] => {
      const value = moved(element.attributes[name]);
      return value === null ? [] : [[name, value]];
    });
    return changes.length === 0
      ? []
      : [withAttributes(source, element, Object.fromEntries(changes))];
  };
  return [
    ...names.flatMap(({ element }) => change(element, ["localSheetId"])),
    ...(childNamed(root, "bookViews")?.children ?? []).flatMap((view) =>
      change(view, ["activeTab", "firstSheet"]),
    ),
  ];
}

/** What the names of one of our sheets are to be after it was written. */
export type SheetNames = {
  readonly position: number;
  readonly name: string;
  readonly stamp: Omit<SheetStamp, "sheet"> | null;
  readonly titleRows: { readonly first: number; readonly last: number } | null;
};

/** Sets the sheet's stamp and print titles, in place of its old ones. */
export function setSheetNames(parts: Map<string, Uint8Array>, wanted: SheetNames): void {
  const { position, name, stamp, titleRows } = wanted;
  edit(parts, ({ names, root, source }) => {
    const old = names.filter(
      (each) =>
        (each.sheet === position && each.name.startsWith("_xlnm.")) || isStampOf(each, name),
    );
    const list = childNamed(root, "definedNames");
    const prefix = root.prefix;
    const added: string[] = [];
    if (titleRows !== null) {
      const { first, last } = titleRows;
      const rows = `${sheetReference(name)}!$${first + 1}:$${last + 1}`;
      added.push(nameXml(prefix, printTitlesName, rows, ` localSheetId="${position}"`));
    }
    if (stamp !== null) {
      const taken = new Set(names.map((each) => each.name.toLowerCase()));
      let count = 1;
      while (taken.has(stampName(count))) count += 1;
      const formula = stampFormula({ ...stamp, sheet: name }).slice(1);
      added.push(nameXml(prefix, stampName(count), formula, ` hidden="1"`));
    }
    const removed = old.map(({ element }) => ({
      start: element.start,
      end: element.end,
      text: "",
    }));
    // A list without a name in it is not allowed.
    if (list !== undefined && added.length === 0 && old.length === names.length) {
      return [{ start: list.start, end: list.end, text: "" }];
    }
    if (added.length === 0) return removed;
    return [...removed, addedNames(root, source, added)];
  });
}

/** Adds names that stand for something in the whole workbook. */
export function addNames(
  parts: Map<string, Uint8Array>,
  names: readonly { readonly name: string; readonly formula: string }[],
): void {
  if (names.length === 0) return;
  edit(parts, ({ root, source }) => {
    const rows = names.map(({ name, formula }) =>
      nameXml(root.prefix, name, formulaForFile(formula), ""),
    );
    return [addedNames(root, source, rows)];
  });
}

/** Makes the file open at the sheet at a position. */
export function showFirst(parts: Map<string, Uint8Array>, position: number): void {
  edit(parts, ({ root, source }) => {
    const view = childNamed(childNamed(root, "bookViews"), "workbookView");
    return view === undefined
      ? []
      : [withAttributes(source, view, { activeTab: String(position) })];
  });
}

/** Hides a sheet; `veryHidden` from the list of hidden sheets too. */
export function hideSheet(
  parts: Map<string, Uint8Array>,
  name: string,
  state: "hidden" | "veryHidden",
): void {
  edit(parts, ({ sheets, source }) =>
    sheets
      .filter((sheet) => sameSheetName(sheet.name, name))
      .map(({ element }) => withAttributes(source, element, { state })),
  );
}

/** The kept sheet's own names: those that our sheet had, pointing at the kept one instead. */
export function copySheetNames(
  parts: Map<string, Uint8Array>,
  from: { readonly position: number; readonly name: string },
  to: { readonly position: number; readonly name: string },
): void {
  edit(parts, ({ names, root, source }) => {
    const list = childNamed(root, "definedNames");
    const own = names.filter(({ sheet }) => sheet === from.position);
    if (list === undefined || own.length === 0) return [];
    const copies = own.map(({ name, formula }) =>
      nameXml(
        root.prefix,
        name,
        onOtherSheet(formula, from.name, to.name),
        ` localSheetId="${to.position}"`,
      ),
    );
    return [append(source, list, copies.join(""))];
  });
}

/**
 * Makes spreadsheets work everything out afresh when they open the file: our sheets have changed
 * under the formulas elsewhere, and the list of the order of calculation no longer fits.
 */
export function calculateOnOpening(parts: Map<string, Uint8Array>): void {
  const { path } = readWorkbookPart(parts);
  for (const { type, target } of relationshipsOf(parts, path)) {
    if (type === "calcChain") removePart(parts, target);
  }
  removeRelationships(parts, path, ({ type }) => type === "calcChain");
  edit(parts, ({ root, source }) => {
    const calculation = childNamed(root, "calcPr");
    return calculation === undefined
      ? [inserted(root, "calcPr", `<${root.prefix}calcPr fullCalcOnLoad="1"/>`)]
      : [withAttributes(source, calculation, { fullCalcOnLoad: "1" })];
  });
}

function edit(
  parts: Map<string, Uint8Array>,
  changes: (workbook: WorkbookPart) => readonly Splice[],
): void {
  const workbook = readWorkbookPart(parts);
  const splices = changes(workbook);
  if (splices.length > 0) parts.set(workbook.path, encode(splice(workbook.source, splices)));
}

const isStampOf = ({ name, sheet, formula }: NameEntry, ours: string): boolean =>
  sheet === null && isStampName(name) && sameSheetName(readStamp(formula)?.sheet ?? "", ours);

function addedNames(root: XmlElement, source: string, rows: readonly string[]): Splice {
  const list = childNamed(root, "definedNames");
  const tag = `${root.prefix}definedNames`;
  return list === undefined
    ? inserted(root, "definedNames", `<${tag}>${rows.join("")}</${tag}>`)
    : append(source, list, rows.join(""));
}

const nameXml = (prefix: string, name: string, formula: string, more: string): string =>
  `<${prefix}definedName name="${escapeXml(name)}"${more}>${escapeXml(formula)}</${prefix}definedName>`;

/** `formula` with references to the sheet `from` pointing at `to`; text in quotes stays. */
function onOtherSheet(formula: string, from: string, to: string): string {
  return formula.replace(
    /"(?:[^"]|"")*"|'((?:[^']|'')+)'!|([\p{L}_][\p{L}\p{N}_.]*)!/gu,
    (whole, quoted: string | undefined, plain: string | undefined) => {
      const name = quoted?.replaceAll("''", "'") ?? plain;
      return name !== undefined && sameSheetName(name, from) ? `${sheetReference(to)}!` : whole;
    },
  );
}

/** The order in which the part must have its elements. (ECMA-376 part 1, 18.2.27.) */
const order = [
  "fileVersion",
  "fileSharing",
  "workbookPr",
  "workbookProtection",
  "bookViews",
  "sheets",
  "functionGroups",
  "externalReferences",
  "definedNames",
  "calcPr",
];

/** `text` as the element `name` of `root`, at the place where it must stand. */
function inserted(root: XmlElement, name: string, text: string): Splice {
  const before = order.slice(0, order.indexOf(name));
  const last = root.children.filter((child) => before.includes(child.name)).at(-1);
  const at = last?.end ?? root.innerStart;
  return { start: at, end: at, text };
}

function needed(element: XmlElement | undefined, name: string): XmlElement {
  if (element === undefined) throw new RangeError(`The workbook has no ${name}.`);
  return element;
}
