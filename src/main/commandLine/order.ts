/**
 * `npm run order`: one order for the jobs of several workbooks, without a screen.
 *
 * Exit status: 0 everything is on it, 1 something is not, 2 unusable input (the message on stderr).
 */
import { basename } from "node:path";
import { err, ok, type Result } from "../../core/base/result";
import { cutPlan } from "../../core/purchasing/cutting/cutPlan";
import type { Solver } from "../../core/purchasing/cutting/solver";
import type { PlanCuts } from "../../core/purchasing/orderCuts";
import { readItemTable } from "../../tables/itemTable";
import { readKitBook } from "../../tables/kitBookTable";
import { countFile, type CountedFile } from "../../app/countFile";
import type { OtherInputs } from "../../app/inputs";
import { orderDrawings } from "../../app/orderDrawings";
import { orderJobs } from "../../app/orderJobs";
import { loadHighsSolver } from "../../adapters/highs/highsSolver";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { answer, type Answer } from "./answer";
import { blocksOf, readWorkbookFile, writeFileWhole } from "./files";
import { eachItsOwn, readOrderArguments, type OrderArguments } from "./orderArguments";
import { orderJson } from "./orderJson";
import { orderText } from "./orderText";

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readOrderArguments(words);
  if (!read.ok) return read;
  const wanted = read.value;
  const others = await namedInputs(wanted);
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
  const order = orderJobs(files, {
    jobs: wanted.jobs,
    kitBooksDecided: wanted.kitBook !== null,
    itemsDecided: wanted.items !== null,
    today: wanted.today,
    planCuts: cutPlanner(await loadHighsSolver({ wholeSeconds: wanted.seconds }), wanted.seconds),
  });
  if (!order.ok) return order;
  const [first] = workbooks;
  if (wanted.out !== null && first !== undefined) {
    const written = await first.write(orderDrawings(order.value));
    if (!written.ok) return err(written.error.message);
    const saved = writeFileWhole(wanted.out, first.bytes());
    if (!saved.ok) return saved;
  }
  const text = wanted.json
    ? JSON.stringify(orderJson(order.value), null, 2)
    : orderText(order.value);
  return ok({ text, complete: order.value.complete });
}

/** A file's name, or its whole path where two have the same name. */
const nameOf = (path: string, paths: readonly string[]): string =>
  paths.filter((other) => basename(other) === basename(path)).length > 1 ? path : basename(path);

/** What is really cut is worth the solver and the time; what each job would cut alone is not. */
function cutPlanner(solver: Solver | null, seconds: number): PlanCuts {
  return (problem, purpose) => {
    const end = performance.now() + seconds * 1000;
    return cutPlan(problem, {
      solver: purpose === "order" ? solver : null,
      shouldStop: () => performance.now() > end,
    });
  };
}

/** The kit book and items that hold for all workbooks, where the person named a file. */
async function namedInputs({
  kitBook,
  items,
}: OrderArguments): Promise<Result<OtherInputs, string>> {
  let others: OtherInputs = {};
  if (kitBook !== null && kitBook !== eachItsOwn) {
    const blocks = await blocksIn(kitBook);
    if (!blocks.ok) return blocks;
    const book = readKitBook(blocks.value);
    if (book === null) return err(`${kitBook}: no kit book was found in it.`);
    others = { kitBook: book };
  }
  if (items !== null && items !== eachItsOwn) {
    const blocks = await blocksIn(items);
    if (!blocks.ok) return blocks;
    const rows = blocks.value.map(readItemTable).find((table) => table !== null);
    if (rows === undefined) return err(`${items}: no items table was found in it.`);
    others = { ...others, items: rows };
  }
  return ok(others);
}

async function blocksIn(path: string): ReturnType<typeof blocksOf> {
  const workbook = readWorkbookFile(path);
  return workbook.ok ? blocksOf(workbook.value) : workbook;
}

answer(await run(process.argv.slice(2)));
