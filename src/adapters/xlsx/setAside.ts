/**
 * Sets aside a sheet of ours into which a person typed: its part goes, whole, to a new sheet right
 * behind it, and our sheet's place in the workbook is free for a new part.
 *
 * Formulas elsewhere name sheets and tables, so they go on pointing at ours. Charts, pictures and
 * notes on the old sheet go with it.
 */
import { freeTableName } from "../../workbook/tableNames";
import { encode, neededText } from "./parts";
import {
  contentTypeOf,
  freePath,
  redirectRelationship,
  relationshipsOf,
  setContentType,
} from "./relationships";
import { tablesOfFile } from "./tables";
import { copySheetNames } from "./definedNames";
import { addSheet } from "./sheetList";
import { readWorkbookPart } from "./workbookPart";
import { escapeXml, parseXml, splice, withAttributes } from "./xml";

/** After it the sheet at `position` has a part that is still to be written. */
export function setAside(parts: Map<string, Uint8Array>, position: number, keptAs: string): void {
  const workbook = readWorkbookPart(parts);
  const entry = workbook.sheets[position];
  if (entry === undefined) throw new RangeError(`No sheet at ${position}.`);
  const { path, name, element } = entry;
  const fresh = freePath(parts, path.replace(/\d*\.xml$/i, ""), ".xml");
  setContentType(parts, fresh, contentTypeOf(parts, path));
  redirectRelationship(parts, workbook.path, element.attributes["id"] ?? "", fresh);
  addSheet(parts, keptAs, path, position);
  copySheetNames(parts, { position, name }, { position: position + 1, name: keptAs });
  const renamed = renameTables(parts, path);
  const source = neededText(parts, path)
    // Two sheets shown at once would be typed into together.
    .replace(/(<(?:[\w.-]+:)?sheetView\b[^>]*?)\s+tabSelected\s*=\s*["'][^"']*["']/, "$1");
  parts.set(path, encode(withTableNames(source, renamed)));
}

type Renamed = ReadonlyMap<string, string>;

/** Gives the sheet's tables new names, so that the old ones are free for ours. */
function renameTables(parts: Map<string, Uint8Array>, path: string): Renamed {
  const renamed = new Map<string, string>();
  const used = [...tablesOfFile(parts).names];
  for (const { type, target } of relationshipsOf(parts, path)) {
    if (type !== "table") continue;
    const source = neededText(parts, target);
    const root = parseXml(source);
    const { name = "", displayName = name } = root.attributes;
    const kept = freeTableName(`${displayName}_kept`, used);
    used.push(kept);
    renamed.set(displayName, kept);
    const change = withAttributes(source, root, { name: kept, displayName: kept });
    parts.set(target, encode(withTableNames(splice(source, [change]), renamed)));
  }
  return renamed;
}

/** Formulas of the kept sheet and its tables go on meaning the kept tables. */
function withTableNames(source: string, renamed: Renamed): string {
  if (renamed.size === 0) return source;
  return source.replace(
    /(<(?:[\w.-]+:)?(f|calculatedColumnFormula|totalsRowFormula)\b[^>]*>)([^<]*)/g,
    (_, open: string, __, formula: string) =>
      open +
      formula.replace(/([\p{L}_][\p{L}\p{N}_.]*)(?=\[)/gu, (word) => {
        const kept = renamed.get(word);
        return kept === undefined ? word : escapeXml(kept);
      }),
  );
}
