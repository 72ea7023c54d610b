/** Files on disk: read as workbooks, written so that a failure leaves the old file. */
import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { openFile } from "../../adapters/xlsx/openFile";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import type { Block } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import type { Workbook } from "../../workbook/workbook";

/** Error: why the file cannot be read, with its name. */
export function readWorkbookFile(path: string): Result<FileWorkbook, string> {
  const bytes = readBytes(path);
  if (!bytes.ok) return bytes;
  const opened = openFile(bytes.value, basename(path));
  return opened.ok ? opened : err(`${path}: ${opened.error.message}`);
}

/**
 * Writes beside the file and then puts it in its place, so that the old one stays if writing fails.
 * Error: why not, such as a workbook in place of a .csv, which nothing could open any more.
 */
export function writeFileWhole(path: string, bytes: Uint8Array): Result<null, string> {
  if (isWorkbook(bytes) && !/\.xls[xm]$/i.test(path)) {
    return err(`${path}: nothing is written, since a workbook is an .xlsx. Name one with --out.`);
  }
  const aside = `${path}.${randomUUID()}.part`;
  try {
    writeFileSync(aside, bytes);
    renameSync(aside, path);
    return ok(null);
  } catch (error) {
    rmSync(aside, { force: true });
    return err(`${path}: the file could not be written (${reasonOf(error)}).`);
  }
}

/** Every .xlsx is a ZIP file, which starts with these two letters. */
const isWorkbook = ([first, second]: Uint8Array): boolean => first === 0x50 && second === 0x4b;

/** The blocks of every sheet. Error: why one cannot be read. */
export async function blocksOf(workbook: Workbook): Promise<Result<readonly Block[], string>> {
  const blocks: Block[] = [];
  for (const { name } of await workbook.sheets()) {
    const block = await workbook.read({ kind: "sheet", sheet: name });
    if (!block.ok) return err(block.error.message);
    blocks.push(block.value);
  }
  return ok(blocks);
}

export const fileExists = (path: string): boolean => existsSync(path);

function readBytes(path: string): Result<Uint8Array, string> {
  try {
    return ok(readFileSync(path));
  } catch (error) {
    return err(`${path}: the file could not be read (${reasonOf(error)}).`);
  }
}

/** Error: why the folder cannot be made, such as a file of that name. */
export function makeFolder(path: string): Result<null, string> {
  try {
    mkdirSync(path, { recursive: true });
    return ok(null);
  } catch (error) {
    return err(`${path}: the folder could not be made (${reasonOf(error)}).`);
  }
}

/** The operating system's word for it, in plain words where it is a common one. */
function reasonOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const words: Readonly<Record<string, string>> = {
    ENOENT: "there is no such file or folder",
    EACCES: "you may not do that there",
    EPERM: "you may not do that there",
    EISDIR: "it is a folder",
    EEXIST: "there is a file of that name",
    EBUSY: "another program has it open",
    ENOSPC: "the disk is full",
  };
  return words[code] ?? (error instanceof Error ? error.message : String(error));
}
