/** What a kit book leaves open, as findings about its rows. */
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { inches, type Inches } from "../base/units";
import type { ChartValue } from "../kitbook/chart";
import type { ChartGap } from "./chartGaps";
import type { Coverage } from "./coverage";
import type { NamedItem } from "./namedItems";
import { rowName } from "./rowName";

export const coverageFindings = {
  "chart-gap": {
    level: "warn",
    says: 'The chart "{chart}" has no entry for {keys}, so an opening of these sizes is not counted ({types}).',
    todo: "Add the entry if such openings are made, or a limit that says why they are not.",
  },
  "chart-gap-stopped": {
    level: "note",
    says: 'The chart "{chart}" has no entry for {keys}, and a limit of the book stops such an opening ({types}).',
    todo: "",
  },
  "item-not-in-table": {
    level: "warn",
    says: "The items table has no {found}, which the book counts, so it will not be priced or weighed.",
    todo: "Add the item, or correct the code.",
  },
  "item-without-cost": {
    level: "warn",
    says: "The items table has no cost for {found}, which the book counts.",
    todo: "Type its unit cost.",
  },
  "item-without-weight": {
    level: "note",
    says: "The items table has no weight for {found}, which the book counts.",
    todo: "Type the weight of one.",
  },
  "item-never-named": {
    level: "note",
    says: "No row of the book counts the item {found}.{open}",
    todo: "",
  },
  "part-never-needed": {
    level: "warn",
    says: "{row}: as the book stands, no opening needs this part ({found}).",
    todo: "Correct its condition or quantity, or take the row out.",
  },
  "limit-never-speaks": {
    level: "note",
    says: "{row}: as the book stands, this limit speaks of no opening: {found} never holds.",
    todo: "Leave it where it guards a size that you may change; else correct it.",
  },
  "row-not-seen": {
    level: "note",
    says: "{row} did nothing in {tries} tries ({found}); it is not proven that it never will.",
    todo: "See whether an opening that you know needs it.",
  },
  "size-unused": {
    level: "note",
    says: "{row}: no other row of the book reads the size {found}.",
    todo: "",
  },
  "chart-unused": {
    level: "note",
    says: 'No row of the book looks into the chart "{found}".',
    todo: "",
  },
} as const satisfies FindingTable;

type Code = keyof typeof coverageFindings;

/** The same as findings, each at the first cell of the row that it is about. */
export function findingsOfCoverage(
  { gaps, items, idle, unusedSizes: sizes, unusedCharts }: Coverage,
  show: (length: Inches) => string,
): readonly Finding[] {
  const ofItems = (code: Code, found: readonly NamedItem[]): readonly Finding[] =>
    found.map((item) =>
      makeFinding(coverageFindings, code, {
        place: item.rows[0]?.place ?? null,
        found: item.code,
      }),
    );
  const open =
    items.openRows.length === 0 ? "" : " A formula of the book may still give it (see its items).";
  return [
    ...gapFindings(gaps, show),
    ...ofItems("item-not-in-table", items.notInTable),
    ...ofItems("item-without-cost", items.withoutCost),
    ...ofItems("item-without-weight", items.withoutWeight),
    ...items.neverNamed.map(({ code: found, place }) =>
      makeFinding(coverageFindings, "item-never-named", { place, found, values: { open } }),
    ),
    ...idle.map(({ source, what, isProven, tries }) => {
      const never = source.section === "parts" ? "part-never-needed" : "limit-never-speaks";
      const values = { row: rowName(source), tries };
      const details = { place: source.place, found: what, values };
      return makeFinding(coverageFindings, isProven ? never : "row-not-seen", details);
    }),
    ...sizes.map(({ source, name }) =>
      makeFinding(coverageFindings, "size-unused", {
        place: source.place,
        found: name,
        values: { row: rowName(source) },
      }),
    ),
    ...unusedCharts.map((found) => makeFinding(coverageFindings, "chart-unused", { found })),
  ];
}

/** Gaps of the same chart and sizes are told once, with the opening types that look there. */
function gapFindings(
  gaps: readonly ChartGap[],
  show: (length: Inches) => string,
): readonly Finding[] {
  const groups = new Map<string, ChartGap[]>();
  for (const gap of gaps) {
    const key = JSON.stringify([gap.chart, gapWords(gap, show), gap.stoppedBy === null]);
    groups.set(key, [...(groups.get(key) ?? []), gap]);
  }
  return [...groups.values()].flatMap((group) => {
    const [gap] = group;
    if (gap === undefined) return [];
    const keys = gapWords(gap, show);
    const types = group.map(({ type }) => type).join(", ");
    const code = gap.stoppedBy === null ? "chart-gap" : "chart-gap-stopped";
    const details = { found: keys, values: { chart: gap.chart, keys, types } };
    return [makeFinding(coverageFindings, code, details)];
  });
}

/** `Post height 8'-0" by Height 9'-0"`. */
export function gapWords(
  {
    down,
    across,
    downField,
    acrossField,
  }: Pick<ChartGap, "down" | "across" | "downField" | "acrossField">,
  show: (length: Inches) => string,
): string {
  const key = (value: ChartValue, field: string): string =>
    `${field} ${typeof value === "number" && field !== "" ? show(inches(value)) : String(value)}`.trim();
  return across === null
    ? key(down, downField)
    : `${key(down, downField)} by ${key(across, acrossField)}`;
}
