/** Our settings as custom XML parts of the file, which spreadsheets keep as they are. */
import {
  isSettingsXml,
  readSettingsXml,
  settingsByNamespace,
  settingsXml,
  type Settings,
} from "../../workbook/settingsXml";
import { encode, partText, type Parts } from "./parts";
import {
  addRelationship,
  freePath,
  relationshipsOf,
  setContentType,
  xmlStart,
} from "./relationships";

/** Our settings in the file with the workbook part at `workbookPath`; none where it has none. */
export function readSettings(parts: Parts, workbookPath: string): Settings {
  const texts = linkedParts(parts, workbookPath)
    .map((path) => partText(parts, path) ?? "")
    .filter(isSettingsXml);
  // Two workbooks put into one may bring the same setting twice; the first one counts.
  return texts.reduceRight<Settings>((all, xml) => ({ ...all, ...readSettingsXml(xml) }), {});
}

/** Writes them all, in place of those that are there. */
export function writeSettings(
  parts: Map<string, Uint8Array>,
  workbookPath: string,
  settings: Settings,
): void {
  for (const [namespace, group] of settingsByNamespace(settings)) {
    writePart(parts, workbookPath, namespace, settingsXml(group, namespace));
  }
}

function writePart(
  parts: Map<string, Uint8Array>,
  workbookPath: string,
  namespace: string,
  xml: string,
): void {
  const there = linkedParts(parts, workbookPath).find((path) =>
    (partText(parts, path) ?? "").includes(`"${namespace}"`),
  );
  if (there !== undefined) {
    parts.set(there, encode(xml));
    const isLinked = relationshipsOf(parts, workbookPath).some(({ target }) => target === there);
    if (!isLinked) addRelationship(parts, workbookPath, "customXml", there);
    return;
  }
  const path = freePath(parts, "customXml/item", ".xml");
  const properties = freePath(parts, "customXml/itemProps", ".xml");
  parts.set(path, encode(xml));
  parts.set(properties, encode(propertiesXml(namespace)));
  setContentType(parts, path, "application/xml");
  setContentType(
    parts,
    properties,
    "application/vnd.openxmlformats-officedocument.customXmlProperties+xml",
  );
  addRelationship(parts, path, "customXmlProps", properties);
  addRelationship(parts, workbookPath, "customXml", path);
}

/** Excel hangs such parts on the workbook; LibreOffice, on saving, on the file as a whole. */
const linkedParts = (parts: Parts, workbookPath: string): readonly string[] =>
  [...relationshipsOf(parts, workbookPath), ...relationshipsOf(parts, "")].flatMap(
    ({ type, target }) => (type === "customXml" ? [target] : []),
  );

const propertiesXml = (namespace: string): string =>
  `${xmlStart}<ds:datastoreItem ds:itemID="${itemId(namespace)}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"><ds:schemaRefs><ds:schemaRef ds:uri="${namespace}"/></ds:schemaRefs></ds:datastoreItem>`;

/**
 * The part's own number: made up once and for all, its end worked out from the namespace (FNV-1a), so
 * that no two parts of a file have the same.
 */
function itemId(namespace: string): string {
  let hash = 0x811c9dc5;
  for (const letter of namespace) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  const end = (hash >>> 0).toString(16).toUpperCase().padStart(8, "0");
  return `{6B2C9F6E-51B7-4C43-9C5E-7A0D${end}}`;
}
