/** What would become of a job: sliders and typed changes, and at once what they do to its margin. */
import { Field, Input, makeStyles, Radio, RadioGroup, Select } from "@fluentui/react-components";
import { useMemo } from "react";
import { currencyIn } from "../../app/settings";
import {
  isTyped,
  nothingTyped,
  winWays,
  type TypedWhatIf,
  type WinWay,
} from "../../app/pricing/keptWhatIfs";
import { swingsOfJob, whatIfJob } from "../../app/pricing/whatIfJobs";
import type { OwnerRange } from "../../core/pricing/chances/ownerRanges";
import type { JobPrice } from "../../core/pricing/priceJob";
import { factorsOf } from "../../core/pricing/chances/whatIf";
import { useSharedStyles } from "../parts/parts.styles";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { FactorSliders } from "./FactorSliders";
import { FindingList } from "./FindingList";
import { KeepTarget } from "./KeepTarget";
import { Tornado } from "./Tornado";
import { readWhatIf } from "./typedWhatIf";
import { WhatIfTable } from "./WhatIfTable";

const useStyles = makeStyles({
  answer: {
    padding: `${tokens.spacingVerticalXS} 0`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
    // Stays in sight while the sliders below it are moved, where there is room for both.
    "@media (min-height: 640px)": { position: "sticky", top: "-12px", zIndex: 1 },
  },
  win: { display: "grid", gridTemplateColumns: "1fr 120px", gap: tokens.spacingHorizontalS },
  winField: { minWidth: 0 },
  input: { minWidth: 0, width: "100%" },
  typed: { minWidth: 0, width: "100%", textAlign: "right" },
});

const winWords: Readonly<Record<WinWay, string>> = {
  price: "as a price",
  markup: "by markup (profit / cost)",
  margin: "by margin (profit / price)",
};

export type WhatIfPartProps = {
  readonly job: JobPrice;
  readonly ranges: readonly OwnerRange[];
  readonly typed: TypedWhatIf;
  readonly onType: (typed: TypedWhatIf) => void;
};

export function WhatIfPart({ job, ranges, typed, onType }: WhatIfPartProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const currency = currencyIn(settings);
  const { read, answer, effects } = useMemo(() => {
    const asked = readWhatIf(typed, job, currency);
    return {
      read: asked,
      answer: whatIfJob(job, asked.whatIf),
      effects: swingsOfJob(job, ranges, asked.whatIf),
    };
  }, [typed, job, ranges, currency]);
  return (
    <>
      <div className={styles.answer} role="group" aria-label="What it comes to">
        <WhatIfTable before={job.rollUp} after={answer.rollUp} currency={currency} />
      </div>
      <KeepTarget job={job} answer={answer} currency={currency} />
      <h3 className={shared.subheading}>Changes of the estimate</h3>
      <FactorSliders
        factors={factorsOf(job.input)}
        changes={typed.changes}
        faults={read.faults}
        onChange={(changes) => onType({ ...typed, changes })}
      />
      <RadioGroup
        aria-label="The price"
        value={typed.price}
        onChange={(_, { value }) =>
          onType({ ...typed, price: value === "follows" ? "follows" : "held" })
        }
      >
        <Radio value="held" label="The price stays as bid" />
        <Radio value="follows" label="The price is worked out again from the cost" />
      </RadioGroup>
      <div className={styles.win}>
        <Field label="Price that would win it" className={styles.winField}>
          <Select
            className={styles.input}
            value={typed.winWay}
            onChange={(_, { value }) => {
              const winWay = winWays.find((way) => way === value);
              if (winWay !== undefined) onType({ ...typed, winWay });
            }}
          >
            {winWays.map((way) => (
              <option key={way} value={way}>
                {winWords[way]}
              </option>
            ))}
          </Select>
        </Field>
        <Field label={typed.winWay === "price" ? "Amount" : "Percent"} className={styles.winField}>
          <Input
            className={styles.input}
            input={{ className: styles.typed }}
            inputMode="decimal"
            placeholder="none"
            value={typed.win}
            onChange={(_, { value }) => onType({ ...typed, win: value })}
          />
        </Field>
      </div>
      <FindingList findings={read.winFindings} />
      {isTyped(typed) ? (
        <div className={shared.small}>
          What you typed is kept in the workbook. The estimate, its sheets and the quotation do not
          go by it.
        </div>
      ) : null}
      <div>
        <SmallButton onClick={() => onType(nothingTyped)}>Start over</SmallButton>
      </div>
      <Tornado effects={effects} margin={answer.rollUp.margin} target={job.target} />
    </>
  );
}
