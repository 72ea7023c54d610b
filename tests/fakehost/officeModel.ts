/**
 * Loads the real Excel object model of @microsoft/office-js in plain Node. Only inert stand-ins for
 * the page are passed in: every proxy, batch, load rule and error is the library's own. The entry
 * points for tests have private names, so the package's version is pinned.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { compileFunction } from "node:vm";
import type { OfficeExtensionModel } from "./fakeHost";

export type OfficeModel = {
  readonly Excel: typeof Excel;
  readonly OfficeExtension: OfficeExtensionModel;
};

/** Whether the host has a requirement set, as `Office.context.requirements` answers. */
export type Supports = (set: string, version?: string) => boolean;

/** A host with ExcelApi up to `version` (such as `1.9`) and everything else. */
export const excelApiUpTo =
  (version: string): Supports =>
  (set, wanted = "1.1") => {
    if (set === "ExcelApi") return later(wanted, version) <= 0;
    // The library is older than 1.17 and has what came with it under the name of the web's own set.
    return set !== "ExcelApiOnline" || later(version, "1.17") >= 0;
  };

/** Above zero when the version `one` is later than `other`. */
const later = (one: string, other: string): number => {
  const [major = 0, minor = 0] = one.split(".").map(Number);
  const [otherMajor = 0, otherMinor = 0] = other.split(".").map(Number);
  return major - otherMajor || minor - otherMinor;
};

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
  model.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  addNotes(model);
  return model;
}

/** The library is older than notes (1.18). On the wire they are what comments are, under another name. */
function addNotes({ Excel: { Worksheet, CommentCollection }, OfficeExtension }: OfficeModel): void {
  Object.defineProperty(Worksheet.prototype, "notes", {
    get(this: object) {
      const { createPropertyObject } = OfficeExtension.BatchApiHelper;
      return createPropertyObject(CommentCollection, this, "Notes", true, 4);
    },
  });
}

const none = (): void => undefined;
