/** The same changes on every job: what they do to all together, and whom they take below its target. */
import { useDeferredValue, useMemo } from "react";
import { currencyIn } from "../../app/settings";
import type { TypedChanges } from "../../app/pricing/keptWhatIfs";
import { whatIfJobs } from "../../app/pricing/whatIfJobs";
import { keepsTarget, costByPrice } from "../../core/pricing/keepTarget";
import type { JobPrice } from "../../core/pricing/priceJob";
import { factorName, factorsOf, type Factor } from "../../core/pricing/chances/whatIf";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import { FactorSliders } from "./FactorSliders";
import { shareWords, typedWords } from "./marginWords";
import { Line } from "./RollUpPart";
import { readChanges } from "./typedWhatIf";
import { WhatIfTable } from "./WhatIfTable";

export type AllWhatIfPartProps = {
  readonly jobs: readonly JobPrice[];
  readonly changes: TypedChanges;
  readonly onChange: (changes: TypedChanges) => void;
};

const firstJobs = 12;

export function AllWhatIfPart({ jobs, changes, onChange }: AllWhatIfPartProps) {
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  const factors = useMemo(() => factorsOfAll(jobs), [jobs]);
  const read = useMemo(() => readChanges(changes, factors, "held"), [changes, factors]);
  // With hundreds of jobs the sliders go on moving while the answer is worked out.
  const asked = useDeferredValue(read.whatIf);
  const table = useMemo(() => whatIfJobs(jobs, asked), [jobs, asked]);
  const below = useMemo(
    () =>
      table.rows
        .filter(
          ({ job, answer }) =>
            !keepsTarget(costByPrice(answer.rollUp), answer.rollUp.price, job.target),
        )
        .sort((a, b) => (a.answer.rollUp.margin ?? 0) - (b.answer.rollUp.margin ?? 0)),
    [table],
  );
  const more = useMore(below, firstJobs);
  return (
    <>
      <div className={shared.small}>
        The prices stay as bid while the costs move. What you type is kept in the workbook until you
        start over.
      </div>
      <WhatIfTable before={table.before} after={table.after} currency={currency} />
      <FactorSliders factors={factors} changes={changes} faults={read.faults} onChange={onChange} />
      <div>
        <SmallButton onClick={() => onChange(new Map())}>Start over</SmallButton>
      </div>
      <h3 className={shared.subheading}>
        {counted(below.length, "job")} of {countText(jobs.length)} below the target
      </h3>
      <ul className={shared.list} aria-label="Below the target">
        {more.shown.map(({ job, answer }) => (
          <Line
            key={job.job}
            label={job.job}
            words={`target ${typedWords(job.target)}; as estimated ${shareWords(job.rollUp.margin)}`}
            value={shareWords(answer.rollUp.margin)}
          />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
    </>
  );
}

/** Every figure that some job has, each once: the families of material first. */
function factorsOfAll(jobs: readonly JobPrice[]): readonly Factor[] {
  const all = new Map<string, Factor>();
  for (const factor of jobs.flatMap(({ input }) => factorsOf(input))) {
    all.set(factorName(factor), factor);
  }
  const isMaterial = ({ kind }: Factor): boolean => kind === "material";
  return [...all.values()].sort((a, b) => Number(isMaterial(b)) - Number(isMaterial(a)));
}
