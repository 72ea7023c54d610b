/**
 * Just enough XML for the parts of a workbook: elements, attributes and text, each with its place
 * in the source, so that a part can be changed at one place and stay as it is everywhere else.
 *
 * Names are local names: whether a program writes `<row>` or `<x:row>` makes no difference. No
 * entity but the five of XML is known and none can be declared, so nothing can swell.
 */
import { withoutEntities } from "../../workbook/xmlEntities";

/** A part is not what it should be. Caught where a file is opened, and told as a fault. */
export class DamagedFile extends Error {}

export type Attributes = Readonly<Record<string, string>>;

/** An element and where it stands: `start` to `end` in whole, `innerStart` to `innerEnd` what is inside. */
export type XmlElement = {
  /** Without its prefix. */
  readonly name: string;
  /** The prefix with its colon, or the empty text. */
  readonly prefix: string;
  readonly attributes: Attributes;
  readonly children: readonly XmlElement[];
  /** Its own text, not that of its children. */
  readonly text: string;
  readonly start: number;
  readonly innerStart: number;
  readonly innerEnd: number;
  readonly end: number;
};

/** What `scanXml` tells of, in document order. An element without content is opened, then closed. */
export type XmlVisitor = {
  readonly open: (name: string, attributes: Attributes, start: number, end: number) => void;
  readonly close: (name: string, start: number, end: number) => void;
  readonly text: (text: string) => void;
};

/**
 * Goes once through `source`.
 *
 * @throws DamagedFile when it ends inside a tag or a close tag has no open one.
 */
export function scanXml(source: string, visitor: XmlVisitor): void {
  const open: string[] = [];
  let at = 0;
  for (;;) {
    const start = source.indexOf("<", at);
    if (start < 0) break;
    if (start > at && open.length > 0) visitor.text(decodeText(source.slice(at, start)));
    const mark = source.charCodeAt(start + 1);
    if (mark === exclamation || mark === question) {
      at = afterMarkup(source, start);
      if (source.startsWith("<![CDATA[", start)) visitor.text(source.slice(start + 9, at - 3));
      continue;
    }
    const close = tagEnd(source, start);
    at = close + 1;
    if (mark === slash) {
      const name = localName(source.slice(start + 2, close).trimEnd());
      if (open.pop() !== name) throw new DamagedFile(`</${name}> closes nothing.`);
      visitor.close(name, start, at);
      continue;
    }
    const isEmpty = source.charCodeAt(close - 1) === slash;
    const tag = source.slice(start + 1, isEmpty ? close - 1 : close);
    const nameEnd = tag.search(/\s/);
    const name = localName(nameEnd < 0 ? tag : tag.slice(0, nameEnd));
    visitor.open(name, nameEnd < 0 ? none : readAttributes(tag, nameEnd), start, at);
    if (isEmpty) visitor.close(name, at, at);
    else open.push(name);
  }
  if (open.length > 0) throw new DamagedFile(`<${open.join("><")}> is not closed.`);
}

/** The whole part as a tree. @throws DamagedFile when there is no one element around it all. */
export function parseXml(source: string): XmlElement {
  type Growing = Omit<XmlElement, "children" | "text" | "end" | "innerEnd"> & {
    children: XmlElement[];
    text: string;
    end: number;
    innerEnd: number;
  };
  const roots: XmlElement[] = [];
  const path: Growing[] = [];
  scanXml(source, {
    open: (name, attributes, start, end) => {
      const prefix = /^<([^\s/>]*:)/.exec(source.slice(start, start + 64))?.[1] ?? "";
      const element = { name, prefix, attributes, start, innerStart: end };
      const growing = { ...element, children: [], text: "", end, innerEnd: end };
      (path.at(-1)?.children ?? roots).push(growing);
      path.push(growing);
    },
    close: (_, start, end) => {
      const element = path.pop();
      if (element === undefined) return;
      element.innerEnd = start;
      element.end = end;
    },
    text: (text) => {
      const element = path.at(-1);
      if (element !== undefined) element.text += text;
    },
  });
  const [root] = roots;
  if (root === undefined) throw new DamagedFile("There is no element.");
  return root;
}

/** The first child of that name. */
export const childNamed = (element: XmlElement | undefined, name: string): XmlElement | undefined =>
  element?.children.find((child) => child.name === name);

/** All children of that name. */
export const childrenNamed = (
  element: XmlElement | undefined,
  name: string,
): readonly XmlElement[] => element?.children.filter((child) => child.name === name) ?? [];

/** XML's booleans: `1` and `true`; `absent` is what a missing attribute means. */
export const isOn = (value: string | undefined, absent = false): boolean =>
  value === undefined ? absent : value === "1" || value === "true";

/** A change of a part: what stands from `start` to `end` becomes `text`. */
export type Splice = { readonly start: number; readonly end: number; readonly text: string };

/** The source with all `splices` made; they must not overlap. What is put in at a place comes before what is changed there. */
export function splice(source: string, splices: readonly Splice[]): string {
  const ordered = [...splices].sort((one, other) => one.start - other.start || one.end - other.end);
  let made = "";
  let at = 0;
  for (const { start, end, text } of ordered) {
    made += source.slice(at, start) + text;
    at = end;
  }
  return made + source.slice(at);
}

/** The splice that puts `text` behind the last child of `element`, opening `<element/>` if need be. */
export function append(source: string, element: XmlElement, text: string): Splice {
  if (source[element.end - 2] !== "/" || element.innerStart !== element.end) {
    return { start: element.innerEnd, end: element.innerEnd, text };
  }
  const close = `</${element.prefix}${element.name}>`;
  return { start: element.end - 2, end: element.end, text: `>${text}${close}` };
}

/** The element's start tag with some attributes set; `null` takes one away. Prefixed ones stay as they are. */
export function withAttributes(
  source: string,
  element: XmlElement,
  changes: Readonly<Record<string, string | null>>,
): Splice {
  let tag = source.slice(element.start, element.innerStart);
  for (const [name, value] of Object.entries(changes)) {
    const attribute = value === null ? "" : ` ${name}="${escapeXml(value)}"`;
    const there = new RegExp(`\\s${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
    tag = there.test(tag)
      ? tag.replace(there, () => attribute)
      : tag.replace(/\s*\/?>$/, (end) => attribute + end);
  }
  return { start: element.start, end: element.innerStart, text: tag };
}

/** Text as XML content or attribute value. What XML cannot hold is written as spreadsheets do: `_x0008_`. */
export const escapeXml = (text: string): string =>
  text
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
    .replace(/[^\P{Cc}\t\n]|\p{Cs}|[\ufffe\uffff]/gu, (unit) => {
      const code = unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
      return `_x${code}_`;
    })
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");

/** Undoes the `_x0008_` that spreadsheets write; the text is decoded XML already. */
export const readEscapes = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
        String.fromCharCode(Number.parseInt(code, 16)),
      )
    : text;

const none: Attributes = {};
const [exclamation, question, slash, doubleQuote, singleQuote, greater] = [33, 63, 47, 34, 39, 62];

const localName = (name: string): string => name.slice(name.indexOf(":") + 1);

/** The place of the `>` that ends the tag: one between quotes does not. */
function tagEnd(source: string, start: number): number {
  let quote = 0;
  for (let at = start + 1; at < source.length; at++) {
    const code = source.charCodeAt(at);
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === doubleQuote || code === singleQuote) quote = code;
    else if (code === greater) return at;
  }
  throw new DamagedFile("It ends inside a tag.");
}

/** Behind a comment, CDATA section, processing instruction or document type. */
function afterMarkup(source: string, start: number): number {
  const end = source.startsWith("<!--", start)
    ? "-->"
    : source.startsWith("<![CDATA[", start)
      ? "]]>"
      : source.startsWith("<?", start)
        ? "?>"
        : ">";
  const at = source.indexOf(end, start + 2);
  if (at < 0) throw new DamagedFile("It ends inside a comment or an instruction.");
  if (source.slice(start, at).includes("<!ENTITY")) throw new DamagedFile("It declares entities.");
  return at + end.length;
}

const attribute = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

function readAttributes(tag: string, from: number): Attributes {
  const attributes: Record<string, string> = {};
  attribute.lastIndex = from;
  for (let found = attribute.exec(tag); found !== null; found = attribute.exec(tag)) {
    const [, name = "", double, single = ""] = found;
    if (!name.startsWith("xmlns")) attributes[localName(name)] = decodeText(double ?? single);
  }
  return attributes;
}

function decodeText(text: string): string {
  const lines = text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
  if (!lines.includes("&")) return lines;
  return withoutEntities(lines);
}
