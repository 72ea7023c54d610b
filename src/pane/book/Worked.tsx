/** What long work comes to, or how far it is. */
import type { ReactNode } from "react";
import { UnderWay } from "../parts/UnderWay";
import type { StepsHandle } from "./useSteps";

export type WorkedProps<Result> = {
  /** What is under way, such as `Checking the kit book`. */
  readonly name: string;
  readonly steps: StepsHandle<Result>;
  readonly children: (result: Result) => ReactNode;
};

export function Worked<Result>({ name, steps, children }: WorkedProps<Result>) {
  const { state, cancel, again } = steps;
  if (state.kind === "done") return children(state.result);
  const progress = state.kind === "busy" ? state.progress : null;
  return <UnderWay name={name} progress={progress} onStop={cancel} onGoOn={again} />;
}
