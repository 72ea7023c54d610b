/** Today by the clock of this machine, as a date serial. */
import { dateSerial } from "../core/base/date";

export function today(): number {
  const now = new Date();
  return dateSerial(now.getFullYear(), now.getMonth() + 1, now.getDate()) ?? 0;
}
