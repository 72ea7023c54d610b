/** The label sheet: a label for each bag of each opening, on a plain grid that the person sets. */
import { bagCopies, packJob, type JobBags } from "../../core/bags/bags";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { LengthStyle } from "../../core/lengths/writeLength";
import { sizeTexts } from "../../core/takeoff/sizeTexts";
import { columnCharacters } from "../../workbook/columnSize";
import type { Drawing, DrawnCell, DrawnRow } from "../../workbook/drawing";
import { blank, text } from "../cells";
import { notCompleteWords } from "../jobWords";
import { labelSize, type LabelGrid } from "./labelGrid";
import {
  bagLabels,
  labelLetters,
  labelRows,
  titleHeight,
  wordsHeight,
  type LabelRoom,
  type LabelRows,
  type LabelText,
} from "./labelText";
import { brokenLines } from "../wrapped";

export type LabelWish = {
  readonly jobs: readonly JobEstimate[];
  readonly lengths: LengthStyle;
  /** One on which labels can be made. */
  readonly grid: LabelGrid;
};

/** Points between the edge of a label and its words. */
const padding = { across: 6, down: 4 } as const;
/** So many labels are a box of paper; more would be no help to a person. */
const mostLabels = 20_000;
/** Inches that the rows may be higher in a host than they were worked out to be. */
const slack = 0.15;

/** One drawing with the labels of all jobs of the wish, in the order of their openings and bags. */
export function labelSheet({ jobs, lengths, grid }: LabelWish): Drawing {
  const [first] = jobs;
  const subject = jobs.length === 1 && first !== undefined ? first.job : "";
  const size = labelSize(grid);
  const room: LabelRoom = {
    width: size.width * 72 - 2 * padding.across,
    height: size.height * 72 - 2 * padding.down,
  };
  const packed = jobs.map((job) => packJob(job.takeOff));
  const rows = sheetRows(packed, room);
  const labels: LabelText[] = [];
  let isCut = false;
  for (const [index, job] of jobs.entries()) {
    const sizeText = sizeTexts(job.takeOff.lines, lengths);
    for (const bag of bagCopies(packed[index] ?? { openings: [] })) {
      isCut = labels.length >= mostLabels;
      if (isCut) break;
      labels.push(...bagLabels(bag, job.job, room, rows, sizeText));
    }
    labels.push(...notCompleteWords(job).map((words) => noticeLabel(job.job, words, room, rows)));
  }
  if (isCut) {
    const words = `Only the first ${mostLabels} labels are here. Label fewer jobs at once to have them all.`;
    labels.push(noticeLabel("NOT COMPLETE", words, room, rows));
  }
  return {
    name: subject === "" ? "Labels" : `Labels ${subject}`,
    mark: { kind: "labels", subject },
    ...placedLabels(labels, grid, room, rows),
    frozenRows: 0,
    frozenColumns: 0,
    tables: [],
    choices: [],
  };
}

/** Copies have the same words but for their numbers, so the last of them is looked at for all. */
function sheetRows(packed: readonly JobBags[], room: LabelRoom): LabelRows {
  const rows = packed.map(({ job, openings }) => {
    const bags = openings.flatMap((opening) =>
      opening.bags.map((bag) => ({
        opening,
        copy: opening.opening.quantity,
        of: opening.opening.quantity,
        bag,
      })),
    );
    return labelRows(bags, job, room);
  });
  return rows.reduce(
    (most, each) => ({
      title: Math.max(most.title, each.title),
      words: Math.max(most.words, each.words),
      contents: Math.min(most.contents, each.contents),
    }),
    labelRows([], "", room),
  );
}

/** A label that says what is missing, so that it cannot be overlooked. */
function noticeLabel(
  title: string,
  words: string,
  room: LabelRoom,
  { contents }: LabelRows,
): LabelText {
  const said = brokenLines(words, room.width, labelLetters.words);
  return { title, words: "", contents: said.slice(0, contents) };
}

/** The labels in rows and columns of cells, three rows to a label, a page after the other. */
function placedLabels(
  labels: readonly LabelText[],
  grid: LabelGrid,
  room: LabelRoom,
  lines: LabelRows,
): Pick<Drawing, "columnWidths" | "rows" | "print"> {
  const { columns, paper, margins } = grid;
  const gaps = {
    across: grid.gapAcross * 72 + 2 * padding.across,
    down: grid.gapDown * 72 + 2 * padding.down,
  };
  const [title, words] = [titleHeight(lines), wordsHeight(lines)];
  const rows: DrawnRow[] = [];
  const breaks: number[] = [];
  for (let start = 0; start < labels.length; start += columns) {
    const across = labels.slice(start, start + columns);
    const isFirstOfPage = (start / columns) % grid.rows === 0;
    if (isFirstOfPage && start > 0) breaks.push(rows.length);
    if (!isFirstOfPage) rows.push({ cells: [], height: gaps.down });
    const line = (height: number, cell: (label: LabelText) => DrawnCell): DrawnRow => ({
      cells: across.flatMap((label, index) => (index === 0 ? [cell(label)] : [null, cell(label)])),
      height,
    });
    rows.push(
      line(title, (label) => text(label.title, { look: "labelTitle", wrap: true })),
      line(words, (label) => text(label.words, { look: "label", wrap: true })),
      line(room.height - title - words, (label) =>
        label.contents.length === 0
          ? blank({ look: "label" })
          : text(label.contents.join("\n"), { look: "label", wrap: true }),
      ),
    );
  }
  const columnWidths = Array.from({ length: 2 * columns - 1 }, (_, column) =>
    columnCharacters(column % 2 === 0 ? room.width : gaps.across),
  );
  return {
    columnWidths,
    rows,
    print: {
      orientation: "portrait",
      // The columns are a page wide by themselves, and the right margin is theirs to grow into. A
      // host whose letters are far wider than ours makes all smaller, so that no column is cut off.
      fitToOnePageWide: true,
      paper,
      margins: {
        top: margins.top + padding.down / 72,
        left: margins.left + padding.across / 72,
        bottom: Math.max(0, margins.bottom - slack),
        right: 0,
      },
      breaksBefore: breaks,
      header: "",
      footer: "",
    },
  };
}
