/** The orders that this workbook keeps: drafts, sent, received; and the steps from one to the next. */
import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import { useState } from "react";
import type { OrderBook } from "../../app/orders/orderBook";
import { dateText } from "../../core/base/date";
import { currencyOf, usDollar } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { lineStands, standingWord } from "../../core/purchasing/books/receipts";
import { Notice } from "../parts/Notice";
import { counted } from "../parts/quantities";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import type { ReceiptAct } from "../../app/orders/receiveOrder";
import { useOrderStyles } from "./order.styles";
import { ReceiptForm } from "./ReceiptForm";

const useStyles = makeStyles({
  actions: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
});

/** What can be done with an order that is kept. */
export const bookSteps = ["send", "receive", "remove"] as const;
export type BookStep = (typeof bookSteps)[number];

const stepLabels: Readonly<Record<BookStep, string>> = {
  send: "Mark as sent",
  receive: "Mark as received",
  remove: "Remove the draft",
};

/** What there is to know before a step that cannot be taken back. */
const stepWarnings: Readonly<Record<BookStep, string>> = {
  send: "From then on it is frozen, and what it takes off the shelf is taken. What is needed later is another order.",
  receive:
    "All that is to come has come: what was bought for the jobs is theirs, and what is left over is stock.",
  remove: "Its sheets will say so, and its number is not given again.",
};

const stepsOf: Readonly<Record<OrderRecord["state"], readonly BookStep[]>> = {
  draft: ["send", "remove"],
  sent: ["receive"],
  received: [],
};

export type BookPartProps = {
  readonly book: OrderBook;
  readonly isBusy: boolean;
  /** `who` is a name or initials, or the empty text. */
  readonly onStep: (step: BookStep, number: string, who: string) => void;
  readonly onReceive: (number: string, receipt: ReceiptAct) => void;
};

export function BookPart({ book, isBusy, onStep, onReceive }: BookPartProps) {
  const shared = useSharedStyles();
  const [who, setWho] = useState("");
  return (
    <div className={shared.stack}>
      <Field label="Who says so (name or initials)">
        <Input value={who} onChange={(_, { value }) => setWho(value)} />
      </Field>
      <ul className={shared.list}>
        {book.books.orders.toReversed().map((order) => (
          <Kept
            key={order.number}
            {...{ order, isBusy }}
            onStep={(step) => onStep(step, order.number, who.trim())}
            onReceive={(receipt) => onReceive(order.number, { ...receipt, who: who.trim() })}
          />
        ))}
      </ul>
    </div>
  );
}

type KeptProps = {
  readonly order: OrderRecord;
  readonly isBusy: boolean;
  readonly onStep: (step: BookStep) => void;
  readonly onReceive: (receipt: Omit<ReceiptAct, "who">) => void;
};

function Kept({ order, isBusy, onStep, onReceive }: KeptProps) {
  const styles = useStyles();
  const looks = useOrderStyles();
  const shared = useSharedStyles();
  const [asked, setAsked] = useState<BookStep | null>(null);
  const [isReceiving, setReceiving] = useState(false);
  const { number, state, jobs, total, currency } = order;
  return (
    <li className={looks.item} aria-label={number}>
      <div className={looks.row}>
        <span className={shared.strong}>{number}</span>
        <span className={shared.number}>{moneyText(total, currencyOf(currency) ?? usDollar)}</span>
        <span className={shared.small}>{jobs.map(({ job }) => job).join("; ")}</span>
        <span className={shared.small}>{stateText(order)}</span>
      </div>
      {isReceiving ? (
        <ReceiptForm
          {...{ order, isBusy }}
          onReceive={(receipt) => {
            setReceiving(false);
            onReceive(receipt);
          }}
          onLeave={() => setReceiving(false)}
        />
      ) : asked === null || !stepsOf[state].includes(asked) ? (
        <div className={styles.actions}>
          {stepsOf[state].map((step) => (
            <Button
              key={step}
              size="small"
              aria-label={`${stepLabels[step]}: ${number}`}
              disabledFocusable={isBusy}
              onClick={() => setAsked(step)}
            >
              {stepLabels[step]}…
            </Button>
          ))}
          {state === "draft" ? null : (
            <Button
              size="small"
              aria-label={`${state === "sent" ? "Some has come" : "More has come"}: ${number}`}
              disabledFocusable={isBusy}
              onClick={() => setReceiving(true)}
            >
              {state === "sent" ? "Some has come…" : "More has come…"}
            </Button>
          )}
        </div>
      ) : (
        <Notice
          level="note"
          quiet
          actions={
            <Sure
              label={`${stepLabels[asked]}: ${number}`}
              onYes={() => {
                setAsked(null);
                onStep(asked);
              }}
              onNo={() => setAsked(null)}
            />
          }
        >
          {stepWarnings[asked]}
        </Notice>
      )}
    </li>
  );
}

type SureProps = {
  readonly label: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
};

/** Takes the focus of the button that asked, which is gone. */
function Sure({ label, onYes, onNo }: SureProps) {
  return (
    <>
      <Button size="small" appearance="primary" ref={useFocusOnAppear(true)} onClick={onYes}>
        {label}
      </Button>
      <Button size="small" onClick={onNo}>
        Not yet
      </Button>
    </>
  );
}

/** `sent 2026-11-29`; `part received 2026-12-01, 3 of 12 lines to come`. */
function stateText(order: OrderRecord): string {
  const { state, made, sent, received, receipts } = order;
  const last = receipts.at(-1)?.day ?? sent;
  const day = state === "received" ? received : state === "sent" ? last : made;
  const stands = lineStands(order);
  const open = stands.filter((line) => line.open > 0).length;
  const toCome =
    state === "sent" && receipts.length > 0
      ? `, ${open} of ${counted(stands.length, "line")} to come`
      : "";
  const word = standingWord(order);
  return day === null ? word : `${word} ${dateText(day)}${toCome}`;
}
