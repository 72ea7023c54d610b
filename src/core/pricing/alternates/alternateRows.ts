/**
 * Alternates and options as a person types them: a name, and what each changes of the schedule, adds
 * to a job or takes away from it. Rows of one name and job are one alternate.
 */
import { cellText, isBlank, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding } from "../../base/finding";
import { tenThousandths, type Cents, type TenThousandths } from "../../base/units";
import { typedNumber } from "../../base/typedNumber";
import { nearestName } from "../../formulas/names";
import { canExtend, extend } from "../../money/amounts";
import type { Currency } from "../../money/currency";
import { priceFinding } from "../../money/moneyFindings";
import { readPrice } from "../../money/price";
import { jobKey } from "../../takeoff/takeOff";
import { alternateFindings } from "./alternateFindings";
import { alternateKinds, type Alternate } from "./alternates";
import { itemKey, type Items } from "../item";

/** What a row can add: pieces of an item, material of a name, hours of the crew, another direct cost. */
export const additionKinds = [
  "item",
  "material",
  "hours",
  "equipment",
  "subcontract",
  "allowance",
] as const;
export type AdditionKind = (typeof additionKinds)[number];

/** Below zero it takes away. */
export type TypedAddition =
  | { readonly adds: "hours"; readonly hundredths: number }
  | {
      readonly adds: Exclude<AdditionKind, "hours" | "item">;
      /** The family of material, or the name of the cost. */
      readonly name: string;
      readonly amount: Cents;
    };

/** What the schedule says instead in one of its columns: the job is counted again with it. */
export type TypedChange = {
  readonly column: TypedCell;
  /** Blank empties the cell. */
  readonly to: TypedCell;
  /** Marks and opening types, or blank for every opening of the job. */
  readonly openings: TypedCell;
};

/** What a row of it is about: a change of the schedule, or one of the things that can be added. */
export const alternateActs = ["change", ...additionKinds] as const;

export type TypedAlternate = {
  readonly name: string;
  readonly kind: Alternate["kind"];
  /** The empty text for every job. */
  readonly job: string;
  /** Where its name was typed first. */
  readonly place: TypedCell["place"];
  readonly changes: readonly TypedChange[];
  readonly additions: readonly TypedAddition[];
};

export type AlternateColumn =
  "name" | "kind" | "job" | "adds" | "of" | "to" | "openings" | "quantity" | "each";
export type AlternateRow = Readonly<Partial<Record<AlternateColumn, TypedCell>>>;

/** Checks the rows. An alternate with a row that cannot be used is left out as a whole, or its price would be wrong. */
export function checkAlternates(
  rows: readonly AlternateRow[],
  items: Items,
  currency: Currency,
): { readonly alternates: readonly TypedAlternate[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const byKey = new Map<string, { alternate: TypedAlternate; isWhole: boolean }>();
  for (const row of rows) {
    const name = textOf(row.name);
    const job = textOf(row.job);
    if (name === "") continue;
    const key = `${name.toLowerCase()}\n${jobKey(job)}`;
    const known = byKey.get(key);
    const kind = kindOf(row, known?.alternate.kind);
    const act = kind === null ? kindReason : readAct(row, items, currency);
    if (typeof act === "string") {
      const place = row.name?.place ?? null;
      const values = { name, reason: act };
      findings.push(
        makeFinding(alternateFindings, "alternate-wrong", { place, found: name, values }),
      );
    } else if ("code" in act) findings.push(act);
    const isUsable = typeof act === "object" && !("code" in act);
    byKey.set(key, {
      alternate: {
        name: known?.alternate.name ?? name,
        kind: kind ?? "option",
        job,
        place: known?.alternate.place ?? row.name?.place ?? null,
        changes: [
          ...(known?.alternate.changes ?? []),
          ...(isUsable && "column" in act ? [act] : []),
        ],
        additions: [
          ...(known?.alternate.additions ?? []),
          ...(isUsable && "adds" in act ? [act] : []),
        ],
      },
      isWhole: (known?.isWhole ?? true) && isUsable,
    });
  }
  return {
    alternates: [...byKey.values()].flatMap(({ alternate, isWhole }) =>
      isWhole ? [alternate] : [],
    ),
    findings,
  };
}

const kindReason = `its kind must be one of ${alternateKinds.join(", ")}`;

/** A blank kind is that of the rows above it, or an option. */
function kindOf({ kind }: AlternateRow, known: Alternate["kind"] | undefined) {
  const typed = textOf(kind).toLowerCase();
  if (typed === "") return known ?? "option";
  return alternateKinds.find((one) => one === typed) ?? null;
}

/** What a row does; or why it does nothing, in words or as a finding of its own. */
function readAct(
  row: AlternateRow,
  items: Items,
  currency: Currency,
): TypedAddition | TypedChange | Finding | string {
  const typed = textOf(row.adds).toLowerCase();
  if (typed === "change" || (typed === "" && textOf(row.to) !== "")) return readChange(row);
  const adds = additionKinds.find((one) => one === typed);
  if (adds === undefined) {
    return `it can change a column of the schedule (change) or add ${additionKinds.join(", ")}`;
  }
  return readAddition(row, adds, items, currency);
}

function readChange({ of: column, to, openings }: AlternateRow): TypedChange | string {
  if (column === undefined || isBlank(column.value)) {
    return "it names no column of the schedule to change";
  }
  if (to === undefined)
    return "the sheet has no column To, for what the schedule would say instead";
  return { column, to, openings: openings ?? { value: null, place: null } };
}

function readAddition(
  row: AlternateRow,
  adds: AdditionKind,
  items: Items,
  currency: Currency,
): TypedAddition | Finding | string {
  const quantity = numberOf(row.quantity);
  if (quantity === null) return `${textOf(row.quantity)} is no quantity`;
  if (adds === "hours") {
    const hundredths = Math.round(quantity * 100);
    return Math.abs(hundredths) <= mostHundredths
      ? { adds, hundredths }
      : `${textOf(row.quantity)} hours are too many`;
  }
  const of = textOf(row.of);
  const item = adds === "item" ? items.get(itemKey(of)) : undefined;
  if (adds === "item" && item === undefined) {
    const near = nearestName(
      of,
      [...items.values()].map(({ code }) => code),
    );
    return `the items have no ${of}${near === undefined ? "" : `; did you mean ${near}?`}`;
  }
  const each = eachOf(row.each, item?.unitCost ?? null, currency);
  if (each === null) return `${of || adds} has no price`;
  if (typeof each !== "number") return each;
  if (!canExtend(quantity, each, currency)) return "it comes to more money than can be counted";
  const amount = extend(quantity, each, currency);
  return adds === "item"
    ? { adds: "material", name: item?.family ?? "Other", amount }
    : { adds, name: of || adds, amount };
}

/** A thousand people's year, and more. */
const mostHundredths = 1e9;

/** One, where nothing was typed. `null` for what is no number. */
function numberOf(cell: TypedCell | undefined): number | null {
  if (cell === undefined || isBlank(cell.value)) return 1;
  const number = typedNumber(cell.value);
  return Number.isFinite(number) ? number : null;
}

function eachOf(
  cell: TypedCell | undefined,
  usual: TenThousandths | null,
  currency: Currency,
): TenThousandths | Finding | null {
  if (cell === undefined || isBlank(cell.value)) return usual;
  if (cell.value === 0) return tenThousandths(0);
  const read = readPrice(cell.value, currency);
  if (read.ok) return read.value.unitCost;
  const details = { place: cell.place, found: textOf(cell) };
  return { ...priceFinding(read.error, details), level: "warn" };
}

const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();
