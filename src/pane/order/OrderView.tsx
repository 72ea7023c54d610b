/** Order: several jobs, of this workbook and of others, as one order; worked out, looked at, kept. */
import { useMemo, useState } from "react";
import { keepDraft, removeDraft, sendKept } from "../../app/orders/keepOrder";
import { receiveKept, receiveKeptLines } from "../../app/orders/receiveOrder";
import type { KeptOrder } from "../../app/orders/writeBook";
import { orderDrawings } from "../../app/orders/orderDrawings";
import type { JobsOrder } from "../../app/orders/orderJobs";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { today } from "../../app/today";
import { ok, type Result } from "../../core/base/result";
import { sentOrders } from "../../core/purchasing/books/standing";
import type { WriteOptions } from "../../workbook/workbook";
import { Notice } from "../parts/Notice";
import { Part } from "../parts/Part";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { Outcome } from "../sheets/Outcome";
import { useWritingAct, type WritingFault } from "../sheets/useWritingAct";
import { usePane } from "../state/paneContext";
import type { ReceiptAct } from "../../app/orders/receiveOrder";
import { BookPart, type BookStep } from "./BookPart";
import { Decisions } from "./Decisions";
import { FilesPart } from "./FilesPart";
import { OrderActions } from "./OrderActions";
import { firstChoice, openDifferences, wantedJobs } from "./orderChoice";
import { OrderBar } from "./OrderBar";
import { OrderResult } from "./OrderResult";
import { useOrder } from "./useOrder";
import { useOrderBook } from "./useOrderBook";
import { useOrderFiles } from "./useOrderFiles";
import { useOwnWorkbook } from "./useOwnWorkbook";
import { WritingLine } from "./WritingLine";

export function OrderView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  const { workbook, state } = usePane();
  const own = useOwnWorkbook();
  const handle = useOrderFiles(own.name);
  const { added } = handle;
  const [choice, setChoice] = useState(firstChoice);
  const files = useMemo(
    () => [{ file: own.name, takeOff }, ...added.map((each) => each.counted)],
    [own.name, takeOff, added],
  );
  const differing = useMemo(() => openDifferences(files, choice), [files, choice]);
  const from = useMemo(() => ({ takeOff, own, added, choice }), [takeOff, own, added, choice]);
  const order = useOrder(from);
  const { writing, begin, cancel } = useWritingAct();
  const book = useOrderBook(writing.kind === "done");
  const isBusy = writing.kind === "busy";
  const orders = book?.books.orders ?? [];
  const sent = book === null ? [] : sentOrders(book.books);
  const jobs = wantedJobs(files, choice).length;

  const act = (
    words: (number: string) => string,
    doing: (options: WriteOptions) => Promise<Result<KeptOrder, WritingFault>>,
  ): void =>
    begin(async (options) => {
      const done = await doing(options);
      if (!done.ok) return done;
      const { number, sheets, says } = done.value;
      const changes = says.length === 0 ? words(number) : says.join(" ");
      return ok({ sheets, changes, older: [] });
    });
  const onKeep = (shown: JobsOrder, number: string | null): void =>
    act(
      (kept) => `Kept as the draft ${kept}.`,
      (options) => keepDraft(workbook, shown, { day: today(), number }, options),
    );
  const onWrite = (shown: JobsOrder): void =>
    begin(async (options) => {
      const written = await workbook.write(orderDrawings(shown), options);
      return written.ok ? ok({ sheets: written.value, changes: "", older: [] }) : written;
    });
  const onStep = (step: BookStep, number: string, who: string): void => {
    const { words, doing } = stepActs[step];
    act(words, (options) => doing(workbook, number, { day: today(), who }, options));
  };
  const onReceive = (number: string, receipt: ReceiptAct): void =>
    act(
      () => "",
      (options) => receiveKeptLines(workbook, number, receipt, options),
    );
  return (
    <div className={shared.stack}>
      <Outcome writing={writing} />
      <FilesPart {...{ files, handle, choice }} onChoice={setChoice} />
      <Decisions {...{ files, differing, choice }} onChoice={setChoice} />
      {sent.length === 0 ? null : (
        <div className={shared.small}>
          What {sent.map(({ number }) => number).join(", ")} {sent.length === 1 ? "has" : "have"}{" "}
          for these jobs is taken off: an order worked out now is for the difference.
        </div>
      )}
      {order.making.kind === "failed" ? <Notice level="stop">{order.making.message}</Notice> : null}
      <OrderBar
        handle={order}
        what={counted(jobs, "job")}
        canBegin={jobs > 0 && state.phase === "ready" && !isBusy}
      />
      <WritingLine writing={writing} onCancel={cancel} />
      {orders.length === 0 || book === null ? null : (
        <Part title="Orders kept here" sum={counted(orders.length, "order")} startsOpen>
          {() => <BookPart {...{ book, isBusy, onStep, onReceive }} />}
        </Part>
      )}
      {order.made === null ? null : (
        <OrderResult made={order.made} isStale={order.isStale} own={own.name} onSplit={order.split}>
          {(shown) => (
            <OrderActions
              order={shown}
              drafts={orders.filter((each) => each.state === "draft")}
              canAct={!order.isStale && !isBusy}
              {...{ onKeep, onWrite }}
            />
          )}
        </OrderResult>
      )}
    </div>
  );
}

type StepAct = {
  readonly words: (number: string) => string;
  readonly doing: typeof sendKept;
};

const stepActs: Readonly<Record<BookStep, StepAct>> = {
  send: { words: (number) => `${number} is marked as sent.`, doing: sendKept },
  receive: {
    words: (number) => `${number} is received.`,
    doing: receiveKept,
  },
  remove: { words: (number) => `The draft ${number} is removed.`, doing: removeDraft },
};
