/** Reads the XML of a manifest as a tree. Good for well-formed XML without CDATA. */

export type XmlNode = {
  /** Without its prefix. */
  readonly name: string;
  /** By name with its prefix, such as `xsi:type`. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlNode[];
  /** The text directly inside, without white space around it. */
  readonly text: string;
};

type Building = {
  name: string;
  attributes: Record<string, string>;
  children: XmlNode[];
  text: string;
};

const pattern =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<\/([\w:.-]+)\s*>|<([\w:.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>|([^<]+)/g;

/** @throws SyntaxError where tags don't match. */
export function readXml(xml: string): XmlNode {
  const top: Building = { name: "", attributes: {}, children: [], text: "" };
  const open: Building[] = [top];
  for (const [, closing, opening, attributes = "", single, text] of xml.matchAll(pattern)) {
    const inside = open.at(-1) ?? top;
    if (text !== undefined) inside.text += decoded(text.trim());
    if (closing !== undefined) {
      if (open.length < 2 || open.pop()?.name !== plain(closing)) {
        throw new SyntaxError(`</${closing}> closes nothing that is open`);
      }
    }
    if (opening === undefined) continue;
    const node: Building = {
      name: plain(opening),
      attributes: Object.fromEntries(
        Array.from(
          attributes.matchAll(/([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g),
          ([, name = "", double, quoted = ""]) => [name, decoded(double ?? quoted)],
        ),
      ),
      children: [],
      text: "",
    };
    inside.children.push(node);
    if (single === "") open.push(node);
  }
  const [root, ...more] = top.children;
  if (root === undefined || more.length > 0 || open.length > 1) {
    throw new SyntaxError("The manifest is not one closed element");
  }
  return root;
}

const plain = (name: string): string => name.replace(/^.*:/, "");

const named: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
};

const decoded = (text: string): string =>
  text.replace(/&(\w+);/g, (whole, name: string) => named[name] ?? whole);
