/** Changing the part that lists the sheets; all that is not named stays as it is. */
import { encode } from "./parts";
import { readWorkbookPart, type WorkbookPart } from "./workbookPart";
import { splice, type Splice, type XmlElement } from "./xml";

/** Makes the changes that `changes` asks for, once it has seen the part as it is. */
export function editWorkbookPart(
  parts: Map<string, Uint8Array>,
  changes: (workbook: WorkbookPart) => readonly Splice[],
): void {
  const workbook = readWorkbookPart(parts);
  const splices = changes(workbook);
  if (splices.length > 0) parts.set(workbook.path, encode(splice(workbook.source, splices)));
}

/** The order in which the part must have its elements. (ECMA-376 part 1, 18.2.27.) */
const order = [
  "fileVersion",
  "fileSharing",
  "workbookPr",
  "workbookProtection",
  "bookViews",
  "sheets",
  "functionGroups",
  "externalReferences",
  "definedNames",
  "calcPr",
];

/** `text` as the element `name` of `root`, at the place where it must stand. */
export function inserted(root: XmlElement, name: string, text: string): Splice {
  const before = order.slice(0, order.indexOf(name));
  const last = root.children.filter((child) => before.includes(child.name)).at(-1);
  const at = last?.end ?? root.innerStart;
  return { start: at, end: at, text };
}
