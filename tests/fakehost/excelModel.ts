/** What every place has that runs the real Excel object model: Node and the test browser. */
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

/** Lets the library refuse what the host has not, as in Excel, and adds what it is too old for. */
export function readyModel(model: OfficeModel): OfficeModel {
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
