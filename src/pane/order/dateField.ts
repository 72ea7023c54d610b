/** What a date field holds. */
import { dateSerial } from "../../core/base/date";

/** `2026-11-29` as its serial; `null` for anything else. */
export function serialOf(typed: string): number | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(typed) ?? [];
  return dateSerial(Number(year), Number(month), Number(day));
}
