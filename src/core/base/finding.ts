/**
 * Findings: what is wrong or doubtful in something a person typed.
 *
 * Each room keeps a table of the findings it can make (`FindingTable`); the pipeline's catalogue
 * gathers them all, and help and tests are made from the same rows.
 */
import { placeName, type CellPlace } from "./cell";

/** `stop`: not counted. `warn`: counted, and likely wrong. `note`: counted; somebody should know. */
export const findingLevels = ["stop", "warn", "note"] as const;
export type FindingLevel = (typeof findingLevels)[number];

/** One kind of finding. `says` and `todo` may hold `{name}` places that `makeFinding` fills. */
export type FindingRule = {
  readonly level: FindingLevel;
  /** What is wrong, as a sentence. */
  readonly says: string;
  /** What to do about it, as a sentence. */
  readonly todo: string;
};

/** Finding kinds by stable code, such as `width-not-a-length`. */
export type FindingTable = Readonly<Record<string, FindingRule>>;

/** One finding about one cell (or, with no place, about the input as a whole). */
export type Finding = {
  readonly code: string;
  readonly level: FindingLevel;
  readonly place: CellPlace | null;
  /** What stood there, as a person would see it. */
  readonly found: string;
  /** What is wrong, and what to do. */
  readonly message: string;
  /** The job and mark it is about, where it is about one opening. */
  readonly job?: string;
  readonly mark?: string;
};

/** What a finding is about and what its sentences are filled with. */
export type FindingDetails = {
  readonly place?: CellPlace | null;
  readonly found?: string;
  readonly values?: Readonly<Record<string, string | number>>;
  readonly job?: string;
  readonly mark?: string;
  /** Another level than the rule's, for limits whose level the kit book sets. */
  readonly level?: FindingLevel;
};

/**
 * Makes a finding of the kind `code` of `table`. `{found}` and every name in `values` are filled in;
 * a place with no value stays as it is, so a missing value shows.
 */
export function makeFinding<Table extends FindingTable>(
  table: Table,
  code: keyof Table & string,
  details: FindingDetails,
): Finding {
  const rule = (table as FindingTable)[code];
  if (rule === undefined) throw new RangeError(`No such finding: ${code}`);
  const { place = null, found = "", values = {}, job, mark, level = rule.level } = details;
  const filled = fillPlaces(`${rule.says} ${rule.todo}`.trim(), { found, ...values });
  return {
    code,
    level,
    place,
    found,
    message: filled,
    ...(job === undefined ? {} : { job }),
    ...(mark === undefined ? {} : { mark }),
  };
}

/** Fills each `{name}` of `text` from `values`; a name that is not there stays. */
export const fillPlaces = (
  text: string,
  values: Readonly<Record<string, string | number>>,
): string =>
  text.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(values, name) ? String(values[name]) : whole,
  );

/** The finding's cell such as `Schedule!D7`, or the empty text where it has none. */
export const findingCell = (finding: Finding): string =>
  finding.place === null ? "" : placeName(finding.place);
