/** The rows of the charts gathered into charts, each checked. */
import { cellText, isBlank, type TypedCell } from "../base/cell";
import type { Finding } from "../base/finding";
import { normalName } from "../formulas/names";
import { readFormula } from "../formulas/read";
import { chartKey, type Chart, type ChartEntry, type ChartMatch, type ChartValue } from "./chart";
import { bookFinding, readFilledText, readText, type Report } from "./readCell";
import type { ChartRow } from "./rows";

export type ReadCharts = {
  readonly charts: readonly Chart[];
  /**
   * Charts (as `normalName` spells them) that cannot be trusted: a row of theirs has no match or no
   * key, so another entry could be taken for the right one.
   */
  readonly broken: ReadonlySet<string>;
  readonly findings: readonly Finding[];
};

export function readCharts(rows: readonly ChartRow[]): ReadCharts {
  const findings: Finding[] = [];
  const report: Report = (finding) => findings.push(finding);
  const byName = new Map<string, { name: string; rows: ChartRow[] }>();
  for (const row of rows) {
    const name = readFilledText(row.chart, "chart's name", report);
    if (name === null) continue;
    const key = normalName(name);
    if (key === "") {
      report(bookFinding("chart-name-empty", { place: row.chart.place, found: name }));
      continue;
    }
    const group = byName.get(key) ?? { name, rows: [] };
    group.rows.push(row);
    byName.set(key, group);
  }

  const charts: Chart[] = [];
  const broken = new Set<string>();
  for (const [key, group] of byName) {
    const { chart, trusted } = readChart(group.name, group.rows, report);
    charts.push(chart);
    if (!trusted) broken.add(key);
  }
  return { charts, broken, findings };
}

function readChart(
  name: string,
  rows: readonly ChartRow[],
  report: Report,
): { readonly chart: Chart; readonly trusted: boolean } {
  const match = readMatch(name, rows, report);
  const twoWay = rows.some((row) => !isBlank(row.across.value));
  let allKeysRead = true;
  const entries = new Map<string, ChartEntry>();
  for (const row of rows) {
    const down = readKey(row.down, "value down", report);
    const across = twoWay ? readAcross(row.across, name, report) : null;
    if (down === null || across === undefined) {
      allKeysRead = false;
      continue;
    }
    const value = readEntryValue(row.value, name, report);
    const basis = cellText(row.basis.value).trim();
    const entry: ChartEntry = { down, across, value, place: row.chart.place, basis };
    const key = JSON.stringify([chartKey(down), across === null ? null : chartKey(across)]);
    const earlier = entries.get(key);
    entries.set(key, earlier === undefined ? entry : sameEntry(earlier, entry, name, report));
  }
  const chart = { name, match: match ?? "exact", twoWay, entries: [...entries.values()] };
  const ordered = match === "exact" || !reportMixedKeys(chart, report);
  return { chart, trusted: match !== null && ordered && (allKeysRead || match === "exact") };
}

/** Whether a way of a `next up` chart has texts among its numbers; each such entry is reported. */
function reportMixedKeys({ name, entries }: Chart, report: Report): boolean {
  let mixed = false;
  for (const way of ["down", "across"] as const) {
    if (!entries.some((entry) => typeof entry[way] === "number")) continue;
    for (const entry of entries) {
      const key = entry[way];
      if (typeof key === "number" || key === null) continue;
      mixed = true;
      const values = { chart: name };
      report(bookFinding("chart-text-next-up", { place: entry.place, found: String(key), values }));
    }
  }
  return mixed;
}

/** One entry for two with the same keys: the value they agree on, or none. */
function sameEntry(
  earlier: ChartEntry,
  later: ChartEntry,
  chart: string,
  report: Report,
): ChartEntry {
  const agree =
    earlier.value !== null &&
    later.value !== null &&
    chartKey(earlier.value) === chartKey(later.value);
  const keys = later.across === null ? [later.down] : [later.down, later.across];
  report(
    bookFinding(agree ? "chart-entry-repeated" : "chart-entry-twice", {
      place: later.place,
      found: keys.map(String).join(" by "),
      values: { chart },
    }),
  );
  return agree ? earlier : { ...earlier, value: null };
}

const matchesByWord: ReadonlyMap<string, ChartMatch> = new Map<string, ChartMatch>([
  ["", "exact"],
  ["exact", "exact"],
  ["exactly", "exact"],
  ["next up", "next up"],
  ["next_up", "next up"],
  ["next", "next up"],
  ["up", "next up"],
]);

/** The match of all rows; `null` where a row's is unknown or differs from an earlier one's. */
function readMatch(chart: string, rows: readonly ChartRow[], report: Report): ChartMatch | null {
  let first: ChartMatch | undefined;
  let agreed = true;
  for (const { match: cell } of rows) {
    const text = readText(cell, report);
    const match = text === null ? undefined : matchesByWord.get(text.toLowerCase());
    if (match === undefined) {
      agreed = false;
      if (text === null) continue;
      report(bookFinding("chart-match-unknown", { place: cell.place, found: text }));
    } else if (first === undefined) {
      first = match;
    } else if (match !== first) {
      agreed = false;
      const values = { chart, first };
      report(bookFinding("chart-match-differs", { place: cell.place, found: match, values }));
    }
  }
  return agreed ? (first ?? null) : null;
}

/** The key across a two-way chart; `undefined` where there is none to use. */
function readAcross(cell: TypedCell, chart: string, report: Report): ChartValue | undefined {
  if (!isBlank(cell.value)) return readKey(cell, "value across", report) ?? undefined;
  report(bookFinding("chart-across-empty", { place: cell.place, values: { chart } }));
  return undefined;
}

const readKey = (cell: TypedCell, column: string, report: Report): ChartValue | null =>
  readFilledText(cell, column, report) === null ? null : readLiteral(cell, report);

function readEntryValue(cell: TypedCell, chart: string, report: Report): ChartValue | null {
  if (!isBlank(cell.value))
    return readText(cell, report) === null ? null : readLiteral(cell, report);
  report(bookFinding("chart-value-empty", { place: cell.place, values: { chart } }));
  return null;
}

/**
 * A number or a yes and no as it is; text that a formula would take for one number or length, such as
 * `7'-0"`, as that number in inches; any other text as text.
 */
function readLiteral(cell: TypedCell, report: Report): ChartValue | null {
  if (typeof cell.value === "number" || typeof cell.value === "boolean") return cell.value;
  const text = cellText(cell.value).trim();
  const read = readFormula(text);
  if (read.ok) {
    const { tree } = read.value;
    return tree.kind === "number" || tree.kind === "text" ? tree.value : text;
  }
  if (read.error.code !== "formula-length-ambiguous") return text;
  const values = { reason: read.error.message };
  report(bookFinding("chart-key-unclear", { place: cell.place, found: text, values }));
  return null;
}
