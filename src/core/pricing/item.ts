/** Items: what can be bought, as typed and once checked. */
import { cellText, isBlank, readDate, type CellPlace, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { pieces, type Pieces, type Pounds, type TenThousandths } from "../base/units";
import { typedNumber } from "../base/typedNumber";
import type { Currency } from "../money/currency";
import { priceFinding } from "../money/moneyFindings";
import { readPrice } from "../money/price";
import { readItemUnit, type ItemUnit } from "./itemUnit";
import { headedWeightUnit, itemWeightFindings, readItemWeight } from "./itemWeight";

/** The columns of an items table, in the order they are written. */
export const itemColumns = [
  "code",
  "description",
  "family",
  "unit",
  "unitCost",
  "weight",
  "sparesPercent",
  "sparesLeast",
  "priceDate",
  "basis",
] as const;
export type ItemColumn = (typeof itemColumns)[number];

/** A row as typed; a column is absent where the table does not have it. */
export type ItemRow = Readonly<Partial<Record<ItemColumn, TypedCell>>> & {
  readonly code: TypedCell;
  /** The unit that the heading of the weights names, as typed there; absent where it names none. */
  readonly weightUnit?: TypedCell;
};

/** Extra pieces sent with a job: a percentage of the count, rounded up, and at least so many. */
export type SparesPolicy = { readonly percent: number; readonly least: Pieces };

export type Item = {
  readonly code: string;
  readonly description: string;
  /** `Other` where the table names none. */
  readonly family: string;
  readonly unit: ItemUnit;
  /** Per unit; `null` where it is not known, which is not zero. */
  readonly unitCost: TenThousandths | null;
  /** Per unit, whatever unit of weight it was typed in; `null` where it is not known. */
  readonly weight: Pounds | null;
  readonly spares: SparesPolicy;
  /** A date serial; `null` where the table gives none. */
  readonly priceDate: number | null;
  readonly basis: string;
  /** The cell of the code. */
  readonly place: CellPlace | null;
};

/** Items by code, without case. */
export type Items = ReadonlyMap<string, Item>;

export const itemKey = (code: string): string => code.trim().replace(/\s+/g, " ").toLowerCase();

export const itemFindings = {
  "item-without-code": {
    level: "warn",
    says: "This row of the items table has no code and is not used.",
    todo: "Give it the code that the kit book uses.",
  },
  "item-twice": {
    level: "warn",
    says: "Item {found} stands twice in the items table; the first one is used.",
    todo: "Remove one of them.",
  },
  "spares-not-a-number": {
    level: "warn",
    says: "The spares of {item} are {found}, which is not a number from zero up.",
    todo: "Type a percentage such as 5, or a count of pieces.",
  },
  "price-date-not-a-date": {
    level: "warn",
    says: "The price date of {item} is {found}, which is not a date.",
    todo: "Type a date such as 2026-10-01.",
  },
} as const satisfies FindingTable;

export type CheckedItems = { readonly items: Items; readonly findings: readonly Finding[] };

/** Checks the rows of an items table. A bad cell is a finding and leaves that one figure unknown. */
export function checkItems(rows: readonly ItemRow[], currency: Currency): CheckedItems {
  const items = new Map<string, Item>();
  const findings: Finding[] = [...weightHeadingFindings(rows)];
  const inOtherUnits: ItemRow[] = [];
  for (const row of rows) {
    const code = textOf(row.code);
    const { place } = row.code;
    if (code === "") {
      findings.push(makeFinding(itemFindings, "item-without-code", { place }));
    } else if (items.has(itemKey(code))) {
      findings.push(makeFinding(itemFindings, "item-twice", { place, found: code }));
    } else {
      const { item, isInOtherUnit } = checkItem(code, row, currency, findings);
      items.set(itemKey(code), item);
      if (isInOtherUnit) inOtherUnits.push(row);
    }
  }
  findings.push(...otherUnitFindings(inOtherUnits));
  return { items, findings };
}

type CheckedItem = { readonly item: Item; readonly isInOtherUnit: boolean };

function checkItem(
  code: string,
  row: ItemRow,
  currency: Currency,
  findings: Finding[],
): CheckedItem {
  const report = (finding: keyof typeof itemFindings, cell: TypedCell) =>
    findings.push(
      makeFinding(itemFindings, finding, {
        place: cell.place,
        found: textOf(cell),
        values: { item: code },
      }),
    );

  const number = (column: ItemColumn, finding: keyof typeof itemFindings): number | null => {
    const cell = row[column];
    if (cell === undefined || isBlank(cell.value)) return null;
    const { value } = cell;
    const number = typedNumber(typeof value === "string" ? value.trim().replace(/%$/, "") : value);
    if (Number.isFinite(number) && number >= 0) return number;
    report(finding, cell);
    return null;
  };

  const unitCost = (): TenThousandths | null => {
    const cell = row.unitCost;
    if (cell === undefined || isBlank(cell.value)) return null;
    const price = readPrice(cell.value, currency);
    const said = price.ok ? price.value.doubts : [price.error];
    const details = { place: cell.place, found: `${code}: ${textOf(cell)}` };
    findings.push(...said.map((each) => priceFinding(each, details)));
    return price.ok ? price.value.unitCost : null;
  };

  const priceDate = (): number | null => {
    const cell = row.priceDate;
    if (cell === undefined || isBlank(cell.value)) return null;
    const serial = readDate(cell.value);
    if (serial === null) report("price-date-not-a-date", cell);
    return serial;
  };

  const unit = readItemUnit(textOf(row.unit));
  const weighed = readItemWeight(row.weight, headedWeightUnit(row.weightUnit), { code, unit });
  findings.push(...weighed.findings);
  const item: Item = {
    code,
    description: textOf(row.description),
    family: textOf(row.family) || "Other",
    unit,
    unitCost: unitCost(),
    weight: weighed.weight,
    spares: {
      percent: number("sparesPercent", "spares-not-a-number") ?? 0,
      least: pieces(Math.ceil(number("sparesLeast", "spares-not-a-number") ?? 0)),
    },
    priceDate: priceDate(),
    basis: textOf(row.basis),
    place: row.code.place,
  };
  return { item, isInOtherUnit: weighed.isInOtherUnit && row.weightUnit !== undefined };
}

/** A unit of the heading that is not known is told once, at the heading. */
const weightHeadingFindings = (rows: readonly ItemRow[]): readonly Finding[] =>
  rows
    .flatMap(({ weightUnit }) => weightUnit ?? [])
    .filter((words) => headedWeightUnit(words) === null)
    .slice(0, 1)
    .map((words) =>
      makeFinding(itemWeightFindings, "weight-heading-not-known", {
        place: words.place,
        found: textOf(words),
      }),
    );

const otherUnitFindings = (rows: readonly ItemRow[]): readonly Finding[] =>
  rows.slice(0, 1).map(({ code, weight, weightUnit }) =>
    makeFinding(itemWeightFindings, "weights-in-other-units", {
      place: weight?.place ?? null,
      found: textOf(weight),
      values: { item: textOf(code), heading: textOf(weightUnit), count: rows.length },
    }),
  );

const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();
