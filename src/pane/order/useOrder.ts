/** The order as it was last worked out, and working it out: how far it is, ending it early, splitting it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { CountedFile } from "../../app/orders/countFile";
import {
  plannedOrder,
  prepareOrder,
  type JobsOrder,
  type PreparedOrder,
} from "../../app/orders/orderJobs";
import { countToOrder } from "../../app/orders/readToOrder";
import { lengthStyleOf } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { err, ok, type Result } from "../../core/base/result";
import type { CutPlan } from "../../core/purchasing/cutting/cutProblem";
import type { OrderNews, OrderWork, WorkedOrder } from "../../core/purchasing/orders/orderSearch";
import { orderTask } from "../../core/purchasing/orders/orderTask";
import { hostFault } from "../state/hostFault";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";
import { decidedBy, othersFor, wantedJobs, type OrderChoice } from "./orderChoice";
import { today } from "../../app/today";
import type { AddedFile } from "./useOrderFiles";
import type { OwnWorkbook } from "./useOwnWorkbook";

/** The parts of an order that can be looked at and sent. */
export const orderParts = ["whole", "now", "later"] as const;
export type OrderPart = (typeof orderParts)[number];

/** An order that was worked out. */
export type MadeOrder = {
  readonly prepared: PreparedOrder;
  readonly work: OrderWork;
  readonly worked: WorkedOrder;
};

export type Making =
  | { readonly kind: "idle" }
  | { readonly kind: "busy"; readonly news: OrderNews | null; readonly isEnding: boolean }
  | { readonly kind: "failed"; readonly message: string };

export type OrderHandle = {
  readonly making: Making;
  readonly made: MadeOrder | null;
  /** Whether what it was made from has changed since. */
  readonly isStale: boolean;
  readonly begin: (cutSeconds: number) => void;
  /** Ends the search and takes the best so far. */
  readonly keepBest: () => void;
  readonly cancel: () => void;
  /** Splits the order that was made by the next day on which orders go out; `null` takes that back. */
  readonly split: (nextOrderDay: number | null) => void;
};

export type OrderFrom = {
  readonly takeOff: WorkbookTakeOff;
  readonly own: OwnWorkbook;
  readonly added: readonly AddedFile[];
  readonly choice: OrderChoice;
};

export const partOf = ({ prepared, worked }: MadeOrder, part: OrderPart): JobsOrder => {
  const { whole, inTwo } = worked;
  const plan = part === "now" ? inTwo?.now : part === "later" ? inTwo?.canWait : whole;
  return plannedOrder(prepared, plan ?? whole);
};

export function useOrder(from: OrderFrom): OrderHandle {
  const { doors } = usePane();
  const onBroken = useBroken();
  const [making, setMaking] = useState<Making>({ kind: "idle" });
  const [made, setMade] = useState<MadeOrder | null>(null);
  const [isStale, setStale] = useState(false);
  /** What it would be made from now, where that comes to the same order. */
  const [fresh, setFresh] = useState<PreparedOrder | null>(null);
  const leaving = useRef(new AbortController());
  /** Ends the search; whoever leaves ends it too. */
  const ending = useRef(new AbortController());
  const leave = useCallback(() => {
    leaving.current.abort();
    ending.current.abort();
  }, []);
  useEffect(() => leave, [leave]);

  const work = async (
    asked: OrderWork,
    left: AbortSignal,
    end: AbortSignal,
  ): Promise<WorkedOrder | null> => {
    const best = new Map<string, CutPlan>();
    const onProgress = (news: OrderNews): void => {
      best.set(news.plan.item, news.plan);
      if (!end.aborted) setMaking({ kind: "busy", news, isEnding: false });
    };
    const worked = await planned(doors.planOrder(asked, { signal: end, onProgress }));
    if (worked !== null || left.aborted || !end.aborted) return worked;
    return planned(doors.planOrder({ ...asked, given: [...best.values()] }, { signal: left }));
  };

  const make = async (
    cutSeconds: number,
    left: AbortSignal,
    end: AbortSignal,
  ): Promise<Result<MadeOrder | null, string>> => {
    const prepared = await prepare(from, left);
    if (!prepared.ok) return prepared;
    if (prepared.value === null) return ok(null);
    const task = orderTask(prepared.value.input);
    const lengths = lengthStyleOf(prepared.value.settings);
    const asked = { task, lengths, cutSeconds, given: null, nextOrderDay: null };
    const worked = await work(asked, left, end);
    return ok(worked === null ? null : { prepared: prepared.value, work: asked, worked });
  };

  const run = (act: (left: AbortSignal, end: AbortSignal) => ReturnType<typeof make>): void => {
    leave();
    leaving.current = new AbortController();
    ending.current = new AbortController();
    const { signal } = leaving.current;
    setMaking({ kind: "busy", news: null, isEnding: false });
    act(signal, ending.current.signal).then(
      (outcome) => {
        if (signal.aborted) return;
        setMaking(outcome.ok ? { kind: "idle" } : { kind: "failed", message: outcome.error });
        if (!outcome.ok || outcome.value === null) return;
        setMade(outcome.value);
        setFresh(null);
        setStale(false);
      },
      (error: unknown) => {
        if (error instanceof PlanningFailed) setMaking({ kind: "failed", message: error.message });
        else {
          const fault = hostFault(error);
          if (fault === null) onBroken(error);
          else if (!signal.aborted) setMaking({ kind: "failed", message: fault.message });
        }
      },
    );
  };

  const splitMade = async (
    before: MadeOrder,
    nextOrderDay: number | null,
    left: AbortSignal,
  ): ReturnType<typeof make> => {
    const { whole } = before.worked;
    if (nextOrderDay === null) return ok({ ...before, worked: { whole, inTwo: null } });
    const asked = { ...before.work, given: whole.cutPlans, nextOrderDay };
    const worked = await planned(doors.planOrder(asked, { signal: left }));
    return ok(worked === null ? null : { ...before, work: asked, worked });
  };

  // What the order was made from is looked at again whenever any of it changes.
  const { takeOff, own, added, choice } = from;
  useEffect(() => {
    if (made === null) return;
    const left = new AbortController();
    prepare({ takeOff, own, added, choice }, left.signal).then(
      (prepared) => {
        if (left.signal.aborted || !prepared.ok || prepared.value === null) return;
        const isSame = textOf(prepared.value) === textOf(made.prepared);
        setStale(!isSame);
        setFresh(isSame ? prepared.value : null);
      },
      // A host that does not answer now says so where the workbook is read.
      () => undefined,
    );
    return () => left.abort();
  }, [made, takeOff, own, added, choice]);

  const shown = useMemo(
    () => (made === null || fresh === null ? made : { ...made, prepared: fresh }),
    [made, fresh],
  );
  return {
    making,
    made: shown,
    isStale,
    begin: (cutSeconds) => run((left, end) => make(cutSeconds, left, end)),
    keepBest: () => {
      ending.current.abort();
      setMaking((now) => (now.kind === "busy" ? { ...now, isEnding: true } : now));
    },
    cancel: useCallback(() => {
      leave();
      setMaking({ kind: "idle" });
    }, [leave]),
    split: (nextOrderDay) => {
      if (made !== null) run((left) => splitMade(made, nextOrderDay, left));
    },
  };
}

/** What went wrong where the order is planned: told in the view, so that what was chosen stays. */
class PlanningFailed extends Error {}

const planned = (planning: Promise<WorkedOrder | null>): Promise<WorkedOrder | null> =>
  planning.catch((fault: unknown) => {
    const said = fault instanceof Error ? fault.message : String(fault);
    throw new PlanningFailed(`The order was not worked out, and nothing is changed. Why: ${said}`);
  });

/** Everything up to the planning; `null` when it was aborted. Error: in plain words. */
async function prepare(
  { takeOff, own, added, choice }: OrderFrom,
  signal: AbortSignal,
): Promise<Result<PreparedOrder | null, string>> {
  const known = [{ file: own.name, takeOff }, ...added.map(({ counted }) => counted)];
  const others = othersFor(choice, known);
  const isAsCounted = others.kitBook === undefined && others.items === undefined;
  const first = await own.read(takeOff, others, signal);
  if (!first.ok) return err(first.error.message);
  if (first.value === null) return ok(null);
  const files: CountedFile[] = [first.value];
  for (const { read, counted } of added) {
    const file = isAsCounted ? counted : await runSteps(countToOrder(read, others), { signal });
    if (file === null || signal.aborted) return ok(null);
    files.push(file);
  }
  return prepareOrder(files, {
    jobs: wantedJobs(files, choice),
    ...decidedBy(choice, files),
    today: today(),
  });
}

/** The same for orders that ask for the same, whatever the places of cells. */
const textOf = ({ input, findings }: PreparedOrder): string =>
  JSON.stringify(
    [orderTask(input), findings.map(({ finding }) => finding.message)],
    (key, value) => {
      if (key === "place") return undefined;
      return value instanceof Map || value instanceof Set ? [...value] : (value as unknown);
    },
  );
