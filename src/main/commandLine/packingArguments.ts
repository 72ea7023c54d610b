/** The words after `npm run packing --`. */
import { readLabelLength } from "../../app/writing/labelLength";
import { packingKinds, type PackingKind } from "../../app/writing/packingLists";
import { err, ok, type Result } from "../../core/base/result";
import type { LengthUnit } from "../../core/lengths/length";
import { labelGridFault, type LabelGrid } from "../../sheets/crew/labelGrid";
import { papers } from "../../workbook/drawing";
import { readUnit, readWords, wrongWords } from "./words";

export type PackingArguments = {
  readonly schedule: string;
  readonly kitBook: string | null;
  readonly items: string | null;
  readonly unit: LengthUnit | null;
  readonly sheet: string | null;
  readonly out: string;
  readonly kinds: readonly PackingKind[];
  /** Names of jobs; all where it is `null`. */
  readonly jobs: readonly string[] | null;
  /** The workbook's own grid with what is named. Error: why no labels can be made on it. */
  readonly grid: (own: LabelGrid) => Result<LabelGrid, string>;
};

const usage = [
  "Use: npm run --silent packing -- SCHEDULE --out FILE.xlsx [options]",
  "",
  "  SCHEDULE              a .csv or .xlsx with the openings; an .xlsx may hold its own kit book and items",
  "  --out FILE.xlsx       write the sheets Packing, Labels and Loading; other sheets there are kept",
  `  --only KINDS          some of ${packingKinds.join(",")} (all)`,
  "  --job NAME            a job to pack; may be given several times (all)",
  '  --labels "2 x 5"      labels across and down on a sheet of paper',
  "  --paper letter|a4     the paper of the labels",
  "  --label-margins T,R,B,L  from the edges of the paper to the labels: top, right, bottom, left",
  "  --label-gaps A,D      between two labels: across, down",
  "  --kit-book FILE       the kit book instead of the workbook's own or the starter",
  "  --items FILE          the items table instead of the workbook's own or the starter",
  "  --unit in|mm          what a bare number in the schedule or in a margin means (in)",
  "  --sheet NAME          the sheet that is the schedule, where it is not found by itself",
  "",
  "Exit status: 0 all packed, 1 some openings not counted, 2 unusable input.",
].join("\n");

const options = {
  "kit-book": { type: "string" },
  items: { type: "string" },
  unit: { type: "string" },
  sheet: { type: "string" },
  out: { type: "string" },
  only: { type: "string" },
  job: { type: "string", multiple: true },
  labels: { type: "string" },
  paper: { type: "string" },
  "label-margins": { type: "string" },
  "label-gaps": { type: "string" },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readPackingArguments(words: readonly string[]): Result<PackingArguments, string> {
  const wrong = (says: string): Result<never, string> => err(wrongWords(says, usage));
  const parsed = readWords(words, options, usage);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const [schedule, ...more] = positionals;
  if (schedule === undefined) return wrong("Name a schedule.");
  if (more.length > 0) return wrong(`Name one schedule: ${more.join(" ")} is one too many.`);
  if (values.out === undefined) return wrong("Name the workbook to write with --out.");
  const unit = readUnit(values.unit);
  if (!unit.ok) return wrong(unit.error);
  const kinds = readKinds(values.only);
  if (!kinds.ok) return wrong(kinds.error);
  const change = readGrid(values, unit.value ?? "in");
  if (!change.ok) return wrong(change.error);
  return ok({
    schedule,
    kitBook: values["kit-book"] ?? null,
    items: values.items ?? null,
    unit: unit.value,
    sheet: values.sheet ?? null,
    out: values.out,
    kinds: kinds.value,
    jobs: values.job ?? null,
    grid: (own) => {
      const grid = { ...own, ...change.value };
      const fault = labelGridFault(grid);
      return fault === null ? ok(grid) : err(fault);
    },
  });
}

function readKinds(only: string | undefined): Result<readonly PackingKind[], string> {
  if (only === undefined) return ok(packingKinds);
  const wanted = only.split(",").map((word) => word.trim().toLowerCase());
  const strange = wanted.find((word) => !packingKinds.some((kind) => kind === word));
  return strange === undefined
    ? ok(packingKinds.filter((kind) => wanted.includes(kind)))
    : err(`--only takes some of ${packingKinds.join(",")}, and not ${strange}.`);
}

type GridWords = {
  readonly labels?: string | undefined;
  readonly paper?: string | undefined;
  readonly "label-margins"?: string | undefined;
  readonly "label-gaps"?: string | undefined;
};

/** What the words say of the grid; what they do not say is absent. */
function readGrid(words: GridWords, unit: LengthUnit): Result<Partial<LabelGrid>, string> {
  let grid: Partial<LabelGrid> = {};
  if (words.labels !== undefined) {
    const [, columns, rows] = /^\s*(\d+)\s*[x×]\s*(\d+)\s*$/i.exec(words.labels) ?? [];
    if (columns === undefined || rows === undefined) {
      return err(`--labels is such as "2 x 5", across and down, and not ${words.labels}.`);
    }
    grid = { ...grid, columns: Number(columns), rows: Number(rows) };
  }
  if (words.paper !== undefined) {
    const paper = papers.find((each) => each === words.paper?.toLowerCase());
    if (paper === undefined)
      return err(`--paper is ${papers.join(" or ")}, and not ${words.paper}.`);
    grid = { ...grid, paper };
  }
  if (words["label-margins"] !== undefined) {
    const lengths = readLengths(words["label-margins"], unit, "--label-margins");
    if (!lengths.ok) return lengths;
    const [top, right, bottom, left, ...more] = lengths.value;
    if (
      top === undefined ||
      right === undefined ||
      bottom === undefined ||
      left === undefined ||
      more.length > 0
    ) {
      return err(
        "--label-margins takes four lengths with commas between: top, right, bottom, left.",
      );
    }
    grid = { ...grid, margins: { top, right, bottom, left } };
  }
  if (words["label-gaps"] !== undefined) {
    const lengths = readLengths(words["label-gaps"], unit, "--label-gaps");
    if (!lengths.ok) return lengths;
    const [gapAcross, gapDown, ...more] = lengths.value;
    if (gapAcross === undefined || gapDown === undefined || more.length > 0) {
      return err("--label-gaps takes two lengths with a comma between: across, down.");
    }
    grid = { ...grid, gapAcross, gapDown };
  }
  return ok(grid);
}

/** Inches. */
function readLengths(
  text: string,
  unit: LengthUnit,
  option: string,
): Result<readonly number[], string> {
  const lengths: number[] = [];
  for (const word of text.split(",").map((each) => each.trim())) {
    const length = readLabelLength(word, unit);
    if (length === null) return err(`${option}: ${word} is not a length, such as 1/2 or 12 mm.`);
    lengths.push(length);
  }
  return ok(lengths);
}
