/** Changes of the list of sheets. */
import { editWorkbookPart, inserted } from "./editWorkbookPart";
import { sameSheetName } from "../../workbook/sheetNames";
import {
  addRelationship,
  relationshipNamespace,
  relationshipsOf,
  removePart,
  removeRelationships,
} from "./relationships";
import { readWorkbookPart, type WorkbookPart } from "./workbookPart";
import { append, childNamed, escapeXml, withAttributes, type Splice, type XmlElement } from "./xml";

/** Adds a sheet behind all others, or right behind the one at `after`; its part is at `path`. */
export function addSheet(
  parts: Map<string, Uint8Array>,
  name: string,
  path: string,
  after: number | null,
): void {
  const { path: workbookPath } = readWorkbookPart(parts);
  const id = addRelationship(parts, workbookPath, "worksheet", path);
  editWorkbookPart(parts, (workbook) => {
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

/** Makes the file open at the sheet at a position. */
export function showFirst(parts: Map<string, Uint8Array>, position: number): void {
  editWorkbookPart(parts, ({ root, source }) => {
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
  editWorkbookPart(parts, ({ sheets, source }) =>
    sheets
      .filter((sheet) => sameSheetName(sheet.name, name))
      .map(({ element }) => withAttributes(source, element, { state })),
  );
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
  editWorkbookPart(parts, ({ root, source }) => {
    const calculation = childNamed(root, "calcPr");
    return calculation === undefined
      ? [inserted(root, "calcPr", `<${root.prefix}calcPr fullCalcOnLoad="1"/>`)]
      : [withAttributes(source, calculation, { fullCalcOnLoad: "1" })];
  });
}

function needed(element: XmlElement | undefined, name: string): XmlElement {
  if (element === undefined) throw new RangeError(`The workbook has no ${name}.`);
  return element;
}
