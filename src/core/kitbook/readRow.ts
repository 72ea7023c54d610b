/**
 * Kit-book rows read one by one: each cell makes sense by itself, and formulas are parsed. What
 * names mean is found out later, for each opening type.
 */
import { isBlank, type TypedCell } from "../base/cell";
import { findingLevels, type Finding, type FindingLevel } from "../base/finding";
import { normalName } from "../formulas/names";
import { readFormula } from "../formulas/read";
import { standardFields } from "./fields";
import type { KitBookFindingCode } from "./findings";
import { typeKey, type ItemBy, type PartBy, type RowSource } from "./kitBook";
import { readMessage, type ReadMessagePiece } from "./message";
import {
  bookFinding,
  readFilledFormula,
  readFilledText,
  readFormulaIfAny,
  readFormulaText,
  readText,
  type ReadFormula,
  type Report,
} from "./readCell";
import type { KitBookSection, LimitRow, PartRow, SizeRow } from "./rows";
import { sizeUnits, type SizeUnit } from "./sizeUnit";

/** The opening types a row is for: by key as first typed in the row, or every one. */
type ForTypes = ReadonlyMap<string, string> | "all";

/** A row with its findings; `content` is `null` where one of them keeps it from being used. */
export type ReadRow<Content> = {
  readonly source: RowSource;
  readonly forTypes: ForTypes;
  /** The size that the row is to work out, so far as that can be read; `null` in other sections. */
  readonly sizeName: string | null;
  readonly content: Content | null;
  readonly findings: readonly Finding[];
};

export type ReadSize = {
  readonly name: string;
  readonly place: TypedCell["place"];
  readonly unit: SizeUnit;
  readonly formula: ReadFormula;
  readonly note: string;
  readonly basis: string;
};

export type ReadPart = PartBy<ReadFormula>;

export type ReadLimit = {
  readonly when: ReadFormula;
  readonly level: FindingLevel;
  readonly text: string;
  readonly place: TypedCell["place"];
  readonly message: readonly ReadMessagePiece[];
  readonly basis: string;
};

export function readSizeRow(row: SizeRow, number: number): ReadRow<ReadSize> {
  let sizeName: string | null = null;
  const read = readRow("sizes", number, row, (report) => {
    const name = readSizeName(row.name, report);
    const unit = readUnit(row.unit, report);
    const formula = readFilledFormula(row.formula, "formula", report);
    const note = readText(row.note, report);
    const basis = readText(row.basis, report);
    sizeName = name;
    if (name === null || unit === null || formula === null) return null;
    return { name, place: row.name.place, unit, formula, note: note ?? "", basis: basis ?? "" };
  });
  return { ...read, sizeName };
}

export const readPartRow = (row: PartRow, number: number): ReadRow<ReadPart> =>
  readRow("parts", number, row, (report) => {
    const bag = readText(row.bag, report) ?? "";
    if (isBlank(row.bag.value)) report(bookFinding("bag-empty", { place: row.bag.place }));
    const step = readFormulaIfAny(row.step, report);
    const item = readItem(row.item, report);
    const size = readPieceSize(row.size, report);
    const quantity = readFilledFormula(row.quantity, "quantity", report);
    const when = readFormulaIfAny(row.when, report);
    const cutLength = readFormulaIfAny(row.cutLength, report);
    const minutes = readFormulaIfAny(row.minutes, report);
    const joined = readFormulaIfAny(row.joined, report);
    const basis = readText(row.basis, report) ?? "";
    if (size !== null && size.length > 0 && cutLength !== null) {
      report(bookFinding("size-and-cut-length", { place: row.cutLength.place }));
    }
    if (item === null || size === null || quantity === null) return null;
    return { bag, step, item, size, quantity, when, cutLength, minutes, joined, basis };
  });

export const readLimitRow = (row: LimitRow, number: number): ReadRow<ReadLimit> =>
  readRow("limits", number, row, (report) => {
    const when = readFilledFormula(row.when, "condition", report);
    const level = readLevel(row.level, report);
    const text = readFilledText(row.message, "message", report);
    const basis = readText(row.basis, report) ?? "";
    if (when === null || level === null || text === null) return null;
    return { when, level, text, place: row.message.place, message: readMessage(text), basis };
  });

/** Reads the row's types, then the rest; a finding that stops leaves the row without content. */
function readRow<Content>(
  section: KitBookSection,
  number: number,
  row: { readonly type: TypedCell },
  read: (report: Report) => Content | null,
): ReadRow<Content> {
  const findings: Finding[] = [];
  const report: Report = (finding) => findings.push(finding);
  const forTypes = readTypes(row.type, report);
  const content = read(report);
  const usable = findings.every((finding) => finding.level !== "stop");
  return {
    source: { section, number, place: row.type.place },
    forTypes,
    sizeName: null,
    content: usable ? content : null,
    findings,
  };
}

/** A row whose type cannot be read may be about any type: it goes to all of them, as a bad row. */
function readTypes(cell: TypedCell, report: Report): ForTypes {
  const text = readText(cell, report);
  if (text === null) return "all";
  const names = text.split(",").map((name) => name.trim().replace(/\s+/g, " "));
  if (names.includes("*")) return "all";
  const keyed = names.map((name) => [typeKey(name), name] as const).filter(([key]) => key !== "");
  // The first of two ways to write one type is kept.
  if (keyed.length > 0) return new Map(keyed.reverse());
  report(bookFinding("book-type-empty", { place: cell.place, found: text }));
  return "all";
}

function readSizeName(cell: TypedCell, report: Report): string | null {
  const name = readFilledText(cell, "name", report);
  if (name === null) return null;
  if (standardFields.some((field) => field.name === normalName(name))) {
    report(bookFinding("size-name-is-a-field", { place: cell.place, found: name }));
    return null;
  }
  const read = readFormula(normalName(name));
  if (read.ok && read.value.tree.kind === "name") return name;
  report(bookFinding("size-name-unusable", { place: cell.place, found: name }));
  return null;
}

const unitsByWord: ReadonlyMap<string, SizeUnit> = new Map<string, SizeUnit>([
  ...sizeUnits.map((unit) => [unit, unit] as const),
  ["lengths", "length"],
  ["inches", "length"],
  ["counts", "count"],
  ["pieces", "count"],
  ["numbers", "number"],
  ["yes or no", "yes/no"],
  ["yes / no", "yes/no"],
  ["y/n", "yes/no"],
]);

function readUnit(cell: TypedCell, report: Report): SizeUnit | null {
  const known = sizeUnits.join(", ");
  return readWord(cell, unitsByWord, "size-unit-unknown", report, { known });
}

function readItem(cell: TypedCell, report: Report): ItemBy<ReadFormula> | null {
  const text = readFilledText(cell, "item", report);
  if (text === null) return null;
  if (!text.startsWith("=")) return { kind: "code", code: text.replace(/\s+/g, " ") };
  if (text.slice(1).trim() === "") {
    report(bookFinding("item-or-formula-empty", { place: cell.place, found: text }));
    return null;
  }
  const formula = readFormulaText(text, cell.place, report);
  return formula === null ? null : { kind: "formula", formula };
}

/** The measures of a piece: those between ` x ` outside quotes, brackets and names. */
function readPieceSize(cell: TypedCell, report: Report): readonly ReadFormula[] | null {
  if (isBlank(cell.value)) return [];
  const text = readText(cell, report);
  if (text === null) return null;
  const measures = splitMeasures(text);
  if (measures.length > 2) {
    report(bookFinding("size-not-one-or-two", { place: cell.place, found: text }));
    return null;
  }
  const read = measures.map((measure) => readFormulaText(measure, cell.place, report));
  const formulas = read.filter((formula) => formula !== null);
  return formulas.length === read.length ? formulas : null;
}

function splitMeasures(text: string): readonly string[] {
  // A text in quotes, or a heading in square brackets, is passed over whole, so that an x in it
  // splits nothing. A quote that follows a digit is an inch mark.
  const pieces = text.match(/(?<!\d\s?)"(?:[^"]|"")*"|\[[^\]]*\]|\s[x×]\s|./gis) ?? [];
  const measures = [""];
  for (const piece of pieces) {
    if (/^\s[x×]\s$/i.test(piece)) measures.push("");
    else measures.push((measures.pop() ?? "") + piece);
  }
  return measures.map((measure) => measure.trim());
}

const levelsByWord: ReadonlyMap<string, FindingLevel> = new Map<string, FindingLevel>([
  ...findingLevels.map((level) => [level, level] as const),
  ["warning", "warn"],
]);

const readLevel = (cell: TypedCell, report: Report): FindingLevel | null =>
  readWord(cell, levelsByWord, "level-unknown", report);

/** What the cell's word means, in any case; reports a word that means nothing. */
function readWord<Meaning>(
  cell: TypedCell,
  meanings: ReadonlyMap<string, Meaning>,
  code: KitBookFindingCode,
  report: Report,
  values: Readonly<Record<string, string>> = {},
): Meaning | null {
  const text = readText(cell, report);
  if (text === null) return null;
  const meaning = meanings.get(text.toLowerCase());
  if (meaning !== undefined) return meaning;
  report(bookFinding(code, { place: cell.place, found: text, values }));
  return null;
}
