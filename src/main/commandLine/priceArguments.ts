/** The words after `npm run price --`. */
import { err, ok, type Result } from "../../core/base/result";
import { noPercent, percent, readPercent, type Percent } from "../../core/pricing/rates/percent";
import { asEstimated, type WhatIf } from "../../core/pricing/chances/whatIf";
import { usualDraws } from "../../app/pricing/simulateJob";
import { fileExists } from "./files";
import { readWords, wrongWords } from "./words";

export type PriceArguments = {
  readonly path: string;
  readonly json: boolean;
  readonly out: string | null;
  /** The job to quote; `null` for none. */
  readonly quotation: string | null;
  /** Changes of every job's figures; `null` where none are asked for. */
  readonly changes: AskedChanges | null;
  /** The seed of the simulation; `null` for none. */
  readonly seed: number | null;
  readonly draws: number;
  readonly actuals: boolean;
  /** The job that a sheet of actuals is to be made for; `null` for none. */
  readonly actualsFor: string | null;
  /** Numbers of the suggestions to take over, from 1. */
  readonly accept: readonly number[];
};

/** Changes by what they are of: `material`, `material:FAMILY`, `hours`, `wages`, `freight`, `discount`. */
export type AskedChanges = ReadonlyMap<string, Percent>;

const usage = [
  "Use: npm run --silent price -- FILE.xlsx [options]",
  "",
  "  FILE.xlsx            a workbook with a schedule, and as it has them a kit book, items, rates,",
  "                       quotation terms, ranges, alternates and actuals",
  "  --json               print one JSON object instead of text",
  "  --out FILE           write the sheets Price (one per job), Margins, Hanging loads, What-if and, where",
  "                       actuals were typed, Actual against estimate into a copy of the workbook",
  "  --quotation JOB      write the customer's quotation of that job, and nothing else, into a new file",
  '  --what-if CHANGES    each job with changes such as "hours=10 %, material:Track=-5 %, discount=3 %", what',
  "                       moves its margin most, the price that keeps its target, the discount that loses it",
  "  --simulate SEED      the chance that each job falls below its target, by the workbook's ranges",
  "  --draws N            of the simulation, 1 to 1000000 (10000)",
  "  --actuals            what jobs really cost and took against the estimate, and what would have fitted",
  "  --accept N,N         with --out: take those suggested minutes over into the next edition of the kit book",
  "  --actuals-for JOB    with --out: add a sheet to type what that job really cost and took",
  "",
  "Exit status: 0 all counted, priced and within capacities, 1 something is not, 2 unusable input.",
].join("\n");

const options = {
  json: { type: "boolean" },
  out: { type: "string" },
  quotation: { type: "string" },
  "what-if": { type: "string" },
  simulate: { type: "string" },
  draws: { type: "string" },
  actuals: { type: "boolean" },
  "actuals-for": { type: "string" },
  accept: { type: "string" },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readPriceArguments(words: readonly string[]): Result<PriceArguments, string> {
  const wrong = (says: string): Result<never, string> => err(wrongWords(says, usage));
  const parsed = readWords(words, options, usage);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) return wrong("Name one workbook.");
  const { json = false, out = null, quotation = null, actuals = false } = values;
  const actualsFor = values["actuals-for"] ?? null;
  if (quotation !== null && out === null) {
    return wrong("Name a new file for the quotation with --out.");
  }
  // A quotation holds nothing else, so it must not take the place of a workbook.
  if (quotation !== null && out !== null && fileExists(out)) {
    return err(`${out} is there already. Name a new file for the quotation.`);
  }
  if (actualsFor !== null && out === null) {
    return wrong("Name the file to write the sheet of actuals into with --out.");
  }
  const accept = (values.accept ?? "").split(",").filter((word) => word.trim() !== "");
  const numbers = accept.map(Number);
  if (!numbers.every((number) => Number.isInteger(number) && number >= 1)) {
    return wrong(`--accept takes numbers of suggestions such as 1,3, and not ${values.accept}.`);
  }
  if (numbers.length > 0 && out === null) {
    return wrong("Name the file to write the kit book into with --out.");
  }
  const changes = values["what-if"] === undefined ? ok(null) : readChanges(values["what-if"]);
  if (!changes.ok) return wrong(changes.error);
  const seed = values.simulate === undefined ? null : Number(values.simulate);
  if (seed !== null && !(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32)) {
    return wrong(`--simulate takes a whole number as its seed, and not ${values.simulate}.`);
  }
  const draws = Number(values.draws ?? usualDraws);
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 1_000_000)) {
    return wrong(`--draws is a whole number from 1 to 1000000, and not ${values.draws}.`);
  }
  const wish = { path, json, out, quotation, seed, draws, actuals, actualsFor, accept: numbers };
  return ok({ ...wish, changes: changes.value });
}

const movable = ["material", "hours", "wages", "freight", "discount"] as const;
const mostChange = percent(10_000_000);

function readChanges(text: string): Result<AskedChanges, string> {
  const changes = new Map<string, Percent>();
  for (const part of text.split(",").filter((each) => each.trim() !== "")) {
    const [, name = "", typed = ""] = /^([^=]*)=(.*)$/s.exec(part) ?? [];
    const of = name.trim();
    const [factor = ""] = of.split(":");
    if (!movable.some((one) => one === factor) || (of !== factor && factor !== "material")) {
      return err(
        `--what-if knows ${movable.join(", ")} and material:FAMILY, and not ${part.trim()}.`,
      );
    }
    // On a command line a percentage is text: 10 is 10 %.
    const by = readPercent(typed.trim())?.percent ?? null;
    if (by === null || by < -1_000_000 || by > mostChange) {
      return err(`The change of ${of} is a percentage from -100 % to 1000 %, and not ${typed}.`);
    }
    changes.set(of, by);
  }
  return ok(changes);
}

/** The changes for jobs with these families. */
export function whatIfOf(changes: AskedChanges, families: Iterable<string>): WhatIf {
  const of = (factor: string): Percent => changes.get(factor) ?? noPercent;
  const material = new Map<string, Percent>();
  for (const family of families) {
    material.set(family, changes.get(`material:${family}`) ?? of("material"));
  }
  return {
    ...asEstimated,
    material,
    hours: of("hours"),
    rate: of("wages"),
    freight: of("freight"),
    discount: of("discount"),
  };
}
