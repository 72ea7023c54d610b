/** One ear for all who listen: whether Excel counts how often it was asked for an event is not said. */
import type { Workbook } from "../../workbook/workbook";

type Watch = Workbook["watch"];

/** Starts with the first listener, stops with the last, and passes every change to each. */
export function sharedWatch(start: Watch): Watch {
  const listeners = new Set<Parameters<Watch>[0]>();
  let running: ReturnType<Watch> | null = null;
  return async (onChange) => {
    const listener: typeof onChange = (change) => {
      onChange(change);
    };
    listeners.add(listener);
    running ??= start((change) => {
      for (const each of [...listeners]) each(change);
    });
    try {
      await running;
    } catch (error) {
      listeners.delete(listener);
      running = null;
      throw error;
    }
    return async () => {
      listeners.delete(listener);
      if (listeners.size > 0 || running === null) return;
      const stop = running;
      running = null;
      await (
        await stop
      )();
    };
  };
}
