/** Our settings as a custom XML part of the file, which spreadsheets keep as it is. */
import {
  readSettingsXml,
  settingsNamespace,
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
  const path = settingsPath(parts, workbookPath);
  return path === null ? {} : readSettingsXml(partText(parts, path) ?? "");
}

/** Writes them all, in place of those that are there. */
export function writeSettings(
  parts: Map<string, Uint8Array>,
  workbookPath: string,
  settings: Settings,
): void {
  const there = settingsPath(parts, workbookPath);
  if (there !== null) {
    parts.set(there, encode(settingsXml(settings)));
    const isLinked = relationshipsOf(parts, workbookPath).some(({ target }) => target === there);
    if (!isLinked) addRelationship(parts, workbookPath, "customXml", there);
    return;
  }
  const path = freePath(parts, "customXml/item", ".xml");
  const properties = freePath(parts, "customXml/itemProps", ".xml");
  parts.set(path, encode(settingsXml(settings)));
  parts.set(properties, encode(propertiesXml));
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
function settingsPath(parts: Parts, workbookPath: string): string | null {
  const linked = [...relationshipsOf(parts, workbookPath), ...relationshipsOf(parts, "")];
  const ours = linked.find(
    ({ type, target }) =>
      type === "customXml" && (partText(parts, target) ?? "").includes(`"${settingsNamespace}"`),
  );
  return ours?.target ?? null;
}

/** The part's own number is made up once and for all; there is one such part in a file. */
const propertiesXml = `${xmlStart}<ds:datastoreItem ds:itemID="{6B2C9F6E-51B7-4C43-9C5E-7A0D3B1E9C21}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"><ds:schemaRefs><ds:schemaRef ds:uri="${settingsNamespace}"/></ds:schemaRefs></ds:datastoreItem>`;
