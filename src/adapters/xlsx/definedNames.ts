/** The defined names of a file: those of our sheets, and those of a person that must follow them. */
import { columnName, sheetReference } from "../../core/base/cell";
import type { PrintSetup } from "../../workbook/drawing";
import {
  isStampName,
  readStamp,
  stampFormula,
  stampName,
  type SheetStamp,
} from "../../workbook/sheetStamp";
import { sameSheetName } from "../../workbook/sheetNames";
import { editWorkbookPart, inserted } from "./editWorkbookPart";
import { formulaForFile } from "./fileFormula";
import { printAreaName, printTitlesName } from "./readWorkbook";
import type { NameEntry } from "./workbookPart";
import { append, childNamed, escapeXml, type Splice, type XmlElement } from "./xml";

/** What the names of one of our sheets are to be after it was written. */
export type SheetNames = {
  readonly position: number;
  readonly name: string;
  readonly stamp: Omit<SheetStamp, "sheet"> | null;
  readonly print: Pick<PrintSetup, "titleRows" | "columns"> | null;
};

/** Sets the sheet's stamp, print titles and printed columns, in place of its old ones. */
export function setSheetNames(parts: Map<string, Uint8Array>, wanted: SheetNames): void {
  const { position, name, stamp, print } = wanted;
  editWorkbookPart(parts, ({ names, root, source }) => {
    const old = names.filter(
      (each) =>
        (each.sheet === position && each.name.startsWith("_xlnm.")) || isStampOf(each, name),
    );
    const list = childNamed(root, "definedNames");
    const prefix = root.prefix;
    const added: string[] = [];
    const own = (what: string, range: string): void => {
      const formula = `${sheetReference(name)}!${range}`;
      added.push(nameXml(prefix, what, formula, ` localSheetId="${position}"`));
    };
    if (print?.columns !== undefined) {
      const { first, last } = print.columns;
      own(printAreaName, `$${columnName(first)}:$${columnName(last)}`);
    }
    if (print?.titleRows !== undefined) {
      const { first, last } = print.titleRows;
      own(printTitlesName, `$${first + 1}:$${last + 1}`);
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
  editWorkbookPart(parts, ({ root, source }) => {
    const rows = names.map(({ name, formula }) =>
      nameXml(root.prefix, name, formulaForFile(formula), ""),
    );
    return [addedNames(root, source, rows)];
  });
}

/** The kept sheet's own names: those that our sheet had, pointing at the kept one instead. */
export function copySheetNames(
  parts: Map<string, Uint8Array>,
  from: { readonly position: number; readonly name: string },
  to: { readonly position: number; readonly name: string },
): void {
  editWorkbookPart(parts, ({ names, root, source }) => {
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
