/**
 * `npm run order`: one order for the jobs of several workbooks, and what is done with kept orders,
 * without a screen.
 *
 * Exit status: 0 everything is on it, 1 something is not, 2 unusable input (the message on stderr).
 */
import { basename } from "node:path";
import { err, ok, type Result } from "../../core/base/result";
import { cutPlan } from "../../core/purchasing/cutting/cutPlan";
import type { Solver } from "../../core/purchasing/cutting/solver";
import type { PlanCuts } from "../../core/purchasing/orders/orderCuts";
import type { OrderPlan } from "../../core/purchasing/orders/orderPlan";
import { searchOrder } from "../../core/purchasing/orders/orderSearch";
import { orderTask } from "../../core/purchasing/orders/orderTask";
import { timeAllowance } from "../../core/purchasing/orders/timeAllowance";
import { countFile, type CountedFile } from "../../app/orders/countFile";
import { orderDrawings } from "../../app/orders/orderDrawings";
import { keepDraft } from "../../app/orders/keepOrder";
import { orderInParts } from "../../app/orders/orderInParts";
import {
  plannedOrder,
  prepareOrder,
  type JobsOrder,
  type PreparedOrder,
} from "../../app/orders/orderJobs";
import { lengthStyleOf } from "../../app/settings";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { answer, type Answer } from "./answer";
import { runBookAct } from "./bookActs";
import { readWorkbookFile, writeFileWhole } from "./files";
import { otherInputs } from "./namedFiles";
import { eachItsOwn, readOrderArguments, type OrderArguments } from "./orderArguments";
import { orderJson } from "./orderJson";
import { orderText } from "./orderText";

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readOrderArguments(words);
  if (!read.ok) return read;
  return read.value.kind === "book" ? runBookAct(read.value) : workOut(read.value);
}

async function workOut(wanted: OrderArguments): Promise<Result<Answer, string>> {
  const named = (path: string | null): string | null => (path === eachItsOwn ? null : path);
  const others = await otherInputs({ kitBook: named(wanted.kitBook), items: named(wanted.items) });
  if (!others.ok) return others;
  const workbooks: FileWorkbook[] = [];
  const files: CountedFile[] = [];
  for (const path of wanted.paths) {
    const workbook = readWorkbookFile(path);
    if (!workbook.ok) return workbook;
    const file = nameOf(path, wanted.paths);
    const counted = await countFile({ file, workbook: workbook.value }, wanted.today, others.value);
    if (!counted.ok) return err(`${path}: ${counted.error.message}`);
    workbooks.push(workbook.value);
    files.push(counted.value);
  }
  if (files.every(({ takeOff }) => takeOff.inputs.schedules.length === 0)) {
    const stops = files.flatMap(({ takeOff }) => takeOff.findings);
    const messages = stops.filter(({ level }) => level === "stop").map(({ message }) => message);
    return err([...new Set(messages)].join("\n"));
  }
  const prepared = prepareOrder(files, {
    jobs: wanted.jobs,
    kitBooksDecided: wanted.kitBook !== null,
    itemsDecided: wanted.items !== null,
    today: wanted.today,
  });
  if (!prepared.ok) return prepared;
  const { part, nextOrderDay } = wanted;
  const solver = await solverIfAny(wanted.seconds);
  // The whole is always worked out: it says what can wait. Its parts are cut anew.
  const seconds = part === null ? wanted.seconds : wanted.seconds / 2;
  const whole = plannedOrder(prepared.value, wholeOrder(prepared.value, solver, seconds));
  const planCuts = cutPlanner(solver, seconds, 2 * whole.plan.cutPlans.length);
  const parts = part === null ? null : orderInParts(whole, nextOrderDay, planCuts);
  const order = parts === null ? whole : part === "now" ? parts.now : parts.canWait;
  const split =
    parts === null || part === null ? null : { part, nextOrderDay, costsMore: parts.costsMore };
  const kept = await write(workbooks[0], order, wanted);
  if (!kept.ok) return kept;
  const said = { split, number: kept.value };
  return ok({
    text: wanted.json ? JSON.stringify(orderJson(order, said), null, 2) : orderText(order, said),
    complete: order.complete,
  });
}

/** Writes the file that was asked for. The number under which the order was kept, if it was. */
async function write(
  workbook: FileWorkbook | undefined,
  order: JobsOrder,
  { out, keep, number, today }: OrderArguments,
): Promise<Result<string | null, string>> {
  if (out === null || workbook === undefined) return ok(null);
  const kept = keep ? await keepDraft(workbook, order, { day: today, number }) : null;
  if (kept?.ok === false) return err(kept.error.message);
  if (kept === null) {
    const written = await workbook.write(orderDrawings(order));
    if (!written.ok) return err(written.error.message);
  }
  const saved = writeFileWhole(out, workbook.bytes());
  return saved.ok ? ok(kept === null ? null : kept.value.number) : saved;
}

/** `null` where the solver is not installed or may not run: the cut plan does without it. */
async function solverIfAny(seconds: number): Promise<Solver | null> {
  try {
    const { loadHighsSolver } = await import("../../adapters/highs/highsSolver");
    return await loadHighsSolver({ wholeSeconds: seconds });
  } catch {
    return null;
  }
}

/** A file's name, or its whole path where two have the same name. */
const nameOf = (path: string, paths: readonly string[]): string =>
  paths.filter((other) => basename(other) === basename(path)).length > 1 ? path : basename(path);

function wholeOrder(
  { input, settings }: PreparedOrder,
  solver: Solver | null,
  cutSeconds: number,
): OrderPlan {
  const lengths = lengthStyleOf(settings);
  const work = { task: orderTask(input), lengths, cutSeconds, given: null, nextOrderDay: null };
  const steps = searchOrder(work, { solver, now: () => performance.now() });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value.whole;
  }
}

/** What is really cut is worth the solver and the time; what each job would cut alone is not. */
function cutPlanner(solver: Solver | null, seconds: number, searches: number): PlanCuts {
  const allowance = timeAllowance(seconds, () => performance.now());
  let waiting = searches;
  return (problem, purpose) => {
    if (purpose === "alone") {
      return cutPlan(problem, { solver: null, shouldStop: allowance.isOver });
    }
    const shouldStop = allowance.searchPart(waiting);
    waiting -= 1;
    return cutPlan(problem, { solver, shouldStop });
  };
}

answer(await run(process.argv.slice(2)));
