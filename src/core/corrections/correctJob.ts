/** The corrections of one job put to its lines. Nothing that was typed is left out. */
import type { Inches } from "../base/units";
import { isPieces } from "../base/units";
import type { LengthUnit } from "../lengths/length";
import type { JobTakeOff, Line } from "../takeoff/takeOff";
import { addedLine, readPieces } from "./addedLine";
import { changed, readChange } from "./change";
import { asCounted, type CorrectedLine } from "./correctedLine";
import {
  isAddedRow,
  isLineCorrection,
  type AddedRow,
  type Correction,
  type LineCorrection,
} from "./correction";
import type { CorrectionFindingCode } from "./correctionFindings";
import { lineName, rowKey, type RowName } from "./rowName";

/** A row added by hand with the line that it makes; `null` where it cannot be counted. */
export type AddedEntry = { readonly row: AddedRow; readonly line: CorrectedLine | null };

export type JobCorrections = {
  /** Those counted, corrected or not, in their order; then those added by hand that can be counted. */
  readonly lines: readonly CorrectedLine[];
  /** Every row added by hand, by number. */
  readonly added: readonly AddedEntry[];
  /** Corrections that no line takes: its line is gone, or another correction of it counts. */
  readonly strays: readonly LineCorrection[];
};

/** Told of what is doubtful about the row `name`. `found` and `values` fill the finding's sentences. */
export type ReportCorrection = (
  code: CorrectionFindingCode,
  name: RowName,
  found: string,
  values?: Readonly<Record<string, string | number>>,
) => void;

export type CorrectionRules = {
  /** What a bare number in a size that is typed by hand means. */
  readonly unit: LengthUnit;
  readonly showLength: (length: Inches) => string;
};

/** A job without corrections. */
export const uncorrected = (lines: readonly Line[]): JobCorrections => ({
  lines: lines.map(asCounted),
  added: [],
  strays: [],
});

/** Puts the corrections of a job, no two of them with the same name, to its lines. */
export function correctJob(
  { job, lines }: Pick<JobTakeOff, "job" | "lines">,
  corrections: readonly Correction[],
  { unit, showLength }: CorrectionRules,
  report: ReportCorrection,
): JobCorrections {
  const ofLines = corrections.filter(isLineCorrection);
  const waiting = new Map(ofLines.map((each) => [rowKey(each.name), each]));
  const corrected = lines.map((line): CorrectedLine => {
    const key = waiting.size === 0 ? "" : rowKey(lineName(job, line));
    const typed = waiting.get(key);
    if (typed === undefined) return asCounted(line);
    waiting.delete(key);
    return correctLine(line, typed, lineWords(line, showLength), report);
  });
  const strays = [...waiting.values()];
  for (const { name, typed } of strays) {
    const code = name.copy === 1 ? "correction-without-line" : "correction-twice";
    report(code, name, typed.correction || typed.spares || typed.reason || typed.by, {
      line: lineWords(name, showLength),
    });
  }
  const added = corrections
    .filter(isAddedRow)
    .sort((one, other) => one.name.number - other.name.number)
    .map((row) => ({ row, line: addedOrReported(row, unit, report) }));
  const countedAdded = added.flatMap(({ line }) => (line === null ? [] : [line]));
  return { lines: [...corrected, ...countedAdded], added, strays };
}

/** `JAMB 7'-0"`, or the item alone. */
export const lineWords = (
  { item, size }: Pick<Line, "item" | "size">,
  showLength: (length: Inches) => string,
): string => [item, size.map(showLength).join(" x ")].filter((part) => part !== "").join(" ");

function correctLine(
  line: Line,
  typed: LineCorrection,
  words: string,
  report: ReportCorrection,
): CorrectedLine {
  const { correction, spares, reason, by } = typed.typed;
  const say = (code: CorrectionFindingCode, found: string, values = {}): void =>
    report(code, typed.name, found, { line: words, counted: line.quantity, ...values });
  const ownSpares = spares === "" ? null : readPieces(spares);
  if (spares !== "" && ownSpares === null) say("spares-not-whole", spares);
  const asItIs = { ...asCounted(line), typed, ownSpares };
  if (correction === "") return asItIs;

  const change = readChange(correction);
  if (!change.ok) {
    say(
      change.error === "unreadable" ? "correction-unreadable" : "correction-not-whole",
      correction,
    );
    return asItIs;
  }
  const quantity = changed(line.quantity, change.value);
  if (quantity === null) {
    say("correction-below-zero", correction);
    return asItIs;
  }
  const missing = [reason === "" ? "reason" : "", by === "" ? "initials" : ""].filter(Boolean);
  if (missing.length > 0) {
    say("correction-unexplained", correction, { missing: missing.join(" and no ") });
  }
  const { counted } = typed;
  if (change.value.kind === "instead" && counted !== null && counted !== line.quantity) {
    say("correction-outdated", String(change.value.pieces), { before: counted });
  }
  return { ...asItIs, quantity, change: change.value };
}

function addedOrReported(
  row: AddedRow,
  unit: LengthUnit,
  report: ReportCorrection,
): CorrectedLine | null {
  const { item, spares } = row.typed;
  const line = addedLine(row, unit);
  if (!line.ok) {
    report(line.error.code, row.name, line.error.found, { line: item });
    return null;
  }
  if (spares !== "" && !isPieces(line.value.ownSpares ?? -1)) {
    report("spares-not-whole", row.name, spares, { line: item });
  }
  return line.value;
}
