/** `npm run order -- send|receive|remove|list`: what is done with kept orders. */
import { err, ok, type Result } from "../../core/base/result";
import { pieces } from "../../core/base/units";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import type { ReceivedLine } from "../../core/purchasing/books/receipt";
import { lineStands, standingWord } from "../../core/purchasing/books/receipts";
import { removeDraft, sendKept } from "../../app/orders/keepOrder";
import { readKeptOrders } from "../../app/orders/orderBook";
import { namedLine, readCame } from "../../app/orders/orderLineNames";
import { moreThanOrdered, receiveKept, receiveKeptLines } from "../../app/orders/receiveOrder";
import type { BookFault, KeptOrder } from "../../app/orders/writeBook";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import type { Answer } from "./answer";
import { listBook } from "./bookList";
import { readWorkbookFile, writeFileWhole } from "./files";
import type { BookArguments } from "./orderArguments";

export async function runBookAct(wanted: BookArguments): Promise<Result<Answer, string>> {
  const opened = readWorkbookFile(wanted.path);
  if (!opened.ok) return opened;
  const workbook = opened.value;
  if (wanted.act === "list") return listBook(workbook, wanted);
  const { number, today, who, out } = wanted;
  const act = { day: today, who };
  const done =
    wanted.act === "send"
      ? await sendKept(workbook, number, act)
      : wanted.act === "receive"
        ? await received(workbook, wanted)
        : await removeDraft(workbook, number, act);
  if (!done.ok) {
    const { code, message } = done.error;
    return err(code === moreThanOrdered ? `${message} --more confirms it.` : message);
  }
  const saved = writeFileWhole(out ?? wanted.path, workbook.bytes());
  if (!saved.ok) return saved;
  const { says } = done.value;
  const state = await stateAfter(workbook, number);
  const sheets = done.value.sheets.map(({ name, keptAs }) =>
    keptAs === null ? name : `${name} (what was typed over is kept as ${keptAs})`,
  );
  return ok({
    text: wanted.json
      ? JSON.stringify({ number, state, says, sheets: done.value.sheets }, null, 2)
      : [
          ...(says.length === 0 ? [`Order ${number} is ${state}.`] : says),
          `${out ?? wanted.path} has ${sheets.join(", ")}.`,
        ].join("\n"),
    complete: true,
  });
}

/** Its state in a word; one that is not there any more was removed. */
async function stateAfter(workbook: FileWorkbook, number: string): Promise<string> {
  const orders = await readKeptOrders(workbook);
  const order = orders.ok ? orders.value.find((each) => each.number === number) : undefined;
  return order === undefined ? "removed" : standingWord(order);
}

/** All that is to come, or what the words name. */
async function received(
  workbook: FileWorkbook,
  { number, today, who, came, closed, why, more }: BookArguments,
): Promise<Result<KeptOrder, BookFault>> {
  const act = { day: today, who };
  if (came.length + closed.length === 0) return receiveKept(workbook, number, act);
  const orders = await readKeptOrders(workbook);
  if (!orders.ok) return orders;
  const order = orders.value.find((each) => each.number === number);
  const lines = order === undefined ? ok([]) : namedLines(order, came, closed);
  if (!lines.ok) return err({ code: "line-unknown", message: lines.error });
  const receipt = { ...act, lines: lines.value, reason: why, isSure: more };
  return receiveKeptLines(workbook, number, receipt);
}

/** Error: a line that there is not, or a number that is none. */
function namedLines(
  order: OrderRecord,
  came: readonly string[],
  closed: readonly string[],
): Result<readonly ReceivedLine[], string> {
  const lines: ReceivedLine[] = [];
  for (const words of came) {
    const at = words.lastIndexOf("=");
    const line =
      at < 0
        ? err(`--line is LINE=COUNT, and not ${words}.`)
        : namedLine(order, words.slice(0, at));
    if (!line.ok) return line;
    const packs = order.packs[line.value];
    const count = packs === undefined ? null : readCame(words.slice(at + 1), packs);
    if (count === null) return err(`“${words.slice(at + 1)}” is no number of packs or pieces.`);
    lines.push({ line: line.value, came: count, isClosed: false });
  }
  const open = lineStands(order).flatMap(({ open: count }, line) => (count > 0 ? [line] : []));
  for (const words of closed) {
    const named = words === "all" ? ok(open) : one(namedLine(order, words));
    if (!named.ok) return named;
    lines.push(...named.value.map((line) => ({ line, came: pieces(0), isClosed: true })));
  }
  return ok(lines);
}

const one = (line: Result<number, string>): Result<readonly number[], string> =>
  line.ok ? ok([line.value]) : line;
