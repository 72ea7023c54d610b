/** What has come of a sent order, line by line; the rest stays open, or will not come. */
import { Button, Checkbox, Field, Input, makeStyles } from "@fluentui/react-components";
import { useState } from "react";
import { lineName, piecesWords } from "../../app/orders/orderLineNames";
import type { ReceiptAct } from "../../app/orders/receiveOrder";
import { today } from "../../app/today";
import { dateText } from "../../core/base/date";
import type { OrderedPacks, OrderRecord } from "../../core/purchasing/books/orderRecord";
import { lineStands } from "../../core/purchasing/books/receipts";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import {
  allToCome,
  nothingTyped,
  readReceipt,
  type TypedLine,
  type TypedReceipt,
} from "./newReceipt";
import { useOrderStyles } from "./order.styles";

const useStyles = makeStyles({
  actions: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
  came: { width: "88px", alignSelf: "start" },
  number: { textAlign: "right" },
});

export type ReceiptFormProps = {
  readonly order: OrderRecord;
  readonly isBusy: boolean;
  /** `isSure` only after the person confirmed that more came. */
  readonly onReceive: (receipt: Omit<ReceiptAct, "who">) => void;
  readonly onLeave: () => void;
};

export function ReceiptForm({ order, isBusy, onReceive, onLeave }: ReceiptFormProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const [typed, setTyped] = useState<TypedReceipt>({
    day: dateText(today()),
    reason: "",
    lines: {},
  });
  const [showsAll, setShowsAll] = useState(order.state === "received");
  const [isAsked, setAsked] = useState(false);
  const focus = useFocusOnAppear(true);
  const change = (part: Partial<TypedReceipt>): void => {
    setAsked(false);
    setTyped({ ...typed, ...part });
  };
  const stands = lineStands(order);
  const shown = order.packs.flatMap((packs, line) => {
    const open = stands[line]?.open ?? 0;
    return open > 0 || showsAll ? [{ packs, line, open }] : [];
  });
  const read = readReceipt(order, typed);
  const isAnythingTyped = Object.keys(typed.lines).length > 0;
  const take = (isSure: boolean): void => {
    if (read.ok) onReceive({ ...read.value.receipt, isSure });
  };
  return (
    <form
      className={shared.stack}
      aria-label={`What has come of ${order.number}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (!read.ok || isBusy) return;
        if (read.value.over.length > 0) setAsked(true);
        else take(false);
      }}
    >
      <Field label="Day">
        <Input
          ref={focus}
          type="date"
          value={typed.day}
          onChange={(_, { value }) => change({ day: value })}
        />
      </Field>
      <div className={shared.small}>
        Type packs, as 3; or pieces, as 37 pcs, where packs are not full. What is left blank stays
        open.
      </div>
      <div className={styles.actions}>
        <Button size="small" onClick={() => change({ lines: allToCome(order) })}>
          Fill in all that is to come
        </Button>
        {order.packs.length === shown.length && !showsAll ? null : (
          <Checkbox
            label="Show complete lines too"
            checked={showsAll}
            onChange={(_, { checked }) => setShowsAll(checked === true)}
          />
        )}
      </div>
      <ul className={shared.list}>
        {shown.map(({ packs, line, open }) => (
          <ReceiptLine
            key={line}
            {...{ packs, open }}
            typed={typed.lines[line] ?? nothingTyped}
            onChange={(now) => change({ lines: { ...typed.lines, [line]: now } })}
          />
        ))}
      </ul>
      {Object.values(typed.lines).some(({ isClosed }) => isClosed) ? (
        <Field label="Why the rest will not come" required>
          <Input value={typed.reason} onChange={(_, { value }) => change({ reason: value })} />
        </Field>
      ) : null}
      {read.ok || !isAnythingTyped ? null : <div className={shared.small}>{read.error}</div>}
      {isAsked && read.ok ? (
        <MoreCame over={read.value.over} onYes={() => take(true)} onNo={() => setAsked(false)} />
      ) : (
        <div className={styles.actions}>
          <Button
            type="submit"
            size="small"
            appearance="primary"
            disabledFocusable={!read.ok || isBusy}
          >
            Take this in: {order.number}
          </Button>
          <Button size="small" onClick={onLeave}>
            Not yet
          </Button>
        </div>
      )}
    </form>
  );
}

type MoreCameProps = {
  readonly over: readonly string[];
  readonly onYes: () => void;
  readonly onNo: () => void;
};

/** Takes the focus of the button that asked, which is gone. */
function MoreCame({ over, onYes, onNo }: MoreCameProps) {
  return (
    <Notice
      level="warn"
      actions={
        <>
          <Button size="small" appearance="primary" ref={useFocusOnAppear(true)} onClick={onYes}>
            It is right: what is beyond is stock
          </Button>
          <Button size="small" onClick={onNo}>
            Look again
          </Button>
        </>
      }
    >
      More came than is to come: {over.join("; ")}.
    </Notice>
  );
}

type ReceiptLineProps = {
  readonly packs: OrderedPacks;
  readonly open: number;
  readonly typed: TypedLine;
  readonly onChange: (typed: TypedLine) => void;
};

function ReceiptLine({ packs, open, typed, onChange }: ReceiptLineProps) {
  const styles = useStyles();
  const looks = useOrderStyles();
  const shared = useSharedStyles();
  const name = lineName(packs);
  return (
    <li className={looks.item}>
      <div className={looks.row}>
        <span>{name}</span>
        <Input
          size="small"
          className={styles.came}
          input={{ className: styles.number }}
          aria-label={`Came of ${name}`}
          value={typed.came}
          onChange={(_, { value }) => onChange({ ...typed, came: value })}
        />
        <span className={shared.small}>
          {open === 0 ? "complete" : `${piecesWords(open, packs)} to come`}
        </span>
        {open === 0 ? null : (
          <Checkbox
            label="no more"
            aria-label={`No more of ${name} will come`}
            checked={typed.isClosed}
            onChange={(_, { checked }) => onChange({ ...typed, isClosed: checked === true })}
          />
        )}
      </div>
    </li>
  );
}
