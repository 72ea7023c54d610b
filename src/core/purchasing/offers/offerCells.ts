/** Cells of an offers table -> sizes, prices and counts. */
import { cellText, isBlank, type TypedCell } from "../../base/cell";
import type { Finding } from "../../base/finding";
import { cents, type Cents, type Inches } from "../../base/units";
import { typedNumber } from "../../base/typedNumber";
import { toInches, type LengthUnit } from "../../lengths/length";
import { lengthFinding } from "../../lengths/lengthFindings";
import { readLength } from "../../lengths/readLength";
import { unitCostPlaces, type Currency } from "../../money/currency";
import { priceFinding } from "../../money/moneyFindings";
import { readPrice } from "../../money/price";
import { sizeLength } from "../sizedItem";

/** Told of what is wrong in a cell. */
export type Report = (finding: Finding) => void;

/** A blank is no size; one length, or two with an `x` between; `null`, once reported, for other text. */
export function readSize(
  cell: TypedCell | undefined,
  unit: LengthUnit,
  report: Report,
): readonly Inches[] | null {
  if (cell === undefined || isBlank(cell.value)) return [];
  const { value, place } = cell;
  const parts = typeof value === "string" ? value.split(/\s*[x×]\s*/i) : [value];
  const size = parts.flatMap((part) => {
    const read = readLength(part, unit);
    if (read.ok) return [sizeLength(toInches(read.value.length))];
    report(lengthFinding(read.error, { place, found: textOf(cell), level: "warn" }));
    return [];
  });
  return size.length === parts.length ? size : null;
}

/** The price of a pack, rounded to the currency's minor unit; `null`, reported unless blank, for none. */
export function readPackPrice(
  cell: TypedCell | undefined,
  currency: Currency,
  report: Report,
): { readonly price: Cents; readonly isRounded: boolean } | null {
  if (cell === undefined || isBlank(cell.value)) return null;
  const read = readPrice(cell.value, currency);
  const details = { place: cell.place, found: textOf(cell) };
  for (const said of read.ok ? read.value.doubts : [read.error])
    report(priceFinding(said, details));
  if (!read.ok) return null;
  const amount = read.value.unitCost / 10 ** (unitCostPlaces - currency.digits);
  return { price: cents(Math.round(amount)), isRounded: !Number.isInteger(amount) };
}

/** `null` for a blank; not a number for what is none. */
export function numberOf(cell: TypedCell | undefined): number | null {
  return cell === undefined || isBlank(cell.value) ? null : typedNumber(cell.value);
}

export const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();
