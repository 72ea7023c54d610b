/**
 * Our settings inside a saved workbook: one custom XML part, which spreadsheets keep as it is.
 * Excel's add-in interface and the file adapter read and write the same part.
 */

/** The part's namespace, by which it is found among others. */
export const settingsNamespace = "urn:cribsheet:settings";

export type Settings = Readonly<Record<string, string>>;

/** The whole part's text. Keys are written in order, so that the same settings give the same text. */
export function settingsXml(settings: Settings): string {
  const rows = Object.keys(settings)
    .sort()
    .map((key) => `<setting key="${escapeXml(key)}">${escapeXml(settings[key] ?? "")}</setting>`);
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<settings xmlns="${settingsNamespace}">${rows.join("")}</settings>`;
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

/** XML cannot hold every character: one that it can't is written as `\u{1b}`, and so is `\` itself. */
const escapeXml = (text: string): string =>
  text
    .replace(/[\\\p{Cc}\p{Cs}\ufffe\uffff]/gu, (unit) => `\\u{${unit.charCodeAt(0).toString(16)}}`)
    .replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);

const named: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
};

const unescapeXml = (text: string): string =>
  text
    .replace(/&(#?\w+);/g, (whole, name: string) => {
      if (!name.startsWith("#")) return named[name] ?? whole;
      const code = Number(name.slice(1).replace(/^x/i, "0x"));
      return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
    })
    .replace(/\\u\{([0-9a-f]+)\}/g, (_, unit: string) => String.fromCharCode(Number(`0x${unit}`)));
