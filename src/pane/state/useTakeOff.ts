/** The live take-off of a workbook as React state. */
import { useEffect, useReducer, useRef, useState } from "react";
import type { Settings } from "../../app/settings";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { liveTakeOff, type LiveTakeOff } from "./liveTakeOff";
import { firstState, nextState, type TakeOffState } from "./takeOffState";
import { useBroken } from "./useBroken";

export type TakeOffHandle = {
  readonly state: TakeOffState;
  readonly count: () => void;
  readonly cancel: () => void;
  readonly change: (settings: Partial<Settings>) => void;
};

export function useTakeOff(
  workbook: Workbook,
  onFault: (fault: WorkbookFault) => void,
): TakeOffHandle {
  const [state, dispatch] = useReducer(nextState, firstState);
  const live = useRef<LiveTakeOff | null>(null);
  const onBroken = useBroken();
  useEffect(() => {
    const opened = liveTakeOff(workbook, { tell: dispatch, onFault, onBroken });
    live.current = opened;
    return () => opened.close();
  }, [workbook, onFault, onBroken]);
  const [actions] = useState(() => ({
    count: () => live.current?.count(),
    cancel: () => live.current?.cancel(),
    change: (settings: Partial<Settings>) => live.current?.change(settings),
  }));
  return { state, ...actions };
}
