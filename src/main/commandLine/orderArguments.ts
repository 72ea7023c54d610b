/** The words after `npm run order --`. */
import { readDate } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { today as todayNow } from "../../app/today";
import { readWords, wrongWords, type Words } from "./words";

/** An order that is worked out. */
export type OrderArguments = {
  readonly kind: "work out";
  readonly paths: readonly string[];
  readonly jobs: readonly string[] | null;
  /** A path, or `each`; `null` where the person has not decided. */
  readonly kitBook: string | null;
  readonly items: string | null;
  /** A date serial. */
  readonly today: number;
  /** The longest that the cut plans may be searched for, all together. */
  readonly seconds: number;
  readonly json: boolean;
  readonly out: string | null;
  /** Whether it is kept in the order book, in the place of a draft where that is named. */
  readonly keep: boolean;
  readonly number: string | null;
  /** Which part of it, and the day on which the other can go out. */
  readonly part: "now" | "can wait" | null;
  readonly nextOrderDay: number;
};

export const bookActs = ["send", "receive", "remove", "list"] as const;
type ActName = (typeof bookActs)[number];

/** What is done with a kept order. */
export type BookArguments = {
  readonly kind: "book";
  readonly act: ActName;
  readonly path: string;
  /** The empty text for a list. */
  readonly number: string;
  /** What came, `LINE=COUNT`, and lines that are closed; with neither, all has come. */
  readonly came: readonly string[];
  readonly closed: readonly string[];
  readonly why: string;
  /** Whether more than was to come is right. */
  readonly more: boolean;
  readonly today: number;
  readonly who: string;
  readonly json: boolean;
  readonly out: string | null;
};

/** In place of a file: every workbook by its own. */
export const eachItsOwn = "each";

const usage = [
  "Use: npm run --silent order -- A.xlsx B.xlsx … [options]",
  "     npm run --silent order -- send|receive|remove NUMBER A.xlsx --out A.xlsx [--who NAME]",
  "     npm run --silent order -- list A.xlsx [--json]",
  "",
  "  A.xlsx …             workbooks with schedules; sheets of offers, stock on hand, job dates, suppliers",
  "                       and order rules are read from the first workbook that has them",
  "  --jobs NAME          a job to order for, as NAME or FILE:NAME; may be given several times (all)",
  "  --kit-book FILE|each where kit books differ: count all by that one, or each by its own",
  "  --items FILE|each    where items differ: that table for all, or each its own and a code is one item",
  "  --today YYYY-MM-DD   the day of the order (today)",
  "  --seconds N          the longest search for the cut plans, all together (20)",
  "  --now                only what must go out before the next order day",
  "  --can-wait           only what may still go out on the next order day",
  "  --next-order DAY     that day, YYYY-MM-DD (in a week)",
  "  --keep               keep it as a draft in the order book of the first workbook; needs --out",
  "  --number NUMBER      with --keep: in the place of that draft (a new number of the firm's pattern)",
  "  --out FILE.xlsx      write the sheets into a copy of the first workbook, or into it where it is named",
  "  --who NAME           who says that it is sent or received",
  "  --line LINE=COUNT    with receive: what came of one line, in packs, or in pieces as in 4=37pcs;",
  "                       a line by its number in the list, or by item, size and supplier",
  "  --close LINE         with receive: the rest of that line will not come (all: of every line); with --why",
  "  --why WORDS          the reason",
  "  --more               with receive: more than was to come is right, and stock",
  "  --json               print one JSON object instead of text",
  "",
  "  send                 freezes a draft; what it takes off the shelf is taken",
  "  receive              all of a sent order that is to come has come, or what --line and --close say;",
  "                       what is left over is stock on hand",
  "  remove               takes a draft out; its number is not given again",
  "  list                 the orders, what is on the shelf, and what was changed by hand",
  "",
  "Exit status: 0 everything is on the order, 1 something is not, 2 unusable input.",
].join("\n");

const options = {
  jobs: { type: "string", multiple: true },
  "kit-book": { type: "string" },
  items: { type: "string" },
  today: { type: "string" },
  seconds: { type: "string" },
  now: { type: "boolean" },
  "can-wait": { type: "boolean" },
  "next-order": { type: "string" },
  keep: { type: "boolean" },
  number: { type: "string" },
  who: { type: "string" },
  line: { type: "string", multiple: true },
  close: { type: "string", multiple: true },
  why: { type: "string" },
  more: { type: "boolean" },
  out: { type: "string" },
  json: { type: "boolean" },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readOrderArguments(
  words: readonly string[],
): Result<OrderArguments | BookArguments, string> {
  const parsed = readWords(words, options, usage);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const today = dayOf(values.today, 0);
  if (today === null) return err(wrongWords(notADay("--today", values.today), usage));
  const common = { today, json: values.json ?? false, out: values.out ?? null };
  const act = bookActs.find((each) => each === positionals[0]);
  const read =
    act === undefined
      ? workOutArguments(positionals, values, common)
      : bookArguments(act, positionals.slice(1), values, common);
  return read.ok ? read : err(wrongWords(read.error, usage));
}

const notADay = (option: string, found: string | undefined): string =>
  `${option} is a date such as 2026-12-01, and not ${found ?? ""}.`;

type Common = Pick<BookArguments, "today" | "json" | "out">;

function bookArguments(
  act: ActName,
  words: readonly string[],
  values: Values,
  common: Common,
): Result<BookArguments, string> {
  const [number = "", path = ""] = act === "list" ? ["", ...words] : words;
  if (words.length !== (act === "list" ? 1 : 2)) {
    return err(
      act === "list"
        ? "Name one workbook."
        : `Name the order and its workbook: ${act} NUMBER A.xlsx.`,
    );
  }
  if (act !== "list" && common.out === null) {
    return err(`Say where to with --out; --out ${path} writes into the workbook itself.`);
  }
  const { line: came = [], close: closed = [], why = "", more = false, who = "" } = values;
  if (act !== "receive" && (came.length > 0 || closed.length > 0 || more)) {
    return err("--line, --close and --more go with receive.");
  }
  if (closed.length > 0 && why.trim() === "") return err("--close goes with --why and a reason.");
  return ok({ kind: "book", act, path, number, came, closed, why, more, who, ...common });
}

function workOutArguments(
  paths: readonly string[],
  values: Values,
  common: Common,
): Result<OrderArguments, string> {
  const [first] = paths;
  if (first === undefined) return err("Name a workbook.");
  const seconds = Number(values.seconds ?? 20);
  if (!(seconds >= 0))
    return err(`--seconds is a number from zero up, and not ${values.seconds ?? ""}.`);
  const nextOrderDay = dayOf(values["next-order"], 7, common.today);
  if (nextOrderDay === null) return err(notADay("--next-order", values["next-order"]));
  const isNow = values.now === true;
  const canWait = values["can-wait"] === true;
  if (isNow && canWait)
    return err("--now and --can-wait are two orders: keep one after the other.");
  const keep = values.keep === true;
  if (keep && common.out === null) {
    return err(`Say where to with --out; --out ${first} writes into the workbook itself.`);
  }
  if (values.number !== undefined && !keep) return err("--number goes with --keep.");
  if (values.line !== undefined || values.close !== undefined || values.more === true) {
    return err("--line, --close and --more go with receive.");
  }
  return ok({
    kind: "work out",
    paths,
    jobs: values.jobs ?? null,
    kitBook: values["kit-book"] ?? null,
    items: values.items ?? null,
    seconds,
    ...common,
    keep,
    number: values.number ?? null,
    part: isNow ? "now" : canWait ? "can wait" : null,
    nextOrderDay,
  });
}

type Values = Words<typeof options>["values"];

/** The day of the words; where there are none, so many days after `from`. */
function dayOf(words: string | undefined, after: number, from = todayNow()): number | null {
  return words === undefined ? from + after : readDate(words);
}
