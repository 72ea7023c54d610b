/**
 * How a sheet of ours is known again in a saved workbook: a hidden name of the workbook's scope
 * that holds a text constant and refers to the whole sheet. All hosts use this one form, so that a
 * workbook written by one is understood by the others.
 *
 * The reference follows the sheet when it is renamed or moved, and is lost with the sheet. When a
 * person copies the sheet, the copy gets names of its own scope only, so a copy is not ours:
 * readers must ignore such names when they are of a sheet's scope. (How spreadsheets treat names
 * when a sheet is copied: common behaviour, value from memory.)
 */
import { sheetReference } from "../core/base/cell";
import type { SheetMark } from "./drawing";

/** The hidden name number `count`, from 1. Which sheet has which number means nothing. */
export const stampName = (count: number): string => `_cribsheet_${count}`;

/** Whether a name of the workbook's scope is a stamp of ours, broken or not. */
export const isStampName = (name: string): boolean => /^_cribsheet_\d+$/i.test(name);

/** What the name holds: which sheet it is, and the fingerprint of what we wrote (`fingerprint.ts`). */
export type SheetStamp = {
  /** The name that the sheet has now. */
  readonly sheet: string;
  readonly mark: SheetMark;
  readonly written: string;
};

/** A text constant in a formula holds at most 255 characters, so a long one is joined from parts. */
const longestConstant = 250;

/** The stamp as the formula of the hidden name: `=CHOOSE(1,"1|4f0c…|hardware|A",'Job A'!$1:$1048576)`. */
export function stampFormula({ sheet, mark, written }: SheetStamp): string {
  const text = ["1", written, mark.kind, mark.subject].join("|");
  const parts: string[] = [];
  for (let start = 0; start < text.length; start += longestConstant) {
    parts.push(`"${text.slice(start, start + longestConstant).replaceAll('"', '""')}"`);
  }
  return `=CHOOSE(1,${parts.join("&")},${sheetReference(sheet)}!$1:$1048576)`;
}

const shape =
  /^=?CHOOSE\(1\s*[,;]\s*("(?:[^"]|"")*"(?:\s*&\s*"(?:[^"]|"")*")*)\s*[,;]\s*(?:'((?:[^']|'')+)'|([^'!#]+))[!.]\$?[A-Z]*\$?\d+:\$?[A-Z]*\$?\d+\)$/i;

/** Reads what `stampFormula` made, with or without `=`; `null` for anything else, or a sheet that is gone. */
export function readStamp(formula: string): SheetStamp | null {
  const [, constants = "", quoted, plain = ""] = shape.exec(formula.trim()) ?? [];
  const parts = constants.match(/"(?:[^"]|"")*"/g) ?? [];
  const text = parts.map((part) => part.slice(1, -1).replaceAll('""', '"')).join("");
  const [version, written, kind, ...subject] = text.split("|");
  if (version !== "1" || written === undefined || kind === undefined || subject.length === 0) {
    return null;
  }
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  return { sheet, written, mark: { kind, subject: subject.join("|") } };
}

/** Whether two marks mean the same sheet. */
export const sameMark = (one: SheetMark, other: SheetMark): boolean =>
  one.kind === other.kind && one.subject === other.subject;
