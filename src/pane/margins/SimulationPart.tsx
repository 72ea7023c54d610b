/** The chance that a job falls below its target, by drawing its figures many thousand times. */
import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import type { OwnerRanges } from "../../app/pricing/ranges";
import { simulationTask, usualDraws, type SimulationTask } from "../../app/pricing/simulateJob";
import type { JobToChange } from "../../app/pricing/whatIfJobs";
import type { OwnerRange } from "../../core/pricing/chances/ownerRanges";
import { marginAtShare, type Simulation } from "../../core/pricing/chances/simulation";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { ProgressLine } from "../parts/ProgressLine";
import { countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { Histogram } from "./Histogram";
import { shareWords, typedWords } from "./marginWords";
import { RangeFields } from "./RangeFields";
import type { TypedRange } from "./typedRanges";
import type { SimulationHandle } from "./useSimulation";
import { CancelButton } from "./WritingLine";

const useStyles = makeStyles({
  wish: { display: "grid", gridTemplateColumns: "1fr 1fr", gap: tokens.spacingHorizontalS },
  field: { minWidth: 0 },
  input: { minWidth: 0, width: "100%" },
  typed: { minWidth: 0, width: "100%", textAlign: "right" },
});

/** What the owner typed for a simulation, as it stands in the fields. */
export type TypedSimulation = {
  readonly ranges: ReadonlyMap<string, TypedRange>;
  readonly forEvery: boolean;
  readonly seed: string;
  readonly draws: string;
};

export const usualSimulation: TypedSimulation = {
  ranges: new Map(),
  forEvery: true,
  seed: "1",
  draws: String(usualDraws),
};

const fewestDraws = 100;
const mostDraws = 1_000_000;
const mostSeed = 2 ** 32 - 1;

export type SimulationPartProps = SimulationHandle & {
  readonly job: JobToChange;
  readonly ranges: OwnerRanges;
  readonly typed: TypedSimulation;
  readonly onType: (typed: TypedSimulation) => void;
  readonly onRanges: (ranges: readonly OwnerRange[]) => void;
};

export function SimulationPart(props: SimulationPartProps) {
  const { job, ranges, typed, onType, onRanges, simulating, run, cancel } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const seed = wholeNumber(typed.seed, 0, mostSeed);
  const draws = wholeNumber(typed.draws, fewestDraws, mostDraws);
  const task =
    seed === null || draws === null ? null : simulationTask(job, ranges.ranges, { seed, draws });
  return (
    <>
      <h3 className={shared.subheading}>What the figures may turn out to be</h3>
      <RangeFields
        job={job}
        ranges={ranges}
        typed={typed.ranges}
        onType={(texts) => onType({ ...typed, ranges: texts })}
        forEvery={typed.forEvery}
        onForEvery={(forEvery) => onType({ ...typed, forEvery })}
        onChange={onRanges}
      />
      <div className={styles.wish}>
        <WholeNumber
          label="Draws"
          wanted={`from ${countText(fewestDraws)} to ${countText(mostDraws)}`}
          isWrong={draws === null}
          typed={typed.draws}
          onType={(text) => onType({ ...typed, draws: text })}
        />
        <WholeNumber
          label="Seed"
          wanted={`from 0 to ${countText(mostSeed)}`}
          isWrong={seed === null}
          typed={typed.seed}
          onType={(text) => onType({ ...typed, seed: text })}
        />
      </div>
      {simulating.kind === "busy" ? (
        <>
          <div role="status">Drawing…</div>
          <ProgressLine name="Drawing" done={simulating.progress} />
          <CancelButton onCancel={cancel} />
        </>
      ) : (
        <Button
          appearance="primary"
          disabledFocusable={task === null}
          onClick={() => {
            if (task !== null) run(task);
          }}
        >
          Simulate
        </Button>
      )}
      {simulating.kind === "cancelled" ? (
        <Notice level="note">Cancelled: nothing was drawn.</Notice>
      ) : null}
      {simulating.kind === "done" ? (
        <Outcome
          simulation={simulating.simulated.simulation}
          isOld={task !== null && textOf(task) !== textOf(simulating.task)}
        />
      ) : null}
    </>
  );
}

type OutcomeProps = {
  readonly simulation: Simulation | null;
  /** Whether the job or its ranges are no longer those that were drawn. */
  readonly isOld: boolean;
};

function Outcome({ simulation, isOld }: OutcomeProps) {
  const focus = useFocusOnAppear(true);
  const shared = useSharedStyles();
  if (simulation === null) {
    return <Notice level="note">The job has no price above zero, so it has no margin.</Notice>;
  }
  const { belowTarget, belowZero, uncertainty, mean, target, draws, seed } = simulation;
  const at = (share: number): string => shareWords(marginAtShare(simulation, share));
  return (
    <div tabIndex={-1} ref={focus} className={shared.stack}>
      {isOld ? (
        <Notice level="warn">The job, its ranges or the seed changed since: simulate again.</Notice>
      ) : null}
      <div role="status">
        <strong>
          Chance of falling below the target of {typedWords(target)}: {shareWords(belowTarget)}
        </strong>{" "}
        (give or take {(uncertainty * 100).toFixed(1)} points). Of losing money:{" "}
        {shareWords(belowZero)}.
      </div>
      <div>
        Margin on average {shareWords(mean)}. One in ten is below {at(0.1)}, half are below{" "}
        {at(0.5)}, one in ten is above {at(0.9)}.
      </div>
      <Histogram simulation={simulation} />
      <div className={shared.small}>
        {countText(draws)} draws from seed {seed}: the same seed gives the same answer. Each figure
        is drawn by itself, as if none had to do with another.
      </div>
    </div>
  );
}

type WholeNumberProps = {
  readonly label: string;
  readonly wanted: string;
  readonly isWrong: boolean;
  readonly typed: string;
  readonly onType: (typed: string) => void;
};

function WholeNumber({ label, wanted, isWrong, typed, onType }: WholeNumberProps) {
  const styles = useStyles();
  return (
    <Field
      label={label}
      className={styles.field}
      {...(isWrong
        ? {
            validationState: "error" as const,
            validationMessage: `Type a whole number ${wanted}.`,
          }
        : {})}
    >
      <Input
        className={styles.input}
        input={{ className: styles.typed }}
        inputMode="numeric"
        value={typed}
        onChange={(_, { value }) => onType(value)}
      />
    </Field>
  );
}

/** `null` where the text is no whole number in the range. Thousands may be parted by commas. */
function wholeNumber(text: string, least: number, most: number): number | null {
  const digits = text.trim().replaceAll(",", "");
  const value = /^\d+$/.test(digits) ? Number(digits) : NaN;
  return value >= least && value <= most ? value : null;
}

/** Two tasks with the same text give the same answer. */
const textOf = ({ model, ranges, plan }: SimulationTask): string =>
  JSON.stringify([model, [...ranges.material], { ...ranges, material: null }, plan]);
