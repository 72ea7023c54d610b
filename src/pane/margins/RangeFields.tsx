/** What each figure may turn out to be, typed by the owner and kept in the workbook. */
import {
  Input,
  makeStyles,
  mergeClasses,
  Radio,
  RadioGroup,
  Select,
} from "@fluentui/react-components";
import type { OwnerRanges } from "../../app/pricing/ranges";
import type { JobToChange } from "../../app/pricing/whatIfJobs";
import { rangeLabel } from "../../core/pricing/chances/factorWords";
import {
  rangeShapes,
  rangesOfJob,
  type FactorRange,
  type OwnerRange,
  type RangeShape,
} from "../../core/pricing/chances/ownerRanges";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { changeWords } from "./marginWords";
import {
  rangeEnds,
  rangeKey,
  readRange,
  shownRange,
  withRange,
  type RangeEnd,
  type TypedRange,
} from "./typedRanges";

const useStyles = makeStyles({
  group: { minWidth: 0, margin: 0, padding: 0, border: "none" },
  fields: {
    display: "grid",
    gridTemplateColumns: "1fr 1fr 1fr 1.5fr",
    gap: tokens.spacingHorizontalXS,
  },
  head: { paddingLeft: tokens.spacingHorizontalXS },
  field: { minWidth: 0, width: "100%" },
  typed: { textAlign: "right", minWidth: 0, width: "100%" },
  wrong: { color: tokens.colorStatusDangerForeground1 },
});

const endWords: Readonly<Record<RangeEnd, string>> = {
  low: "lowest",
  likely: "most likely",
  high: "highest",
};
const shapeWords: Readonly<Record<RangeShape, string>> = {
  uniform: "even",
  triangular: "triangle",
  pert: "bell",
};

export type RangeFieldsProps = {
  readonly job: JobToChange;
  readonly ranges: OwnerRanges;
  /** What was typed and could not be used yet, by `rangeKey`. */
  readonly typed: ReadonlyMap<string, TypedRange>;
  readonly onType: (typed: ReadonlyMap<string, TypedRange>) => void;
  readonly forEvery: boolean;
  readonly onForEvery: (forEvery: boolean) => void;
  readonly onChange: (ranges: readonly OwnerRange[]) => void;
};

export function RangeFields(props: RangeFieldsProps) {
  const { job, ranges, forEvery, onForEvery } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const all = rangesOfJob(ranges.ranges, job);
  if (ranges.from === "sheet") {
    return (
      <>
        <div className={shared.small}>From the workbook’s sheet of ranges. Change them there.</div>
        <ul className={shared.list}>
          {all.map(({ subject, family, low, likely, high, shape }) => (
            <li key={rangeKey({ subject, family })} className={shared.small}>
              {rangeLabel(subject, family)}: {changeWords(low)} to {changeWords(high)}, most likely{" "}
              {changeWords(likely)} ({shapeWords[shape]})
            </li>
          ))}
        </ul>
      </>
    );
  }
  return (
    <>
      <div className={shared.small}>
        Change in percent of what is estimated.
        {ranges.from === "starter" ? " These ranges are invented: type your own." : ""}
      </div>
      <div aria-hidden className={mergeClasses(styles.fields, shared.small)}>
        {[...rangeEnds.map((end) => endWords[end]), "shape"].map((words) => (
          <span key={words} className={styles.head}>
            {words}
          </span>
        ))}
      </div>
      {all.map((range) => (
        <Figure key={rangeKey(range)} range={range} {...props} />
      ))}
      <RadioGroup
        aria-label="What is typed counts"
        layout="horizontal"
        value={forEvery ? "every" : "this"}
        onChange={(_, { value }) => onForEvery(value === "every")}
      >
        <Radio value="every" label="for every job" />
        <Radio value="this" label="for this job only" />
      </RadioGroup>
    </>
  );
}

function Figure({
  range,
  job,
  ranges,
  typed,
  onType,
  forEvery,
  onChange,
}: RangeFieldsProps & { readonly range: FactorRange }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const key = rangeKey(range);
  const shown = shownRange(typed.get(key), range);
  const read = readRange(shown);
  const name = rangeLabel(range.subject, range.family);
  const put = (changed: TypedRange): void => {
    onType(new Map([...typed, [key, changed]]));
    const now = readRange(changed);
    if (typeof now === "string") return;
    const scope = { job: job.job, forJob: forEvery ? "" : job.job };
    onChange(withRange(ranges.ranges, range, now, scope));
  };
  return (
    <fieldset className={styles.group}>
      <legend className={shared.small}>{name}</legend>
      <div className={styles.fields}>
        {rangeEnds.map((end) => (
          <Input
            key={end}
            className={styles.field}
            input={{ className: styles.typed }}
            aria-label={`${name}: ${endWords[end]} change in percent`}
            aria-invalid={typeof read === "string"}
            inputMode="decimal"
            value={shown[end]}
            onChange={(_, { value }) => put({ ...shown, [end]: value })}
          />
        ))}
        <Select
          className={styles.field}
          aria-label={`${name}: shape`}
          value={shown.shape}
          onChange={(_, { value }) => {
            const shape = rangeShapes.find((one) => one === value);
            if (shape !== undefined) put({ ...shown, shape });
          }}
        >
          {rangeShapes.map((shape) => (
            <option key={shape} value={shape}>
              {shapeWords[shape]}
            </option>
          ))}
        </Select>
      </div>
      {typeof read === "string" ? (
        <div role="alert" className={mergeClasses(shared.small, styles.wrong)}>
          {name}: {read}. Until then the range before stands.
        </div>
      ) : null}
    </fieldset>
  );
}
