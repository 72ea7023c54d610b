/** Opening the bytes of a file as a workbook, whatever they turn out to be. */
import { cellText } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { blankSheet, workbookOf } from "../../workbook/blankSheet";
import { freeSheetName } from "../../workbook/sheetNames";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { fileWorkbook, type FileWorkbook } from "./fileWorkbook";
import {
  damaged,
  isOldContainer,
  isZip,
  partText,
  readParts,
  type FileFault,
  type Parts,
} from "./parts";
import { isText, readCsv } from "./readCsv";
import { contentTypeOf } from "./relationships";
import { snapshotParts } from "./snapshotBytes";
import { readWorkbookPart, workbookPath } from "./workbookPart";
import { DamagedFile } from "./xml";

/**
 * Opens an .xlsx or .xlsm file, or a text file of rows (.csv, .tsv, .txt), which becomes a workbook
 * of one sheet. What the file is, is seen from its bytes; its name only gives the workbook its name.
 */
export function openFile(bytes: Uint8Array, name: string): Result<FileWorkbook, FileFault> {
  if (bytes.length === 0) return err(empty);
  if (isOldContainer(bytes)) return err(oldContainer(bytes));
  if (!isZip(bytes)) return openText(bytes, name);
  const parts = readParts(bytes);
  if (!parts.ok) return parts;
  try {
    const fault = otherKind(parts.value);
    if (fault !== null) return err(fault);
    if (!readWorkbookPart(parts.value).sheets.some(({ isWorksheet }) => isWorksheet)) {
      return err(withoutSheets);
    }
    const workbook = fileWorkbook(parts.value, name);
    // Each sheet is read now, so that damage in one is told here and not in the middle of the work.
    workbook.snapshot();
    return ok(workbook);
  } catch (error) {
    if (error instanceof DamagedFile) return err(damaged(error.message.replace(/\.$/, "")));
    throw error;
  }
}

function openText(bytes: Uint8Array, name: string): Result<FileWorkbook, FileFault> {
  if (/\.xl[a-z]*$/i.test(name) || !isText(bytes)) return err(notAWorkbook);
  const start = new TextDecoder().decode(bytes.subarray(0, 200)).trimStart();
  if (/^<(?:!doctype|html|\?xml|table)/i.test(start)) return err(webPage);
  const rows = readCsv(bytes);
  if (rows.every((cells) => cells.every((value) => value === null))) return err(empty);
  const title = name.replace(/^.*[/\\]/, "").replace(/\.\w+$/, "");
  return ok(fileWorkbook(snapshotParts(textSnapshot(rows, freeSheetName(title, []))), name));
}

function textSnapshot(rows: ReturnType<typeof readCsv>, sheet: string): WorkbookSnapshot {
  const columns = rows.reduce((most, { length }) => Math.max(most, length), 0);
  const widths = Array.from({ length: columns }, (_, column) =>
    rows.reduce((most, cells) => Math.max(most, cellText(cells[column] ?? null).length + 2), 8),
  );
  return workbookOf("", [
    {
      ...blankSheet(sheet),
      rows: rows.map((cells) => cells.map((value) => (value === null ? null : { value }))),
      columnWidths: widths.map((width) => Math.min(width, 50)),
    },
  ]);
}

/** Other things that are zipped: binary workbooks, other offices' documents, anything at all. */
function otherKind(parts: Parts): FileFault | null {
  if (partText(parts, "[Content_Types].xml") === null) {
    return parts.has("content.xml") ? openDocument : notAWorkbook;
  }
  if ([...parts.keys()].some((path) => /^(?:word|ppt)\//.test(path))) return notAWorkbook;
  const type = contentTypeOf(parts, workbookPath(parts));
  return type.includes("binary") ? binaryWorkbook : null;
}

/** A workbook with a password is kept, encrypted, in the container of Excel before 2007. */
function oldContainer(bytes: Uint8Array): FileFault {
  const names = new TextDecoder("utf-16le").decode(bytes);
  // The names in the container lie at even places, as UTF-16.
  return names.includes("EncryptedPackage") ? hasPassword : oldKind;
}

const saveAgain = "Open it in your spreadsheet and save it as an Excel workbook (.xlsx).";

const empty: FileFault = {
  code: "file-empty",
  message: "The file is empty. Choose another file.",
};
const notAWorkbook: FileFault = {
  code: "file-not-a-workbook",
  message: "The file is not a workbook. Choose an .xlsx file, or a .csv file of rows.",
};
const webPage: FileFault = {
  code: "file-not-a-workbook",
  message: `The file is a web page or XML, not a workbook. ${saveAgain}`,
};
const openDocument: FileFault = {
  code: "file-not-a-workbook",
  message: `The file is an OpenDocument file. ${saveAgain}`,
};
const hasPassword: FileFault = {
  code: "file-has-password",
  message:
    "The file has a password. Open it in your spreadsheet, take the password off, and save it.",
};
const oldKind: FileFault = {
  code: "file-of-old-kind",
  message: `The file is of the kind used before 2007 (.xls). ${saveAgain}`,
};
const binaryWorkbook: FileFault = {
  code: "file-of-old-kind",
  message: `The file is a binary workbook (.xlsb). ${saveAgain}`,
};
const withoutSheets: FileFault = {
  code: "file-without-sheets",
  message: "The workbook has no sheet with cells. Choose another file.",
};
