/** Working the order out: the button, how far it is, and the ways to end it. */
import { Button, makeStyles, Select } from "@fluentui/react-components";
import { useId, useState } from "react";
import { cutPlanWords } from "../../core/purchasing/cutting/cutWords";
import type { OrderNews } from "../../core/purchasing/orders/orderSearch";
import { currencyIn } from "../../app/settings";
import { useSharedStyles } from "../parts/parts.styles";
import { ProgressLine } from "../parts/ProgressLine";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { usePane } from "../state/paneContext";
import { useCountdown } from "./useCountdown";
import type { OrderHandle } from "./useOrder";

const useStyles = makeStyles({
  bar: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalS },
  row: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
  },
});

/** How long the cuts of the order may be searched, all items together, in seconds. */
const allowed = [5, 20, 60, 300] as const;
const allowedWords = ["5 seconds", "20 seconds", "1 minute", "5 minutes"] as const;

export type OrderBarProps = {
  readonly handle: OrderHandle;
  /** Whose order it is, such as `3 jobs`. */
  readonly what: string;
  readonly canBegin: boolean;
};

export function OrderBar({ handle, what, canBegin }: OrderBarProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const id = useId();
  const [seconds, setSeconds] = useState<number>(20);
  const { making, made, isStale, begin } = handle;
  if (making.kind === "busy") return <Busy {...making} {...{ handle, seconds }} />;
  const isFresh = made !== null && !isStale;
  return (
    <div className={styles.bar}>
      <div className={styles.row}>
        <label htmlFor={id} className={shared.small}>
          Longest search of the cuts
        </label>
        <Select
          id={id}
          size="small"
          value={String(seconds)}
          onChange={(_, { value }) => setSeconds(Number(value))}
        >
          {allowed.map((each, index) => (
            <option key={each} value={each}>
              {allowedWords[index]}
            </option>
          ))}
        </Select>
      </div>
      <Button
        appearance={isFresh ? "secondary" : "primary"}
        size={isFresh ? "medium" : "large"}
        disabledFocusable={!canBegin}
        onClick={() => begin(seconds)}
      >
        Work out the order for {what}
        {made === null ? "" : " again"}
      </Button>
    </div>
  );
}

type BusyProps = {
  readonly news: OrderNews | null;
  readonly isEnding: boolean;
  readonly handle: OrderHandle;
  /** The time allowed. */
  readonly seconds: number;
};

function Busy({ news, isEnding, handle, seconds }: BusyProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const left = useCountdown(news?.secondsLeft ?? seconds);
  return (
    <div className={styles.bar}>
      <div role="status">
        {isEnding ? "Making the order of the best cuts so far…" : "Working out the order…"}
      </div>
      <ProgressLine name="Working out the order" done={1 - left / seconds} />
      {news === null ? null : (
        <div className={shared.small}>
          Cutting {news.plan.item}, {news.at} of {news.of}, at most {Math.ceil(left)} s more:{" "}
          {cutPlanWords(news.plan, currencyIn(settings))}
        </div>
      )}
      <div className={styles.row}>
        <Button ref={useFocusOnAppear(true)} disabledFocusable={isEnding} onClick={handle.keepBest}>
          Stop and take the best so far
        </Button>
        <Button onClick={handle.cancel}>Cancel</Button>
      </div>
    </div>
  );
}
