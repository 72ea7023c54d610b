/** Keeps a take-off up with its workbook: reads and counts again a moment after each change. */
import { readCorrections } from "../../app/corrections/corrections";
import { keptBlocks } from "../../app/reading/keptBlocks";
import { keptTakeOff } from "../../app/reading/keptTakeOff";
import { defaultSettings, readSettings, writeSettings, type Settings } from "../../app/settings";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { hostFault } from "./hostFault";
import { lateLoads } from "./lateLoads";
import { runSteps } from "./runSteps";
import type { TakeOffEvent } from "./takeOffState";

export type LiveTakeOff = {
  /** Counts now, whatever was under way. */
  readonly count: () => void;
  /** Leaves off what is under way, until the next change or `count`. */
  readonly cancel: () => void;
  /** Keeps the settings in the workbook and counts by them. */
  readonly change: (settings: Partial<Settings>) => void;
  readonly close: () => void;
};

export type Listener = {
  readonly tell: (event: TakeOffEvent) => void;
  /** What the host refused besides reading: settings that could not be kept. */
  readonly onFault: (fault: WorkbookFault) => void;
  /** A fault of this program, which must not be hidden. */
  readonly onBroken: (error: unknown) => void;
};

/** Long enough for a person to go on typing, short enough to be at hand when they look up. */
const pause = 400;
const pauseBetweenProgress = 100;

/** Begins at once, and ends with `close`. */
export function liveTakeOff(
  workbook: Workbook,
  { tell, onFault, onBroken }: Listener,
): LiveTakeOff {
  const blocks = keptBlocks(workbook);
  const loads = lateLoads();
  const takeOff = keptTakeOff(loads.entered);
  let settings: Settings = defaultSettings;
  let areSettingsRead = false;
  let keeping: Promise<unknown> = Promise.resolve();
  let running = new AbortController();
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const orFault = (onHostFault: (fault: WorkbookFault) => void) => (error: unknown) => {
    const fault = hostFault(error);
    if (fault === null) onBroken(error);
    else onHostFault(fault);
  };

  const readOwnSettings = async (signal: AbortSignal): Promise<void> => {
    await keeping;
    const read = await readSettings(workbook);
    if (signal.aborted) return;
    areSettingsRead = true;
    settings = read;
    tell({ kind: "settings", settings });
  };

  const readAndCount = async (signal: AbortSignal): Promise<void> => {
    if (!areSettingsRead) await readOwnSettings(signal);
    const isLeft = (): boolean => signal.aborted;
    const read = await blocks.read();
    if (isLeft()) return;
    if (!read.ok) {
      tell({ kind: "failed", fault: read.error });
      return;
    }
    const typed = await readCorrections(workbook, blocks.readOne);
    if (isLeft()) return;
    if (!typed.ok) {
      tell({ kind: "failed", fault: typed.error });
      return;
    }
    await loads.ready(read.value);
    if (isLeft()) return;
    let toldAt = performance.now();
    const onProgress = (progress: number): void => {
      if (performance.now() - toldAt < pauseBetweenProgress) return;
      toldAt = performance.now();
      tell({ kind: "progressed", progress });
    };
    const counted = await runSteps(takeOff(read.value, settings, typed.value), {
      signal,
      onProgress,
    });
    if (counted !== null) tell({ kind: "counted", takeOff: counted });
  };

  const stop = (): void => {
    clearTimeout(waiting);
    running.abort();
  };

  const count = (): void => {
    stop();
    running = new AbortController();
    const { signal } = running;
    tell({ kind: "began" });
    readAndCount(signal).catch(
      orFault((fault) => {
        if (!signal.aborted) tell({ kind: "failed", fault });
      }),
    );
  };

  const watching = workbook.watch((change) => {
    if (change.kind === "selection") return;
    // Another file may have been opened in the same place, with settings of its own.
    if (change.kind === "sheets") areSettingsRead = false;
    blocks.forget(change);
    clearTimeout(waiting);
    waiting = setTimeout(count, pause);
  });
  watching.catch(orFault(onFault));
  count();

  return {
    count,
    cancel: () => {
      stop();
      tell({ kind: "stopped" });
    },
    change: (changed) => {
      settings = { ...settings, ...changed };
      tell({ kind: "settings", settings });
      keeping = writeSettings(workbook, settings).then((kept) => {
        if (!kept.ok) onFault(kept.error);
      }, orFault(onFault));
      count();
    },
    close: () => {
      stop();
      watching.then((stopWatching) => stopWatching()).catch(() => undefined);
    },
  };
}
