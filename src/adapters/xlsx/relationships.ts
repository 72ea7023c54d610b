/** How one part of a workbook file points at another, and what each part is. */
import { encode, neededText, partText, pathOf, type Parts } from "./parts";
import { append, childrenNamed, escapeXml, parseXml, splice, withAttributes } from "./xml";

/** `type` is the last word of the relationship's type, such as `worksheet` or `comments`. */
export type Relationship = {
  readonly id: string;
  readonly type: string;
  /** The part's path; the address itself where `isExternal`. */
  readonly target: string;
  readonly isExternal: boolean;
};

const typeBase = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
export const relationshipNamespace = typeBase.slice(0, -1);
const contentTypesPath = "[Content_Types].xml";

/** Where the relationships of the part at `path` are kept; the empty path is the whole file. */
export const relationshipsPath = (path: string): string =>
  `${folderOf(path)}_rels/${path.slice(folderOf(path).length)}.rels`;

/** All relationships of the part at `path`, in the file's order; none where it has no such list. */
export function relationshipsOf(parts: Parts, path: string): readonly Relationship[] {
  const text = partText(parts, relationshipsPath(path));
  if (text === null) return [];
  return childrenNamed(parseXml(text), "Relationship").map(({ attributes }) => {
    const { Id = "", Type = "", Target = "", TargetMode = "" } = attributes;
    const isExternal = TargetMode === "External";
    const target = isExternal ? Target : resolve(path, Target);
    return {
      id: Id,
      type: Type.slice(Type.lastIndexOf("/") + 1),
      target: isExternal ? target : (pathOf(parts, target) ?? target),
      isExternal,
    };
  });
}

/** Adds a relationship to the part at `path` and returns its id. All else in the list stays as it is. */
export function addRelationship(
  parts: Map<string, Uint8Array>,
  path: string,
  type: string,
  target: string,
): string {
  const taken = new Set(relationshipsOf(parts, path).map(({ id }) => id));
  const id = firstFree((count) => `rIdCrib${count}`, taken);
  const listPath = relationshipsPath(path);
  const there = pathOf(parts, listPath) ?? listPath;
  const source = partText(parts, there) ?? noRelationships;
  const root = parseXml(source);
  const row = `<${root.prefix}Relationship Id="${id}" Type="${typeBase}${type}" Target="/${escapeXml(target)}"/>`;
  parts.set(there, encode(splice(source, [append(source, root, row)])));
  return id;
}

/** Says what the part at `path` is. Saying it again changes nothing. */
export function setContentType(
  parts: Map<string, Uint8Array>,
  path: string,
  contentType: string,
): void {
  const source = neededText(parts, contentTypesPath);
  const root = parseXml(source);
  const name = `/${path}`.toLowerCase();
  const isThere = childrenNamed(root, "Override").some(
    ({ attributes }) => attributes["PartName"]?.toLowerCase() === name,
  );
  if (isThere) return;
  const row = `<${root.prefix}Override PartName="/${escapeXml(path)}" ContentType="${contentType}"/>`;
  parts.set(contentTypesPath, encode(splice(source, [append(source, root, row)])));
}

/** Says what all parts with that file ending are, unless it is said already. */
export function setDefaultContentType(
  parts: Map<string, Uint8Array>,
  ending: string,
  contentType: string,
): void {
  const source = neededText(parts, contentTypesPath);
  const root = parseXml(source);
  const isThere = childrenNamed(root, "Default").some(
    ({ attributes }) => attributes["Extension"]?.toLowerCase() === ending,
  );
  if (isThere) return;
  const row = `<${root.prefix}Default Extension="${ending}" ContentType="${contentType}"/>`;
  const at = root.innerStart;
  parts.set(contentTypesPath, encode(splice(source, [{ start: at, end: at, text: row }])));
}

/** What the part at `path` is said to be; the empty text where nothing is said. */
export function contentTypeOf(parts: Parts, path: string): string {
  const root = parseXml(neededText(parts, contentTypesPath));
  const name = `/${path}`.toLowerCase();
  const override = childrenNamed(root, "Override").find(
    ({ attributes }) => attributes["PartName"]?.toLowerCase() === name,
  );
  const ending = path.slice(path.lastIndexOf(".") + 1).toLowerCase();
  const fallback = childrenNamed(root, "Default").find(
    ({ attributes }) => attributes["Extension"]?.toLowerCase() === ending,
  );
  return (override ?? fallback)?.attributes["ContentType"] ?? "";
}

/** Takes a part out of the file, with its relationships and what is said of it. */
export function removePart(parts: Map<string, Uint8Array>, path: string): void {
  parts.delete(path);
  parts.delete(relationshipsPath(path));
  const source = neededText(parts, contentTypesPath);
  const name = `/${path}`.toLowerCase();
  const rows = childrenNamed(parseXml(source), "Override").filter(
    ({ attributes }) => attributes["PartName"]?.toLowerCase() === name,
  );
  const splices = rows.map(({ start, end }) => ({ start, end, text: "" }));
  if (splices.length > 0) parts.set(contentTypesPath, encode(splice(source, splices)));
}

/** Takes away the relationships of the part at `path` that `isGone` picks. */
export function removeRelationships(
  parts: Map<string, Uint8Array>,
  path: string,
  isGone: (relationship: Relationship) => boolean,
): void {
  const listPath = pathOf(parts, relationshipsPath(path));
  if (listPath === null) return;
  const gone = new Set(
    relationshipsOf(parts, path)
      .filter(isGone)
      .map(({ id }) => id),
  );
  const source = neededText(parts, listPath);
  const splices = childrenNamed(parseXml(source), "Relationship")
    .filter(({ attributes }) => gone.has(attributes["Id"] ?? ""))
    .map(({ start, end }) => ({ start, end, text: "" }));
  if (splices.length > 0) parts.set(listPath, encode(splice(source, splices)));
}

/** Makes the relationship `id` of the part at `path` point at another part. */
export function redirectRelationship(
  parts: Map<string, Uint8Array>,
  path: string,
  id: string,
  target: string,
): void {
  const listPath = pathOf(parts, relationshipsPath(path)) ?? "";
  const source = neededText(parts, listPath);
  const changes = childrenNamed(parseXml(source), "Relationship")
    .filter(({ attributes }) => attributes["Id"] === id)
    .map((element) => withAttributes(source, element, { Target: `/${target}` }));
  parts.set(listPath, encode(splice(source, changes)));
}

/** A path that no part has yet: `xl/worksheets/sheet1.xml`, `…sheet2.xml` and so on. */
export function freePath(parts: Parts, start: string, ending: string): string {
  const taken = new Set(Array.from(parts.keys(), (path) => path.toLowerCase()));
  return firstFree((count) => `${start}${count}${ending}`, taken);
}

const firstFree = (made: (count: number) => string, taken: ReadonlySet<string>): string => {
  for (let count = 1; ; count++) {
    const tried = made(count);
    if (!taken.has(tried) && !taken.has(tried.toLowerCase())) return tried;
  }
};

export const xmlStart = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

const noRelationships = `${xmlStart}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>`;

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf("/") + 1);

/** A target is relative to the folder of the part that names it, or starts at the root with `/`. */
function resolve(path: string, target: string): string {
  const steps = target.startsWith("/") ? [] : folderOf(path).split("/").filter(Boolean);
  for (const step of target.split("/").filter(Boolean)) {
    if (step === "..") steps.pop();
    else if (step !== ".") steps.push(step);
  }
  return steps.join("/");
}
