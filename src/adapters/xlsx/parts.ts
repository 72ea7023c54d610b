/** A workbook file as the parts that are zipped in it, and what it is when it is no such file. */
import { unzipSync, zipSync } from "fflate";
import { err, ok, type Result } from "../../core/base/result";
import { DamagedFile } from "./xml";

export const fileFaultCodes = [
  "file-empty",
  "file-not-a-workbook",
  "file-has-password",
  "file-of-old-kind",
  "file-damaged",
  "file-too-large",
  "file-without-sheets",
] as const;

/** Why a file cannot be read. `message` is plain words with a way on. */
export type FileFault = {
  readonly code: (typeof fileFaultCodes)[number];
  readonly message: string;
};

/** Parts by their path, such as `xl/workbook.xml`. */
export type Parts = ReadonlyMap<string, Uint8Array>;

/** Unzipped, all parts together may take this much: far above any honest workbook. */
const mostBytes = 512 * 1024 * 1024;
const mostParts = 20_000;

export const isZip = (bytes: Uint8Array): boolean => startsWith(bytes, [0x50, 0x4b, 3, 4]);

/** The container of Excel before 2007, in which a workbook with a password is kept too. */
export const isOldContainer = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);

/** Unzips a file. What it will unzip to is checked before it is unzipped. */
export function readParts(bytes: Uint8Array): Result<Parts, FileFault> {
  const told = { bytes: 0, parts: 0 };
  const isTooLarge = (): boolean => told.bytes > mostBytes || told.parts > mostParts;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        told.bytes += originalSize;
        told.parts += 1;
        return !isTooLarge() && !name.endsWith("/");
      },
    });
    if (isTooLarge()) return err(tooLarge);
    return ok(new Map(Object.entries(files).map(([path, part]) => [plainPath(path), part])));
  } catch {
    // The unzipper throws on any broken file, and so does an allocation for a made-up size.
    return err(damaged("it could not be unzipped"));
  }
}

/** Zips the parts. The same parts give the same bytes: no clock is read. */
export function partsBytes(parts: Parts): Uint8Array {
  const inOrder = [...parts].sort(([one], [other]) => rank(one) - rank(other));
  return zipSync(Object.fromEntries(inOrder), { level: 6, mtime: "1980-01-01T12:00:00" });
}

/** Some readers want the list of content types first. */
const rank = (path: string): number => (path === "[Content_Types].xml" ? 0 : 1);

/** The part at `path` as text, whatever the case of its letters; `null` where it is not there. */
export function partText(parts: Parts, path: string): string | null {
  const found = parts.get(path) ?? parts.get(pathOf(parts, path) ?? "");
  return found === undefined ? null : decode(found);
}

/** @throws DamagedFile when it is not there. */
export function neededText(parts: Parts, path: string): string {
  const text = partText(parts, path);
  if (text === null) throw new DamagedFile(`${path} is missing.`);
  return text;
}

/** The path as the file spells it, or `null` where there is no such part. */
export function pathOf(parts: Parts, path: string): string | null {
  if (parts.has(path)) return path;
  const wanted = path.toLowerCase();
  for (const there of parts.keys()) if (there.toLowerCase() === wanted) return there;
  return null;
}

export const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** XML is UTF-8 unless it starts with the marks of UTF-16. */
function decode(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  return new TextDecoder().decode(bytes);
}

const plainPath = (path: string): string => path.replaceAll("\\", "/").replace(/^\/+/, "");

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

export const damaged = (why: string): FileFault => ({
  code: "file-damaged",
  message: `The file is damaged: ${why}. Open it in your spreadsheet, let it be repaired, and save it again.`,
});

const tooLarge: FileFault = {
  code: "file-too-large",
  message: "Unzipped, the file would be far larger than any schedule. Save only the sheets needed.",
};
