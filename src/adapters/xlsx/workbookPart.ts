/** The part that lists the sheets, and the defined names in it. */
import { neededText, partText, type Parts } from "./parts";
import { relationshipsOf } from "./relationships";
import {
  childNamed,
  childrenNamed,
  DamagedFile,
  isOn,
  parseXml,
  readEscapes,
  type XmlElement,
} from "./xml";

export type SheetEntry = {
  readonly name: string;
  /** Worksheets have cells; chart sheets and dialog sheets have none. */
  readonly isWorksheet: boolean;
  readonly isVisible: boolean;
  readonly sheetId: number;
  readonly path: string;
  readonly element: XmlElement;
};

export type NameEntry = {
  readonly name: string;
  /** The position of the sheet it belongs to; `null` for the whole workbook. */
  readonly sheet: number | null;
  /** Without `=`. */
  readonly formula: string;
  readonly isHidden: boolean;
  readonly element: XmlElement;
};

export type WorkbookPart = {
  readonly path: string;
  readonly source: string;
  readonly root: XmlElement;
  readonly sheets: readonly SheetEntry[];
  readonly names: readonly NameEntry[];
  /** The position of the sheet shown first. */
  readonly activeTab: number;
  /** Dates count from 1904-01-01 instead of 1899-12-30. */
  readonly startsIn1904: boolean;
  readonly isStructureProtected: boolean;
  /** Saved in the strict variant of the format, whose parts carry other namespaces. */
  readonly isStrict: boolean;
};

/** @throws DamagedFile when there is no such part or it is no workbook. */
export function readWorkbookPart(parts: Parts): WorkbookPart {
  const path = workbookPath(parts);
  const source = neededText(parts, path);
  const root = parseXml(source);
  if (root.name !== "workbook") throw new DamagedFile(`${path} is no workbook.`);
  const targets = new Map(relationshipsOf(parts, path).map((each) => [each.id, each]));
  const sheets = childrenNamed(childNamed(root, "sheets"), "sheet").map((element): SheetEntry => {
    const { name = "", sheetId = "0", id = "", state = "visible" } = element.attributes;
    const target = targets.get(id);
    return {
      name: readEscapes(name),
      isWorksheet: target?.type === "worksheet" && !target.isExternal,
      isVisible: state === "visible",
      sheetId: Number(sheetId),
      path: target?.target ?? "",
      element,
    };
  });
  const view = childNamed(childNamed(root, "bookViews"), "workbookView");
  const properties = childNamed(root, "workbookPr");
  const protection = childNamed(root, "workbookProtection");
  return {
    path,
    source,
    root,
    sheets,
    names: childrenNamed(childNamed(root, "definedNames"), "definedName").map(readName),
    activeTab: Number(view?.attributes["activeTab"] ?? 0),
    startsIn1904: isOn(properties?.attributes["date1904"]),
    isStructureProtected: isOn(protection?.attributes["lockStructure"]),
    isStrict: source.includes("http://purl.oclc.org/ooxml/spreadsheetml/main"),
  };
}

/** Where the file says that its main part is. */
export function workbookPath(parts: Parts): string {
  const main = relationshipsOf(parts, "").find(({ type }) => type === "officeDocument");
  if (main !== undefined) return main.target;
  if (partText(parts, "xl/workbook.xml") !== null) return "xl/workbook.xml";
  throw new DamagedFile("It has no workbook part.");
}

function readName(element: XmlElement): NameEntry {
  const { name = "", localSheetId, hidden } = element.attributes;
  return {
    name,
    sheet: localSheetId === undefined ? null : Number(localSheetId),
    formula: element.text,
    isHidden: isOn(hidden),
    element,
  };
}
