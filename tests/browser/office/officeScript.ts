/** The script that answers for Office.js in the test browser. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { buildSync } from "esbuild";
import type { OfficeSetup } from "./page";

/** Where the shipped page asks for Office.js. */
export const officeAddress = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** Microsoft's object model, unchanged, before a host that answers from this workbook. */
export function officeScript(setup: OfficeSetup): string {
  const { resolve } = createRequire(path.join(process.cwd(), "package.json"));
  const model = resolve("@microsoft/office-js/dist/excel-web-16.00.debug.js");
  const bundle = buildSync({
    entryPoints: [path.join(process.cwd(), "tests/browser/office/page.ts")],
    bundle: true,
    format: "iife",
    target: "es2022",
    write: false,
    logLevel: "silent",
  });
  return [
    `globalThis.officeSetup = ${JSON.stringify(setup)};`,
    readFileSync(model, "utf8"),
    bundle.outputFiles[0]?.text,
  ].join("\n;");
}
