/** The columns of a kit book's sections: the headings Cribsheet writes and the words people use. */
import { kitBookSections, type KitBookSection, type sectionColumns } from "../core/kitbook/rows";
import type { ColumnRule } from "./headings";

export type KitBookColumn = (typeof sectionColumns)[KitBookSection][number];

type Rule = ColumnRule<KitBookColumn>;

const type: Rule = {
  key: "type",
  label: "Type",
  words: ["type", "types", "opening type", "opening types", "door type", "for type", "for types"],
};
const when: Rule = {
  key: "when",
  label: "When",
  words: ["when", "if", "condition", "only when", "only if"],
};
const basis: Rule = {
  key: "basis",
  label: "Basis",
  words: ["basis", "source", "basis of the number", "where from"],
};

/** In the order in which they are written. */
export const kitBookColumns: Readonly<Record<KitBookSection, readonly Rule[]>> = {
  sizes: [
    type,
    { key: "name", label: "Name", words: ["name", "size", "size name", "name of size"] },
    { key: "formula", label: "Formula", words: ["formula", "worked out as", "equals"] },
    { key: "unit", label: "Unit", words: ["unit", "units"] },
    { key: "note", label: "Note", words: ["note", "notes", "remark", "remarks", "comment"] },
    basis,
  ],
  parts: [
    type,
    { key: "bag", label: "Bag", words: ["bag", "bag name"] },
    { key: "step", label: "Step", words: ["step", "order", "sequence", "step no"] },
    { key: "item", label: "Item", words: ["item", "item code", "code", "part", "part no"] },
    { key: "size", label: "Size", words: ["size", "piece size", "size of piece"] },
    { key: "quantity", label: "Quantity", words: ["quantity", "qty", "count", "how many"] },
    when,
    { key: "cutLength", label: "Cut length", words: ["cut length", "cut", "cut to", "length"] },
    {
      key: "minutes",
      label: "Minutes",
      words: ["minutes", "min", "mins", "labor minutes", "labour minutes", "time"],
    },
    {
      key: "joined",
      label: "Joined",
      words: ["joined", "joins", "thickness joined", "joined thickness", "grip"],
    },
    basis,
  ],
  limits: [
    type,
    when,
    { key: "level", label: "Level", words: ["level", "severity"] },
    { key: "message", label: "Message", words: ["message", "says", "text"] },
    basis,
  ],
  charts: [
    { key: "chart", label: "Chart", words: ["chart", "chart name", "name of chart"] },
    { key: "match", label: "Match", words: ["match", "matching"] },
    { key: "down", label: "Down", words: ["down", "value down"] },
    { key: "across", label: "Across", words: ["across", "value across"] },
    { key: "value", label: "Value", words: ["value", "entry", "result"] },
    basis,
  ],
};

/** Headings that tell a section: all of `all`, and one of `oneOf` at least. */
const telling: Readonly<
  Record<
    KitBookSection,
    { readonly all: readonly KitBookColumn[]; readonly oneOf: readonly KitBookColumn[] }
  >
> = {
  sizes: { all: ["type", "name", "formula"], oneOf: ["formula"] },
  parts: {
    all: ["type", "item", "quantity"],
    oneOf: ["bag", "step", "when", "cutLength", "minutes"],
  },
  limits: { all: ["type", "when"], oneOf: ["level", "message"] },
  charts: { all: ["chart", "down", "value"], oneOf: ["value"] },
};

/** Whether the columns found are those of the section's heading row. */
export function tellsSection(section: KitBookSection, found: ReadonlySet<KitBookColumn>): boolean {
  const { all, oneOf } = telling[section];
  return all.every((key) => found.has(key)) && oneOf.some((key) => found.has(key));
}

export type SectionTitle = {
  readonly section: KitBookSection;
  readonly namesBook: boolean;
  /** As in `Kit book parts, edition 2`; `null` where none is named. */
  readonly edition: number | null;
};

/** What a title or a sheet's name says: `Kit book parts` is the parts, and names the kit book. */
export function readSectionTitle(text: string): SectionTitle | null {
  const edition = /\bedition\s+(\d{1,6})\b/i.exec(text);
  const words = text
    .replace(edition?.[0] ?? "", "")
    .toLowerCase()
    .replace(/[^\p{L}]+/gu, " ")
    .trim();
  const match = /^(?:starter )?(kit ?book )?(sizes|parts|limits|charts)$/.exec(words);
  const section = kitBookSections.find((known) => known === match?.[2]);
  if (section === undefined) return null;
  return {
    section,
    namesBook: match?.[1] !== undefined,
    edition: edition === null ? null : Number(edition[1]),
  };
}

/** The title that `readSectionTitle` reads; the first edition is not named. */
export const sectionTitle = (section: KitBookSection, edition: number): string =>
  edition === 1 ? `Kit book ${section}` : `Kit book ${section}, edition ${edition}`;
