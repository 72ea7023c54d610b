/** Texts against files: `NAME.expected.txt` in this folder. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "@jest/globals";

/** Expects the text to be that of the file. With ACCEPT=1 the file is made of the text. */
export function check(name: string, text: string): void {
  const path = join(__dirname, `${name}.expected.txt`);
  if (process.env["ACCEPT"] === "1" || !existsSync(path)) {
    if (process.env["CI"] !== undefined) throw new Error(`${path} is missing`);
    writeFileSync(path, text);
  }
  expect(text).toBe(readFileSync(path, "utf8"));
}
