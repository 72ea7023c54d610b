/** Reads what persons typed on the hardware sheets. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import type { ReadSheet } from "../../core/corrections/correction";
import { noCorrections, type CorrectionInput } from "../../core/corrections/corrections";
import { sparesOn, writtenOn, type CorrectionRecord } from "../../core/corrections/record";
import { readHardwareTable, type HardwareRules } from "../../tables/hardwareTable";
import type { CarriedCell, SheetMark } from "../../workbook/drawing";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { readRecord, type ReadRecord } from "./correctionRecord";

const readFindings = {
  "hardware-headings-gone": {
    level: "warn",
    says: "The headings of {found} are gone, so what was typed on it since it was written is not read.",
    todo: "Put back the headings Item, Correction and Line, or type your corrections on the new sheet; the old one is kept.",
  },
  "corrections-damaged": {
    level: "warn",
    says: "What the workbook kept of corrections can be read only in part.",
    todo: "Check the corrections on the hardware sheets. The damaged text stays in the workbook.",
  },
} as const satisfies FindingTable;

/** What was typed on the hardware sheets of a workbook, with what is on record. */
export type ReadCorrections = {
  readonly input: CorrectionInput;
  /** The cells that were read of each sheet, by the subject of its mark. */
  readonly carried: ReadonlyMap<string, readonly CarriedCell[]>;
  /** The name of each sheet, by the subject of its mark. */
  readonly names: ReadonlyMap<string, string>;
  readonly damaged: ReadRecord["damaged"];
  readonly findings: readonly Finding[];
};

export const nothingRead: ReadCorrections = {
  input: noCorrections,
  carried: new Map(),
  names: new Map(),
  damaged: null,
  findings: [],
};

/** Whether it is the mark of a hardware sheet. */
export const isHardware = ({ kind }: SheetMark): boolean => kind === "hardware";

/** Reads the record and every hardware sheet of ours. `read` may answer from memory. */
export async function readCorrections(
  workbook: Pick<Workbook, "sheets" | "readSetting" | "read">,
  read: Workbook["read"] = (source) => workbook.read(source),
): Promise<Result<ReadCorrections, WorkbookFault>> {
  const { record, damaged } = await readRecord(workbook);
  const sheets: ReadSheet[] = [];
  const carried = new Map<string, readonly CarriedCell[]>();
  const names = new Map<string, string>();
  const findings: Finding[] =
    damaged === null ? [] : [makeFinding(readFindings, "corrections-damaged", {})];
  for (const { name, mark } of await workbook.sheets()) {
    if (mark === null || !isHardware(mark)) continue;
    const block = await read({ kind: "sheet", sheet: name });
    if (!block.ok) return block;
    const { subject } = mark;
    names.set(subject, name);
    const table = readHardwareTable(block.value, hardwareRules(record, subject));
    if (table === null) {
      const place = { sheet: name, row: 0, column: 0 };
      findings.push(makeFinding(readFindings, "hardware-headings-gone", { place, found: name }));
      continue;
    }
    sheets.push(table.sheet);
    // Of two sheets with one mark it cannot be said here which one will be replaced.
    carried.set(subject, carried.has(subject) ? [] : table.carried);
  }
  return ok({ input: { record, sheets }, carried, names, damaged, findings });
}

/** What the sheet of that subject is to be read by. */
export const hardwareRules = (record: CorrectionRecord, subject: string): HardwareRules => ({
  subject,
  spares: sparesOn(record, subject),
  written: writtenOn(record, subject),
});
