/** What the pane knows of the workbook, and how that changes. */
import { defaultSettings, type Settings } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { WorkbookFault } from "../../workbook/workbook";

export type TakeOffState = {
  /**
   * `reading`, `counting`: under way. `ready`: `takeOff` is what the workbook holds now. `stopped`:
   * the person cancelled. `failed`: the host could not be read, `fault` says why.
   */
  readonly phase: "reading" | "counting" | "ready" | "stopped" | "failed";
  /** From 0 to 1, while counting. */
  readonly progress: number;
  readonly settings: Settings;
  /** The last whole count; older than the workbook while `phase` is not `ready`. */
  readonly takeOff: WorkbookTakeOff | null;
  readonly fault: WorkbookFault | null;
};

export type TakeOffEvent =
  | { readonly kind: "began" }
  | { readonly kind: "progressed"; readonly progress: number }
  | { readonly kind: "counted"; readonly takeOff: WorkbookTakeOff }
  | { readonly kind: "failed"; readonly fault: WorkbookFault }
  | { readonly kind: "stopped" }
  | { readonly kind: "settings"; readonly settings: Settings };

export const firstState: TakeOffState = {
  phase: "reading",
  progress: 0,
  settings: defaultSettings,
  takeOff: null,
  fault: null,
};

export function nextState(state: TakeOffState, event: TakeOffEvent): TakeOffState {
  switch (event.kind) {
    case "began":
      return { ...state, phase: "reading", progress: 0 };
    case "progressed":
      // A step that ends after the person stopped is no new beginning.
      return isBusy(state) ? { ...state, phase: "counting", progress: event.progress } : state;
    case "counted":
      return { ...state, phase: "ready", progress: 1, takeOff: event.takeOff, fault: null };
    case "failed":
      return { ...state, phase: "failed", fault: event.fault };
    case "stopped":
      return { ...state, phase: "stopped" };
    case "settings":
      return { ...state, settings: event.settings };
  }
}

export const isBusy = ({ phase }: TakeOffState): boolean =>
  phase === "reading" || phase === "counting";
