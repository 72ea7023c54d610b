/**
 * The loading list of a job: big parts one by one, then every bag, then what belongs to the job as a
 * whole. Its pieces add up to what the hardware list orders, spares included.
 */
import { counted } from "../../core/base/counted";
import { packJob, type JobBags } from "../../core/bags/bags";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { LengthStyle } from "../../core/lengths/writeLength";
import { measureStyleOf } from "../../core/measures/measures";
import { shownUnit } from "../../core/measures/writeMeasure";
import type { Items } from "../../core/pricing/item";
import type { Drawing, DrawnRow } from "../../workbook/drawing";
import { blankRow, headingRow, wordsRow } from "../cells";
import { caution } from "../caution";
import { joinedRow, titleRow } from "../fittedRow";
import { notCompleteWords } from "../jobWords";
import { loadingColumns, loadingHeadings, loadingWidths } from "./loadingColumns";
import { bagLoads, bigPartLoads, jobLoads, loadWeights, type Load } from "../owner/loads";
import { loadRows, totalRows } from "./loadingRows";
import { printSetup } from "../printSetup";

export type LoadingWish = {
  readonly jobs: readonly JobEstimate[];
  readonly items: Items;
  readonly lengths: LengthStyle;
};

/** Bags are listed one by one up to so many; beyond that, opening by opening. */
const mostBags = 20_000;

/** One drawing with all jobs of the wish, a page for each. */
export function loadingSheet({ jobs, items, lengths }: LoadingWish): Drawing {
  const [first] = jobs;
  const subject = jobs.length === 1 && first !== undefined ? first.job : "";
  const width = loadingColumns.length;
  const style = measureStyleOf(lengths);
  const rows: DrawnRow[] = [
    titleRow(subject === "" ? "Loading list" : `Loading list: ${subject}`, loadingWidths),
    wordsRow(
      "Tick what is on the truck. The pieces are those that the hardware list orders.",
      "subtitle",
      width,
    ),
    { ...headingRow(loadingHeadings(shownUnit("weight", style).name)), height: 18 },
  ];
  const heading = rows.length - 1;
  const breaks: number[] = [];
  for (const job of jobs) {
    if (job !== first) breaks.push(rows.length);
    rows.push(...jobRows(job, items, lengths, rows.length));
  }
  return {
    name: subject === "" ? "Loading" : `Loading ${subject}`,
    mark: { kind: "loading", subject },
    columnWidths: loadingWidths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: printSetup({
      headingRow: heading,
      breaksBefore: breaks,
      subject,
      title: "Loading list",
      caution: "",
    }),
  };
}

function jobRows(
  job: JobEstimate,
  items: Items,
  lengths: LengthStyle,
  start: number,
): readonly DrawnRow[] {
  const width = loadingColumns.length;
  const weights = loadWeights(job.material, items, measureStyleOf(lengths));
  const bags = packJob(job.takeOff);
  const [corrections, spares] = jobLoads(job.material, lengths, weights);
  const sections: readonly (readonly [string, readonly Load[]])[] = [
    ["Big parts, carried one by one", bigPartLoads(bags, job, lengths, weights)],
    ["Bags", bagLoads(bags, weights, bagCount(bags) <= mostBags)],
    ["Corrections typed by hand; below zero is taken out of the bags", corrections],
    ["Spares, in one bag", spares],
  ];
  const rows: DrawnRow[] = [
    ...notCompleteWords(job).map((words) => joinedRow(words, "stop", loadingWidths)),
    joinedRow(`${job.job}: ${loadWords(bags)}`, "subtitle", loadingWidths),
    joinedRow(caution, "caution", loadingWidths),
  ];
  const countedRows: number[] = [];
  for (const [title, loads] of sections) {
    if (loads.length === 0) continue;
    rows.push(wordsRow(title, "group", width));
    for (const load of loads) {
      countedRows.push(start + rows.length);
      rows.push(...loadRows(load));
    }
  }
  const all = sections.flatMap(([, loads]) => loads);
  return [...rows, ...totalRows(job, all, countedRows, measureStyleOf(lengths)), blankRow];
}

const bagCount = ({ openings }: JobBags): number =>
  openings.reduce((sum, { opening, bags }) => sum + opening.quantity * bags.length, 0);

/** `57 bags for 8 openings`. */
const loadWords = (bags: JobBags): string => {
  const doors = bags.openings.reduce((sum, { opening }) => sum + opening.quantity, 0);
  return `${counted(bagCount(bags), "bag")} for ${counted(doors, "opening")}`;
};
