/** The words after `npm run takeoff --`. */
import { err, ok, type Result } from "../../core/base/result";
import type { LengthUnit } from "../../core/lengths/length";
import type { ScheduleKey } from "../../core/openings/openingRow";
import { scheduleColumns } from "../../tables/scheduleColumns";
import type { ScheduleMapping } from "../../tables/scheduleLayout";
import { readUnit, readWords, wrongWords } from "./words";

export type TakeOffArguments = {
  readonly schedule: string;
  readonly kitBook: string | null;
  readonly items: string | null;
  readonly unit: LengthUnit | null;
  readonly out: string | null;
  readonly json: boolean;
  readonly sheet: string | null;
  readonly columns: ScheduleMapping;
};

const keys = scheduleColumns.map(({ key }) => key);

export const takeOffUsage = [
  "Use: npm run --silent takeoff -- SCHEDULE [options]",
  "",
  "  SCHEDULE              a .csv or .xlsx with the openings; an .xlsx may hold its own kit book and items",
  "  --kit-book FILE       the kit book (.xlsx or .csv) instead of the workbook's own or the starter",
  "  --items FILE          the items table (.xlsx or .csv) instead of the workbook's own or the starter",
  "  --unit in|mm          what a bare number in the schedule means (in)",
  "  --sheet NAME          the sheet that is the schedule, where it is not found by itself",
  "  --column KEY=HEADING  which column is what, by heading or letter; may be given several times",
  `                        (${keys.join(", ")})`,
  "  --out FILE.xlsx       write the sheets Hardware, Reasons and Findings; other sheets there are kept",
  "  --json                print one JSON object instead of text",
  "",
  "Exit status: 0 all counted, 1 some openings not counted, 2 unusable input.",
].join("\n");

const options = {
  "kit-book": { type: "string" },
  items: { type: "string" },
  unit: { type: "string" },
  sheet: { type: "string" },
  column: { type: "string", multiple: true },
  out: { type: "string" },
  json: { type: "boolean" },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readTakeOffArguments(words: readonly string[]): Result<TakeOffArguments, string> {
  const wrong = (says: string): Result<never, string> => err(wrongWords(says, takeOffUsage));
  const parsed = readWords(words, options, takeOffUsage);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const [schedule, ...more] = positionals;
  if (schedule === undefined) return wrong("Name a schedule.");
  if (more.length > 0) return wrong(`Name one schedule: ${more.join(" ")} is one too many.`);
  const unit = readUnit(values.unit);
  if (!unit.ok) return wrong(unit.error);
  const columns = readColumns(values.column ?? []);
  if (!columns.ok) return wrong(columns.error);
  return ok({
    schedule,
    kitBook: values["kit-book"] ?? null,
    items: values.items ?? null,
    unit: unit.value,
    out: values.out ?? null,
    json: values.json ?? false,
    sheet: values.sheet ?? null,
    columns: columns.value,
  });
}

function readColumns(pairs: readonly string[]): Result<ScheduleMapping, string> {
  const columns: Partial<Record<ScheduleKey, string>> = {};
  for (const pair of pairs) {
    const [word = "", ...heading] = pair.split("=");
    const wanted = word.trim().toLowerCase().replaceAll("-", "_");
    const key = keys.find((each) => each === wanted);
    if (key === undefined || heading.length === 0) {
      return err(`--column takes KEY=HEADING with KEY one of ${keys.join(", ")}, and not ${pair}.`);
    }
    columns[key] = heading.join("=").trim();
  }
  return ok(columns);
}
