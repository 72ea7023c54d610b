/** The words after `npm run kitbook --`. */
import { err, ok, type Result } from "../../core/base/result";
import { readWords } from "./words";

export const kitBookUsage = [
  "Use: npm run --silent kitbook -- check FILE [--out NEW.xlsx]",
  "     npm run --silent kitbook -- boundaries FILE --field FIELD --opening WORDS [--out NEW.xlsx]",
  "     npm run --silent kitbook -- try FILE --opening WORDS [--and WORDS]",
  "     npm run --silent kitbook -- diff FILE [OTHER]",
  "     npm run --silent kitbook -- export FILE --out NEW.xlsx|NEW.csv",
  "     npm run --silent kitbook -- import FILE --from OTHER [--yes] [--take WHICH] --out NEW.xlsx",
  "",
  "  FILE             a workbook or .csv with a kit book; the word starter for the one that comes along",
  "  check            rows that do not work, bolts that do not fit, what the book leaves open",
  "  boundaries       the exact values of a field at which any count changes",
  "  try              what each row does for an opening; with --and, what changes between two",
  "  diff             what OTHER has otherwise; the starter against FILE where no OTHER is named",
  "  import           what would change in FILE by taking over OTHER's kit book, numbered; with --yes it is",
  "                   written into NEW.xlsx as the next edition, beside the sheets that FILE has",
  "  --opening WORDS  such as \"type=sliding door, width=8', height=7', post height=7', tail post=yes\"",
  "  --take WHICH     all, or numbers such as 1,3-5; else all but rows that OTHER does not have",
  "  --out NEW.xlsx   a copy of FILE with the answer as a sheet",
  "  --json           print one JSON object instead of text (check, boundaries, try, diff, import)",
  "",
  "Exit status: 0 nothing is wrong, 1 something is, 2 unusable input.",
].join("\n");

export type KitBookWords = {
  readonly command: string;
  /** The first is FILE, the second OTHER of a diff. */
  readonly paths: readonly string[];
  readonly opening: string;
  readonly other: string;
  readonly field: string;
  /** The empty text where no file is wanted. */
  readonly out: string;
  readonly from: string;
  readonly take: string;
  readonly yes: boolean;
  readonly json: boolean;
};

const options = {
  opening: { type: "string", default: "" },
  and: { type: "string", default: "" },
  field: { type: "string", default: "" },
  out: { type: "string", default: "" },
  from: { type: "string", default: "" },
  take: { type: "string", default: "" },
  yes: { type: "boolean", default: false },
  json: { type: "boolean", default: false },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readKitBookWords(words: readonly string[]): Result<KitBookWords, string> {
  const read = readWords(words, options, kitBookUsage);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [command, ...paths] = positionals;
  if (command === undefined || paths.length === 0) return err(kitBookUsage);
  const { and: other, ...rest } = values;
  return ok({ command, paths, other, ...rest });
}

/**
 * The numbers that `--take` means of so many changes, from 1; `null` where it says nothing. Error: a
 * word that is no number, or none of theirs.
 */
export function readTake(take: string, count: number): Result<ReadonlySet<number> | null, string> {
  if (take === "") return ok(null);
  if (take === "all") return ok(new Set(Array.from({ length: count }, (_, at) => at + 1)));
  const numbers = new Set<number>();
  for (const word of take.split(",")) {
    const [, from = "", to = from] = /^\s*(\d{1,6})(?:\s*-\s*(\d{1,6}))?\s*$/.exec(word) ?? [];
    const [first, last] = [Number(from), Number(to)];
    if (from === "" || first < 1 || last > count || first > last) {
      return err(`--take: "${word.trim()}" is none of the changes 1 to ${count}.`);
    }
    for (let number = first; number <= last; number += 1) numbers.add(number);
  }
  return ok(numbers);
}
