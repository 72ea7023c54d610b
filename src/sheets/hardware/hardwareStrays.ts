/** What was typed on the hardware sheet and belongs to no line any more: kept, shown, not used. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { LineCorrection } from "../../core/corrections/correction";
import type { LostJob } from "../../core/corrections/corrections";
import type { MoveName } from "../../core/corrections/rowName";
import { writeSize } from "../../core/lengths/writeLength";
import type { DrawnRow } from "../../workbook/drawing";
import { text } from "../cells";
import { typedCells } from "./hardwareAdded";
import { band, cellsRow, type HardwareLayout } from "./hardwareLayout";
import { nameCell, textInput } from "./hardwareLine";

/** Corrections of a job that no line takes; no rows where there are none. */
export function strayRows(
  layout: HardwareLayout,
  { corrections }: JobEstimate,
): readonly DrawnRow[] {
  if (corrections.strays.length === 0) return [];
  return [
    band(layout, "group", {
      item: text("Corrections without a line"),
      description: text("Kept and not used. Clear the cells of one that is done with."),
    }),
    ...corrections.strays.map((stray) =>
      strayRow(
        layout,
        stray,
        stray.name.copy === 1
          ? "This job does not count it any more"
          : "Another correction of a line above",
      ),
    ),
  ];
}

/** What was typed for jobs that are not in the schedule any more; no rows where there are none. */
export function lostRows(layout: HardwareLayout, lost: readonly LostJob[]): readonly DrawnRow[] {
  if (lost.length === 0) return [];
  return [
    band(layout, "group", {
      item: text("Of jobs that are gone"),
      description: text("Kept and not used. Clear the cells of one that is done with."),
    }),
    ...lost.flatMap((each) => [
      questionRow(layout, each),
      ...each.corrections.map((correction) =>
        correction.name.kind === "line"
          ? strayRow(layout, { ...correction, name: correction.name }, `Of ${each.job}`)
          : cellsRow(layout, {
              ...typedCells(correction.typed, false),
              description: text(`Added by hand to ${each.job}`),
              spares: textInput(correction.typed.spares, { align: "right" }),
              line: nameCell(correction.name),
            }),
      ),
    ]),
  ];
}

function questionRow(layout: HardwareLayout, { job, guess, answer }: LostJob): DrawnRow {
  const gone = `${job} is not in the schedule any more.`;
  if (guess === null) return band(layout, "warn", { description: text(gone) });
  const name: MoveName = { kind: "move", from: job, to: guess };
  return cellsRow(layout, {
    description: text(
      `${gone} Is it ${guess} now? Type yes under Correction to move these there.`,
      {
        look: "warn",
      },
    ),
    correction: textInput(answer?.typed.correction ?? "", { align: "right" }),
    line: nameCell(name),
  });
}

function strayRow(
  layout: HardwareLayout,
  { name, typed }: LineCorrection,
  words: string,
): DrawnRow {
  return cellsRow(layout, {
    item: text(name.item),
    description: text(words, { look: "warn" }),
    size: text(writeSize(name.size, layout.wish.lengths), { align: "right" }),
    correction: textInput(typed.correction, { align: "right", look: "warn" }),
    reason: textInput(typed.reason),
    by: textInput(typed.by),
    spares: textInput(typed.spares, { align: "right" }),
    line: nameCell(name),
  });
}
