/** A file as a person's spreadsheet would save it after an edit: made without the adapter's writer. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { cellText } from "../../../src/core/base/cell";
import { cellAt, type RigCell } from "../../workbook/rig";

type Files = Record<string, Uint8Array>;

/** The bytes with `change` made to the text of the part at `path`. */
export function editPart(
  bytes: Uint8Array,
  path: string,
  change: (text: string) => string,
): Uint8Array {
  const files: Files = unzipSync(bytes);
  const part = files[path];
  if (part === undefined) throw new Error(`No part ${path} among ${Object.keys(files).join(" ")}`);
  return zipSync({ ...files, [path]: strToU8(change(strFromU8(part))) });
}

/** The text of a part. */
export const partOf = (bytes: Uint8Array, path: string): string =>
  strFromU8(unzipSync(bytes)[path] ?? new Uint8Array());

/** The path of a sheet's part. */
export function pathOfSheet(bytes: Uint8Array, sheet: string): string {
  const workbook = partOf(bytes, "xl/workbook.xml");
  const tag = [...workbook.matchAll(/<sheet [^>]*>/g)].find(([each]) =>
    each.includes(`name="${sheet.replaceAll("&", "&amp;")}"`),
  );
  const id = /r:id="([^"]*)"/.exec(tag?.[0] ?? "")?.[1] ?? "";
  const target = new RegExp(`<Relationship [^>]*Id="${id}"[^>]*>`).exec(
    partOf(bytes, "xl/_rels/workbook.xml.rels"),
  );
  return (/Target="\/?([^"]*)"/.exec(target?.[0] ?? "")?.[1] ?? "").replace(/^(?!xl\/)/, "xl/");
}

/** A person types into a cell of a sheet. */
export function typeInto(
  bytes: Uint8Array,
  sheet: string,
  cell: string,
  typed: RigCell | null,
): Uint8Array {
  return editPart(bytes, pathOfSheet(bytes, sheet), (text) => withCell(text, cell, typed));
}

/** A person renames a sheet: its references follow. */
export function rename(bytes: Uint8Array, sheet: string, name: string): Uint8Array {
  const renamed = editPart(bytes, "xl/workbook.xml", (text) =>
    text.replace(`name="${sheet}"`, `name="${name}"`).replaceAll(`${sheet}!`, `'${name}'!`),
  );
  return renamed;
}

/** A person protects the structure of the workbook. */
export const protectStructure = (bytes: Uint8Array): Uint8Array =>
  editPart(bytes, "xl/workbook.xml", (text) =>
    text.replace("<bookViews>", `<workbookProtection lockStructure="1"/><bookViews>`),
  );

/** A person protects a sheet. */
export const protect = (bytes: Uint8Array, sheet: string): Uint8Array =>
  editPart(bytes, pathOfSheet(bytes, sheet), (text) =>
    text.replace("</sheetData>", `</sheetData><sheetProtection sheet="1"/>`),
  );

function withCell(xml: string, name: string, typed: RigCell | null): string {
  const { row, column } = cellAt(name);
  const filled = xml.replace("<sheetData/>", "<sheetData></sheetData>");
  const [, before = "", data = "", after = ""] =
    /^([\s\S]*<sheetData>)([\s\S]*)(<\/sheetData>[\s\S]*)$/.exec(filled) ?? [];
  const rows = new Map(
    [...data.matchAll(/<row r="(\d+)"[^>]*>([\s\S]*?)<\/row>/g)].map(([, number, cells = ""]) => [
      Number(number) - 1,
      new Map(
        [...cells.matchAll(/<c r="([A-Z]+\d+)"(?:[^>]*\/>|[\s\S]*?<\/c>)/g)].map(
          ([whole, at = ""]) => [cellAt(at).column, whole],
        ),
      ),
    ]),
  );
  const cells = rows.get(row) ?? new Map<number, string>();
  if (typed === null) cells.delete(column);
  else cells.set(column, cellXml(name, typed));
  rows.set(row, cells);
  const inOrder = <T>(map: Map<number, T>): [number, T][] =>
    [...map].sort(([one], [other]) => one - other);
  const made = inOrder(rows).map(
    ([at, each]) =>
      `<row r="${at + 1}">${inOrder(each)
        .map(([, text]) => text)
        .join("")}</row>`,
  );
  return before + made.join("") + after;
}

function cellXml(name: string, typed: RigCell): string {
  const escaped = (text: string): string =>
    text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
  if (typeof typed === "string") {
    return `<c r="${name}" t="str"><v>${escaped(typed)}</v></c>`;
  }
  if (typeof typed === "number") return `<c r="${name}"><v>${typed}</v></c>`;
  if (typeof typed === "boolean") return `<c r="${name}" t="b"><v>${typed ? 1 : 0}</v></c>`;
  if ("kind" in typed) return `<c r="${name}"><v>${typed.serial}</v></c>`;
  return `<c r="${name}"><f>${escaped(typed.formula.slice(1))}</f><v>${cellText(typed.result)}</v></c>`;
}
