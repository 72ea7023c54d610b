/**
 * An alternate that changes what the schedule says: the job is counted again with it, through the same
 * kit book, corrections and checks. One that cannot be counted whole is not offered, and says why.
 */
import { cellText, isBlank, type TypedCell } from "../base/cell";
import { makeFinding, type Finding } from "../base/finding";
import type { Steps } from "../base/steps";
import { nearestName, normalName } from "../formulas/names";
import type { OpeningRow, ScheduleKey } from "../openings/openingRow";
import { alternateFindings } from "../pricing/alternates/alternateFindings";
import type { TypedAlternate, TypedChange } from "../pricing/alternates/alternateRows";
import { namedOpenings, type NamedOpenings } from "./namedOpenings";
import type { JobEstimate } from "./jobEstimate";
import { recountJob, scheduleRowKey, type CountBasis, type JobRow } from "./recountJob";

/** The columns that a change can name, by every name they go by. */
export type ChangeColumns = ReadonlyMap<string, ChangeColumn>;
export type ChangeColumn = {
  readonly label: string;
  readonly field:
    | { readonly kind: "standard"; readonly key: ScheduleKey }
    | { readonly kind: "other"; readonly name: string };
};

export type CountedChange = {
  /** `null` where the alternate is not offered for the job. */
  readonly counted: { readonly estimate: JobEstimate; readonly how: string } | null;
  readonly findings: readonly Finding[];
};

/** A change with what its words mean in the job. */
type KnownChange = TypedChange & { readonly of: ChangeColumn; readonly named: NamedOpenings };

/**
 * Counts a job with the changes of an alternate. `base` is its estimate without them. An alternate for
 * every job is not one of a job that has none of the openings it names, and nothing is said of that.
 */
export function* countAlternate(
  alternate: TypedAlternate,
  base: JobEstimate,
  rows: readonly JobRow[],
  columns: ChangeColumns,
  basis: CountBasis,
): Steps<CountedChange> {
  const { job } = base;
  const { name } = alternate;
  const refused = (finding: Finding): CountedChange => ({ counted: null, findings: [finding] });
  const changes: KnownChange[] = [];
  for (const change of alternate.changes) {
    const of = columns.get(normalName(cellText(change.column.value)));
    if (of === undefined) return refused(columnUnknown(name, change.column, columns));
    const named = namedOpenings(change.openings, base, rows);
    if (named.unknown.length > 0 && alternate.job !== "") {
      return refused(openingsUnknown(name, job, change.openings, named));
    }
    if (named.isNone) return { counted: null, findings: [] };
    changes.push({ ...change, of, named });
  }
  const changed = rows.map(({ schedule, row }): JobRow => ({
    schedule,
    row: changedRow(row, changes),
  }));
  const { estimate, findings } = yield* recountJob(job, changed, basis);
  const stopped = newlyUncounted(base, estimate);
  if (stopped !== null) {
    const to = changes[0]?.to;
    const why = stopped.findings.find(({ level }) => level === "stop");
    return refused(
      makeFinding(alternateFindings, "alternate-not-counted", {
        place: to?.place ?? alternate.place,
        found: changes.map(changeWords).join(" and "),
        values: { name, job, mark: stopped.mark, message: why?.message ?? "" },
        job,
      }),
    );
  }
  const cells = new Set(changes.map(({ to }) => placeKey(to)));
  const doubts = findings.filter(({ place }) => place !== null && cells.has(keyOf(place)));
  return {
    counted: { estimate, how: howWords(changes, rows) },
    findings: [...onceEach(doubts), ...outcomeDoubts(alternate, base, estimate)],
  };
}

function changedRow(row: OpeningRow, changes: readonly KnownChange[]): OpeningRow {
  const own = changes.filter(({ named }) => named.isIn(row));
  if (own.length === 0) return row;
  const cells: Partial<Record<ScheduleKey, TypedCell>> = { ...row.cells };
  const others: Record<string, TypedCell> = { ...row.others };
  for (const { of, to } of own) {
    if (of.field.kind === "standard") cells[of.field.key] = to;
    else others[of.field.name] = to;
  }
  return { ...row, cells, others };
}

function columnUnknown(name: string, column: TypedCell, columns: ChangeColumns): Finding {
  const labels = [...new Set([...columns.values()].map(({ label }) => label))];
  const found = cellText(column.value).trim();
  const near = nearestName(found, labels);
  const guess = near === undefined ? "" : `Did you mean ${near}? `;
  const values = { name, guess, columns: labels.join(", ") };
  return makeFinding(alternateFindings, "alternate-column-unknown", {
    place: column.place,
    found,
    values,
  });
}

function openingsUnknown(
  name: string,
  job: string,
  openings: TypedCell,
  { unknown, known }: NamedOpenings,
): Finding {
  const near = nearestName(unknown[0] ?? "", known);
  const guess = near === undefined ? "" : `Did you mean ${near}? `;
  return makeFinding(alternateFindings, "alternate-openings-unknown", {
    place: openings.place,
    found: unknown.join(", "),
    values: { name, job, guess },
    job,
  });
}

/** The first row that gave a count before and gives none now. */
function newlyUncounted(base: JobEstimate, now: JobEstimate) {
  const before = new Set(base.uncounted.map(scheduleRowKey));
  return now.uncounted.find((row) => !before.has(scheduleRowKey(row))) ?? null;
}

function outcomeDoubts(
  { name, place, additions }: TypedAlternate,
  base: JobEstimate,
  now: JobEstimate,
): readonly Finding[] {
  const about = { place, job: base.job };
  const values = { name, job: base.job };
  const still = new Set(now.uncounted.map(scheduleRowKey));
  const more = base.uncounted.filter((row) => !still.has(scheduleRowKey(row)));
  if (more.length > 0) {
    const found = more.map(({ mark }) => mark).join(", ");
    return [makeFinding(alternateFindings, "alternate-counts-more", { ...about, found, values })];
  }
  return additions.length === 0 && linesKey(base) === linesKey(now)
    ? [makeFinding(alternateFindings, "alternate-changes-nothing", { ...about, values })]
    : [];
}

/** The lines, in any order. */
const linesKey = ({ material }: JobEstimate): string =>
  material.lines
    .map(({ line }) => JSON.stringify([line.item, line.size, line.quantity]))
    .sort()
    .join("\n");

const changeWords = ({ of, to }: KnownChange): string =>
  `${of.label} ${isBlank(to.value) ? "blank" : cellText(to.value).trim()}`;

/** Such as `counted again with Transom no on 4 of 12 rows of the schedule`. */
function howWords(changes: readonly KnownChange[], rows: readonly JobRow[]): string {
  const parts = changes.map((change) => {
    const count = rows.filter(({ row }) => change.named.isIn(row)).length;
    const where = count === rows.length ? "every opening" : `${count} of ${rows.length} openings`;
    return `${changeWords(change)} on ${where}`;
  });
  return `counted again with ${parts.join(" and ")}`;
}

const keyOf = ({ sheet, row, column }: NonNullable<TypedCell["place"]>): string =>
  `${sheet}\n${row}\n${column}`;
const placeKey = ({ place }: TypedCell): string => (place === null ? "" : keyOf(place));

function onceEach(findings: readonly Finding[]): readonly Finding[] {
  const known = new Map(findings.map((one) => [`${one.code}\n${one.found}`, one]));
  return [...known.values()];
}
