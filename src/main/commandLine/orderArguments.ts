/** The words after `npm run order --`. */
import { parseArgs } from "node:util";
import { readDate } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { today as todayNow } from "../../app/today";

export type OrderArguments = {
  readonly paths: readonly string[];
  readonly jobs: readonly string[] | null;
  /** A path, or `each`; `null` where the person has not decided. */
  readonly kitBook: string | null;
  readonly items: string | null;
  /** A date serial. */
  readonly today: number;
  /** The longest that one cut plan may be searched for. */
  readonly seconds: number;
  readonly json: boolean;
  readonly out: string | null;
};

/** In place of a file: every workbook by its own. */
export const eachItsOwn = "each";

const usage = [
  "Use: npm run --silent order -- A.xlsx B.xlsx … [options]",
  "",
  "  A.xlsx …             workbooks with schedules; sheets of offers, stock on hand, job dates, suppliers",
  "                       and order rules are read from the first workbook that has them",
  "  --jobs NAME          a job to order for, as NAME or FILE:NAME; may be given several times (all)",
  "  --kit-book FILE|each where kit books differ: count all by that one, or each by its own",
  "  --items FILE|each    where items differ: that table for all, or each its own and a code is one item",
  "  --today YYYY-MM-DD   the day of the order (today)",
  "  --seconds N          the longest search for one cut plan (20)",
  "  --out FILE.xlsx      write the sheets of the order into a copy of the first workbook",
  "  --json               print one JSON object instead of text",
  "",
  "Exit status: 0 everything is on the order, 1 something is not, 2 unusable input.",
].join("\n");

/** Error: what is wrong with the words, with the usage. */
export function readOrderArguments(words: readonly string[]): Result<OrderArguments, string> {
  const wrong = (says: string): Result<never, string> => err(`${says}\n\n${usage}`);
  const parsed = parse(words);
  if (!parsed.ok) return wrong(parsed.error);
  const { values, positionals } = parsed.value;
  if (values.help === true) return err(usage);
  if (positionals.length === 0) return wrong("Name a workbook.");
  const today = values.today === undefined ? todayNow() : readDate(values.today);
  if (today === null)
    return wrong(`--today is a date such as 2026-12-01, and not ${values.today}.`);
  const seconds = Number(values.seconds ?? 20);
  if (!(seconds >= 0))
    return wrong(`--seconds is a number from zero up, and not ${values.seconds}.`);
  return ok({
    paths: positionals,
    jobs: values.jobs ?? null,
    kitBook: values["kit-book"] ?? null,
    items: values.items ?? null,
    today,
    seconds,
    json: values.json ?? false,
    out: values.out ?? null,
  });
}

function parse(words: readonly string[]) {
  try {
    return ok(
      parseArgs({
        args: [...words],
        allowPositionals: true,
        options: {
          jobs: { type: "string", multiple: true },
          "kit-book": { type: "string" },
          items: { type: "string" },
          today: { type: "string" },
          seconds: { type: "string" },
          out: { type: "string" },
          json: { type: "boolean" },
          help: { type: "boolean", short: "h" },
        },
      }),
    );
  } catch (error) {
    // The parser throws on words it does not know: that is a person's fault and not ours.
    if (error instanceof TypeError) return err(error.message);
    throw error;
  }
}
