/**
 * Loads the real Excel object model of @microsoft/office-js in plain Node. Only inert stand-ins for
 * the page are passed in: every proxy, batch, load rule and error is the library's own. The entry
 * points for tests have private names, so the package's version is pinned.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { compileFunction } from "node:vm";
import { readyModel, type OfficeModel, type Supports } from "./excelModel";

const file = join(
  createRequire(join(process.cwd(), "package.json")).resolve("@microsoft/office-js/package.json"),
  "../dist/excel-web-16.00.debug.js",
);

export function loadOfficeModel(supports: Supports): OfficeModel {
  const element = (): object => ({ setAttribute: none, appendChild: none, style: {} });
  const office = { context: { requirements: { isSetSupported: supports } } };
  const page: Record<string, unknown> = {
    addEventListener: none,
    name: "",
    history: {},
    navigator: { userAgent: "node" },
    location: {
      protocol: "https:",
      href: "https://localhost/",
      search: "",
      hash: "",
      host: "localhost",
      hostname: "localhost",
    },
    document: {
      createElement: element,
      getElementsByTagName: () => [element()],
      getElementById: () => null,
      addEventListener: none,
      cookie: "",
      readyState: "complete",
      body: element(),
    },
    Office: office,
  };
  for (const name of ["window", "self", "parent", "top"]) page[name] = page;
  // Declared here, so that the file's own `var` of these names lands on the page.
  for (const name of ["OfficeExtension", "OfficeCore", "Excel", "OSF", "OfficeExt", "Microsoft"]) {
    page[name] ??= undefined;
  }
  const quiet = { log: none, warn: none, error: none, info: none };
  const names = ["window", "document", "location", "navigator", "self", "console"];
  const load = compileFunction(
    `with (window) {${readFileSync(file, "utf8")}\n;return { Excel, OfficeExtension }; }`,
    names,
    { filename: file },
  ) as (...stands: readonly unknown[]) => OfficeModel;
  const model = load(page, page["document"], page["location"], page["navigator"], page, quiet);
  // The file puts its own Office there.
  page["Office"] = office;
  return readyModel(model);
}

const none = (): void => undefined;
