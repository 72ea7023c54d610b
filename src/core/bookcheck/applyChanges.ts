/** Takes changes over from one kit book into another: all of them, or those that a person chose. */
import type { KitBookRows, KitBookSection } from "../kitbook/rows";
import type { RowChange } from "./compareBooks";
import { matchRows, type BookRow } from "./matchRows";

/** Whether a change is to be made. */
export type Wanted = (change: RowChange) => boolean;

/**
 * `before` with the wanted ones of the changes to `after`, which `compareBooks` gives for these two books.
 * Rows keep their places; an added one comes behind the row that it follows in `after`.
 */
export function applyChanges(
  before: KitBookRows,
  after: KitBookRows,
  changes: readonly RowChange[],
  isWanted: Wanted = () => true,
): KitBookRows {
  const wanted = changes.filter(isWanted);
  const of = (section: KitBookSection): readonly RowChange[] =>
    wanted.filter((change) => change.section === section);
  return {
    sizes: applySection("sizes", before.sizes, after.sizes, of("sizes")),
    parts: applySection("parts", before.parts, after.parts, of("parts")),
    limits: applySection("limits", before.limits, after.limits, of("limits")),
    charts: applySection("charts", before.charts, after.charts, of("charts")),
  };
}

function applySection<Row extends BookRow>(
  section: KitBookSection,
  before: readonly Row[],
  after: readonly Row[],
  changes: readonly RowChange[],
): readonly Row[] {
  const removed = new Set(
    changes.flatMap(({ kind, before: row }) => (kind === "removed" ? [row] : [])),
  );
  const replaced = new Map(
    changes.flatMap(({ kind, before: row, after: by }) =>
      kind === "changed" && row !== null && by !== null ? [[row, after[by - 1]] as const] : [],
    ),
  );
  const partners = new Map(
    matchRows(section, before, after).map((pair) => [pair.after, pair.before]),
  );
  // Added rows by the row of `before` that they come behind; -1 before all.
  const behind = new Map<number, Row[]>();
  const anchors = anchorsOf(after.length, partners);
  for (const { kind, after: number } of changes) {
    if (kind !== "added" || number === null) continue;
    const row = after[number - 1];
    if (row === undefined) continue;
    const anchor = anchors[number - 1] ?? -1;
    const rows = behind.get(anchor);
    if (rows === undefined) behind.set(anchor, [row]);
    else rows.push(row);
  }
  return [
    ...(behind.get(-1) ?? []),
    ...before.flatMap((row, index) => [
      ...(removed.has(index + 1) ? [] : [replaced.get(index + 1) ?? row]),
      ...(behind.get(index) ?? []),
    ]),
  ];
}

/** For each row of the second book, the row of the first that stands before it; -1 where none does. */
function anchorsOf(
  count: number,
  partners: ReadonlyMap<number | null, number | null>,
): readonly number[] {
  let last = -1;
  return Array.from({ length: count }, (_, index) => {
    const anchor = last;
    last = partners.get(index) ?? last;
    return anchor;
  });
}
