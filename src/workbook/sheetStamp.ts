/**
 * How a sheet of ours is known again in a saved workbook: a hidden name that belongs to the sheet,
 * holding a text constant. Spreadsheets keep such a name through saving, renaming and moving, and
 * every host can read and write one. All hosts use this one form, so that a workbook written by
 * one is understood by the others.
 */
import type { SheetMark } from "./drawing";

/** The name, of the sheet's own scope and hidden. */
export const stampName = "_cribsheet";

/** What the name holds: which sheet it is, and the fingerprint of what we wrote (`fingerprint.ts`). */
export type SheetStamp = { readonly mark: SheetMark; readonly written: string };

/** A text constant in a formula holds at most 255 characters, so a long one is joined from parts. */
const longestConstant = 250;

/** The stamp as the formula of the hidden name, such as `="1|4f0c…|hardware|Job A"`. */
export function stampFormula({ mark, written }: SheetStamp): string {
  const text = ["1", written, mark.kind, mark.subject].join("|");
  const parts: string[] = [];
  for (let start = 0; start < text.length; start += longestConstant) {
    parts.push(`"${text.slice(start, start + longestConstant).replaceAll('"', '""')}"`);
  }
  return `=${parts.join("&")}`;
}

/** Reads what `stampFormula` made, with or without `=`; `null` for anything else. */
export function readStamp(formula: string): SheetStamp | null {
  const body = formula.trim().replace(/^=/, "");
  if (!/^"(?:[^"]|"")*"(?:\s*&\s*"(?:[^"]|"")*")*$/.test(body)) return null;
  const constants = body.match(/"(?:[^"]|"")*"/g) ?? [];
  const text = constants.map((part) => part.slice(1, -1).replaceAll('""', '"')).join("");
  const [version, written, kind, ...subject] = text.split("|");
  if (version !== "1" || written === undefined || kind === undefined || subject.length === 0) {
    return null;
  }
  return { written, mark: { kind, subject: subject.join("|") } };
}

/** Whether two marks mean the same sheet. */
export const sameMark = (one: SheetMark, other: SheetMark): boolean =>
  one.kind === other.kind && one.subject === other.subject;
