/**
 * Our settings inside a saved workbook: custom XML parts, which spreadsheets keep as they are.
 * Excel's add-in interface and the file adapter read and write the same parts.
 */
import { withoutEntities } from "./xmlEntities";

/** The namespace of the part with most settings, by which it is found among others. */
const settingsNamespace = "urn:cribsheet:settings";

/**
 * The namespace of the part that has the setting. A key with a point has a part of its own: what is
 * long is read and written alone, and hosts limit what goes in at once.
 */
export const settingsNamespaceOf = (key: string): string =>
  key.includes(".") ? `${settingsNamespace}:${key}` : settingsNamespace;

/** Whether an XML part is one of ours. */
export const isSettingsXml = (xml: string): boolean =>
  new RegExp(`"${settingsNamespace}(?::[^"]*)?"`).test(xml);

/** The settings by the part that has them. */
export function settingsByNamespace(settings: Settings): ReadonlyMap<string, Settings> {
  const groups = new Map<string, Record<string, string>>();
  for (const [key, text] of Object.entries(settings)) {
    const namespace = settingsNamespaceOf(key);
    groups.set(namespace, { ...groups.get(namespace), [key]: text });
  }
  return groups;
}

export type Settings = Readonly<Record<string, string>>;

/**
 * The whole text of the part with these settings. Keys are written in order, so that the same settings
 * give the same text.
 */
export function settingsXml(settings: Settings, namespace = settingsNamespace): string {
  const rows = Object.keys(settings)
    .sort()
    .map((key) => `<setting key="${escapeXml(key)}">${escapeText(settings[key] ?? "")}</setting>`);
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<settings xmlns="${escapeXml(namespace)}">${rows.join("")}</settings>`;
}

/** Reads what `settingsXml` made; what it does not know it leaves out. */
export function readSettingsXml(xml: string): Settings {
  const rows = xml.matchAll(/<(?:\w+:)?setting\s+key=(?:"([^"]*)"|'([^']*)')\s*(?:\/>|>([^<]*)<)/g);
  return Object.fromEntries(
    Array.from(rows, ([, double, single, text = ""]) => [
      unescapeXml(double ?? single ?? ""),
      unescapeXml(text),
    ]),
  );
}

/** For an attribute. */
const escapeXml = (text: string): string =>
  escapeText(text).replace(/["']/g, (mark) => `&#${mark.charCodeAt(0)};`);

/** XML cannot hold every character: one that it can't is written as `\u{1b}`, and so is `\` itself. */
const escapeText = (text: string): string =>
  text
    .replace(/[\\\p{Cc}\p{Cs}\ufffe\uffff]/gu, (unit) => `\\u{${unit.charCodeAt(0).toString(16)}}`)
    .replace(/[&<>]/g, (mark) => `&#${mark.charCodeAt(0)};`);

const unescapeXml = (text: string): string =>
  withoutEntities(text).replace(/\\u\{([0-9a-f]+)\}/g, (_, unit: string) =>
    String.fromCharCode(Number(`0x${unit}`)),
  );
