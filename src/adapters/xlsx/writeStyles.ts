/** Adds the styles that our sheets need to those that a file has; none that is there changes. */
import type { CellStyle, LineStyle } from "../../workbook/snapshot";
import { encode, neededText } from "./parts";
import { builtInFormats } from "./readStyles";
import {
  append,
  childNamed,
  childrenNamed,
  escapeXml,
  parseXml,
  splice,
  withAttributes,
  type Splice,
  type XmlElement,
} from "./xml";

export type StyleWriter = {
  /**
   * The number of the style, new or found. `isQuoted` keeps a text such as `=1+1` a text even when a
   * person edits it.
   */
  readonly numberOf: (style: CellStyle, isQuoted: boolean) => number;
  /** Puts the new styles into the part. */
  readonly finish: () => void;
};

/** Writes into the styles part at `path`, which must be there. */
export function styleWriter(parts: Map<string, Uint8Array>, path: string): StyleWriter {
  const source = neededText(parts, path);
  const root = parseXml(source);
  const usual = childNamed(childNamed(root, "fonts"), "font");
  const usualFont = {
    name: childNamed(usual, "name")?.attributes["val"] ?? "Calibri",
    size: Number(childNamed(usual, "sz")?.attributes["val"] ?? 11),
  };
  const prefix = root.prefix;
  const fonts = styleList(root, "fonts", prefix);
  const fills = styleList(root, "fills", prefix);
  const borders = styleList(root, "borders", prefix);
  const formats = formatList(root, prefix);
  const formatsOfCells = styleList(root, "cellXfs", prefix);
  const known = new Map<string, number>();

  const numberOf = (style: CellStyle, isQuoted: boolean): number => {
    const key = JSON.stringify([style, isQuoted]);
    const there = known.get(key);
    if (there !== undefined) return there;
    const format = formats.numberOf(style.format ?? "General");
    const font = fonts.numberOf(fontXml(style, usualFont));
    const fill = style.fill === undefined ? 0 : fills.numberOf(fillXml(style.fill));
    const border = borders.numberOf(borderXml(style));
    const quoted = isQuoted ? ` quotePrefix="1"` : "";
    const number = formatsOfCells.numberOf(
      `<xf numFmtId="${format}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"${quoted} applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1">${alignmentXml(style)}</xf>`,
    );
    known.set(key, number);
    return number;
  };

  const finish = (): void => {
    const changes = [fonts, fills, borders, formats, formatsOfCells].flatMap((list) =>
      list.changes(source),
    );
    if (changes.length > 0) parts.set(path, encode(splice(source, changes)));
  };
  return { numberOf, finish };
}

type StyleList = {
  readonly numberOf: (xml: string) => number;
  readonly changes: (source: string) => readonly Splice[];
};

/** One of the part's lists. An entry that is there already, however it is spelled, is used again. */
function styleList(root: XmlElement, name: string, prefix: string): StyleList {
  const list = childNamed(root, name);
  const entries = list?.children ?? [];
  const places = new Map<string, number>();
  entries.forEach((entry, place) => {
    const meaning = meaningOf(entry);
    if (!places.has(meaning)) places.set(meaning, place);
  });
  const added: string[] = [];
  return {
    numberOf: (xml) => {
      const meaning = meaningOf(parseXml(xml));
      const there = places.get(meaning);
      if (there !== undefined) return there;
      added.push(withPrefix(xml, prefix));
      const place = entries.length + added.length - 1;
      places.set(meaning, place);
      return place;
    },
    changes: (source) => grown(source, root, list, name, entries.length, added),
  };
}

/** Number formats are told apart by their code and have numbers of their own, from 164 on. */
function formatList(root: XmlElement, prefix: string): StyleList {
  const list = childNamed(root, "numFmts");
  const rows = childrenNamed(list, "numFmt");
  const places = new Map<string, number>([["General", 0]]);
  for (const [id, code] of Object.entries(builtInFormats)) {
    // Dates by number alone are shown as each country does; ours are shown as they are written.
    if (Number(id) < 14 || id === "49") places.set(code, Number(id));
  }
  let last = 163;
  for (const { attributes } of rows) {
    const id = Number(attributes["numFmtId"]);
    places.set(attributes["formatCode"] ?? "", id);
    last = Math.max(last, id);
  }
  const added: string[] = [];
  return {
    numberOf: (code) => {
      const there = places.get(code);
      if (there !== undefined) return there;
      last += 1;
      added.push(`<${prefix}numFmt numFmtId="${last}" formatCode="${escapeXml(code)}"/>`);
      places.set(code, last);
      return last;
    },
    changes: (source) => grown(source, root, list, "numFmts", rows.length, added),
  };
}

/** The list with `added` behind its entries and its count set right. */
function grown(
  source: string,
  root: XmlElement,
  list: XmlElement | undefined,
  name: string,
  count: number,
  added: readonly string[],
): Splice[] {
  if (added.length === 0) return [];
  const total = { count: String(count + added.length) };
  if (list !== undefined && list.children.length > 0) {
    return [withAttributes(source, list, total), append(source, list, added.join(""))];
  }
  const tag = `${root.prefix}${name}`;
  const text = `<${tag} count="${added.length}">${added.join("")}</${tag}>`;
  if (list !== undefined) return [{ start: list.start, end: list.end, text }];
  // The formats come first of all lists; the others are in every file.
  return [{ start: root.innerStart, end: root.innerStart, text }];
}

/** An entry with its attributes in order, so that spelling and spaces make no difference. */
function meaningOf({ name, attributes, children, text }: XmlElement): string {
  const sorted = Object.entries(attributes).sort(([one], [other]) => (one < other ? -1 : 1));
  return JSON.stringify([name, sorted, text.trim(), children.map(meaningOf)]);
}

const withPrefix = (xml: string, prefix: string): string =>
  prefix === "" ? xml : xml.replace(/<(\/?)/g, `<$1${prefix}`);

const colourXml = (ink: string): string => `<color rgb="FF${ink}"/>`;

const fontXml = (
  style: CellStyle,
  usual: { readonly name: string; readonly size: number },
): string =>
  [
    "<font>",
    style.bold === true ? "<b/>" : "",
    style.italic === true ? "<i/>" : "",
    style.strike === true ? "<strike/>" : "",
    style.underline === true ? "<u/>" : "",
    `<sz val="${style.size ?? usual.size}"/>`,
    colourXml(style.ink ?? "000000"),
    `<name val="${escapeXml(style.font ?? usual.name)}"/><family val="2"/>`,
    "</font>",
  ].join("");

const fillXml = (fill: string): string =>
  `<fill><patternFill patternType="solid"><fgColor rgb="FF${fill}"/><bgColor indexed="64"/></patternFill></fill>`;

function borderXml({ lineLeft, lineRight, lineAbove, lineBelow }: CellStyle): string {
  const side = (name: string, line: LineStyle | undefined): string =>
    line === undefined
      ? `<${name}/>`
      : `<${name} style="${line.weight}">${colourXml(line.ink)}</${name}>`;
  const sides = [
    side("left", lineLeft),
    side("right", lineRight),
    side("top", lineAbove),
    side("bottom", lineBelow),
  ];
  return `<border>${sides.join("")}<diagonal/></border>`;
}

function alignmentXml({ align, indent, alignDown, wrap }: CellStyle): string {
  const across = align === undefined ? "" : ` horizontal="${align}"`;
  const down =
    alignDown === undefined ? "" : ` vertical="${alignDown === "middle" ? "center" : alignDown}"`;
  const inside = indent === true ? ` indent="1"` : "";
  return `<alignment${across}${down}${inside}${wrap === true ? ` wrapText="1"` : ""}/>`;
}
