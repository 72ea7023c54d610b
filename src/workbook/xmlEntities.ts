/** The entities that XML has by itself, and characters by number; any other stays as it is written. */
const named: ReadonlyMap<string, string> = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

export const withoutEntities = (text: string): string =>
  text.replace(/&(#?\w+);/g, (whole, name: string) => {
    if (!name.startsWith("#")) return named.get(name) ?? whole;
    const code = Number(name.slice(1).replace(/^x/i, "0x"));
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
