/** Long work of a view in short turns: how far it is, what it comes to, and a way to leave off. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Steps } from "../../core/base/steps";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";

export type StepsState<Result> =
  | { readonly kind: "busy"; readonly progress: number }
  | { readonly kind: "stopped" }
  | { readonly kind: "done"; readonly result: Result };

export type StepsHandle<Result> = {
  readonly state: StepsState<Result>;
  readonly cancel: () => void;
  readonly again: () => void;
};

/** Milliseconds in which a person goes on typing. */
const pause = 250;

/** Does the work a moment after `steps` is made, and again for another one; leaves off what is under way. */
export function useSteps<Result>(steps: () => Steps<Result>): StepsHandle<Result> {
  const [state, setState] = useState<StepsState<Result>>({ kind: "busy", progress: 0 });
  const running = useRef<AbortController | null>(null);
  const onBroken = useBroken();
  const run = useCallback(() => {
    running.current?.abort();
    const { signal } = (running.current = new AbortController());
    setState({ kind: "busy", progress: 0 });
    const begin = async (): Promise<void> => {
      await new Promise((resolve) => setTimeout(resolve, pause));
      const result = await runSteps(steps(), {
        signal,
        onProgress: (progress) => setState({ kind: "busy", progress }),
      });
      if (result !== null && !signal.aborted) setState({ kind: "done", result });
    };
    begin().catch(onBroken);
  }, [steps, onBroken]);
  useEffect(() => {
    run();
    return () => running.current?.abort();
  }, [run]);
  const cancel = (): void => {
    running.current?.abort();
    setState({ kind: "stopped" });
  };
  return { state, cancel, again: run };
}
