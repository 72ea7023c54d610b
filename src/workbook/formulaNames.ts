/**
 * The sheets and tables that a formula names, and the formula with other names in their place: a
 * drawing names the sheets and tables that it wants, and the host may have to call them otherwise.
 */
import { sheetReference } from "../core/base/cell";

/** Names by the lower-case name that they replace. */
export type OtherNames = ReadonlyMap<string, string>;

/** Text, a sheet in front of `!`, and a table or nothing in front of `[…]`; all else is left alone. */
const named =
  /"(?:[^"]|"")*"|'(?<quoted>(?:[^']|'')+)'!|(?<![#\p{L}\p{N}_.])(?<plain>[\p{L}_][\p{L}\p{N}_.]*)!|(?<table>[\p{L}_\\][\p{L}\p{N}_.\\]*)?\[(?<inside>(?:[^[\]']|'.|\[(?:[^[\]']|'.)*\])*)\]/gu;

/** `formula` with each sheet and table called by its other name, where it has one. */
export const withOtherNames = (formula: string, sheets: OtherNames, tables: OtherNames): string =>
  formula.replace(named, (whole: string, ...rest: unknown[]) => {
    const { quoted, plain, table, inside } = rest.at(-1) as Record<string, string | undefined>;
    const sheet = quoted?.replaceAll("''", "'") ?? plain;
    if (sheet !== undefined) {
      const other = sheets.get(sheet.toLowerCase());
      return other === undefined ? whole : `${sheetReference(other)}!`;
    }
    const other = table === undefined ? undefined : tables.get(table.toLowerCase());
    return other === undefined ? whole : `${other}[${inside ?? ""}]`;
  });

/** The tables that a formula names, in lower case; the empty text stands for its own table (`[@Item]`). */
export function tablesNamed(formula: string): ReadonlySet<string> {
  const tables = new Set<string>();
  for (const { groups } of formula.matchAll(named)) {
    if (groups?.["inside"] !== undefined) tables.add((groups["table"] ?? "").toLowerCase());
  }
  return tables;
}
