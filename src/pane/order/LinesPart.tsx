/** Every item and size of the order; each opens to the steps from the count to the packs. */
import { mergeClasses } from "@fluentui/react-components";
import type { JobsOrder } from "../../app/orders/orderJobs";
import type { OrderLine } from "../../core/purchasing/orders/orderPlan";
import { moreWords, stepWords } from "../../core/purchasing/needWords";
import { sizedKey } from "../../core/purchasing/sizedItem";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";
import { DeadlineMark } from "./DeadlineMark";
import { useOrderStyles } from "./order.styles";
import type { OrderText } from "./orderText";
import { Sums } from "./Sums";

type LinesPartProps = { readonly order: JobsOrder; readonly text: OrderText };

const firstLines = 40;

export function LinesPart({ order, text }: LinesPartProps) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(order.plan.lines, firstLines, 100);
  return (
    <>
      <ul className={shared.list}>
        {shown.map((line) => (
          <li key={`${line.kind} ${sizedKey(line)}`} className={styles.item}>
            <Disclosure label={<LineHead line={line} text={text} />}>
              {() => <LineSteps line={line} text={text} />}
            </Disclosure>
          </li>
        ))}
      </ul>
      {left === 0 ? null : (
        <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
      )}
    </>
  );
}

type LineProps = { readonly line: OrderLine; readonly text: OrderText };

function LineHead({ line, text }: LineProps) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  const words = text.describe(line.item);
  const size = text.size(line);
  return (
    <span className={styles.row}>
      <span>{words}</span>
      <span className={mergeClasses(shared.number, shared.strong)}>{buyWords(line)}</span>
      <span className={shared.small}>
        {[size, words === line.item ? "" : line.item].filter((each) => each !== "").join(" · ")}
      </span>
      <span className={mergeClasses(shared.small, shared.number)}>
        {line.kind === "cut" ? "see its bars" : text.money(line.cost)}
      </span>
    </span>
  );
}

function buyWords({ kind, buy }: OrderLine): string {
  if (kind === "bar") return counted(buy, "bar");
  return kind === "cut" ? `cut ${countText(buy)}` : `buy ${countText(buy)} pcs`;
}

/** From the count, through spares, shelf and orders, to the packs and whose they are. */
function LineSteps({ line, text }: LineProps) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  const { need, packs, shares, deadline } = line;
  const more = moreWords(line);
  return (
    <div className={shared.stack}>
      {need === null ? (
        <div>The cut list asks for {counted(line.buy, "bar")} of this length.</div>
      ) : (
        <ul className={shared.list} aria-label="From the count to what is bought">
          {need.steps.map((step, index) => (
            <li key={index} className={styles.row}>
              <span>
                {step.job ?? "All jobs"}: {stepWords[step.kind]}
              </span>
              <span className={shared.number}>{signed(step.pieces)} pcs</span>
              <span className={shared.small}>{step.because}</span>
            </li>
          ))}
          <li className={mergeClasses(styles.row, styles.total)}>
            <span>{line.kind === "cut" ? "To cut" : "To buy"}</span>
            <span className={shared.number}>{countText(need.buy)} pcs</span>
          </li>
        </ul>
      )}
      {packs.length === 0 ? null : (
        <ul className={shared.list} aria-label="Packs">
          {packs.map(({ offer, count, cost, deadline: packsDue }, index) => (
            <li key={index} className={styles.row}>
              <span>
                {counted(count, "pack")} of {countText(offer.packSize)} at {text.money(offer.price)}{" "}
                from {offer.supplier}
              </span>
              <span className={shared.number}>{text.money(cost)}</span>
              <DeadlineMark deadline={packsDue} />
            </li>
          ))}
        </ul>
      )}
      {more === "" ? null : (
        <div className={shared.small}>
          {more}
          {line.more === null ? "" : ` (${text.money(line.more.saves)} less)`}.
        </div>
      )}
      {shares.length === 0 ? null : (
        <Sums
          sums={shares.map(({ job, cost }) => ({ name: job ?? "Stock", value: text.money(cost) }))}
        />
      )}
      {line.kind === "cut" && deadline === null ? (
        <div className={shared.small}>Cut from bars: their cost stands with the bars.</div>
      ) : null}
    </div>
  );
}

/** `+20`, `-5` with a real minus. */
const signed = (pieces: number): string =>
  pieces < 0 ? `−${countText(-pieces)}` : `+${countText(pieces)}`;
