/** A fault that is thrown, by questions of the port whose answer has no room for one. */
import type { WorkbookFault } from "./workbook";

type ThrownFault = Error & { readonly fault: WorkbookFault };

export const thrownFault = (fault: WorkbookFault): ThrownFault =>
  Object.assign(new Error(fault.message), { fault });

/** The fault inside what was thrown; `null` for anything else. */
export const faultInside = (thrown: unknown): WorkbookFault | null =>
  thrown instanceof Error && "fault" in thrown ? (thrown as ThrownFault).fault : null;
