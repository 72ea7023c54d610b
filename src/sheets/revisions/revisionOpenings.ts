/** The openings on a sheet of changes: a row for each that came or went, a row for each change. */
import type { ChangedOpening } from "../../core/revisions/compareOpenings";
import type { IssuedOpening } from "../../core/revisions/issue";
import type { DrawnCell, DrawnRow, Look } from "../../workbook/drawing";
import { row, text, wordsRow } from "../cells";
import { openingText, valueText } from "./revisionWords";
import { revisionWidths, type RevisionWish } from "./revisionWish";

/** A field, what it was and what it is are each as wide as two columns of the hardware. */
const wide = { span: 1 } as const;
/** An opening that came or went is told over all three. */
const widest = { span: 5 } as const;

export function openingRows({ comparison, lengths }: RevisionWish): readonly DrawnRow[] {
  const { added, removed, changed, renamed, guesses } = comparison.openings;
  const whole = (what: string, look: Look) => (opening: IssuedOpening) =>
    entry(what, look, opening, "", text(openingText(opening, lengths), widest));
  const pair =
    (what: string, look: Look) =>
    (each: ChangedOpening): readonly DrawnRow[] => {
      const was = each.from.mark === each.to.mark ? "" : each.from.mark;
      if (each.changes.length === 0)
        return [entry(what, look, each.to, was, text("nothing else", widest))];
      return each.changes.map(({ field, from, to }) =>
        entry(
          what,
          look,
          each.to,
          was,
          text(field.label, wide),
          null,
          text(valueText(from, field, lengths), wide),
          null,
          text(valueText(to, field, lengths), wide),
        ),
      );
    };
  const rows = [
    ...added.map(whole("Added", "note")),
    ...removed.map(whole("Removed", "warn")),
    ...changed.flatMap(pair("Changed", "body")),
    ...renamed.flatMap(pair("Another mark", "body")),
    ...guesses.flatMap((each) =>
      pair(`To confirm: ${Math.round(each.likeness * 100)} % alike`, "warn")(each),
    ),
  ];
  return rows.length === 0
    ? [wordsRow("No opening differs.", "body", revisionWidths.length)]
    : [openingHeadings, ...rows];
}

const openingHeadings: DrawnRow = row(
  ...["What", "Job", "Mark", "Was called"].map((words) => text(words, { look: "heading" })),
  ...["Field", "Was", "Is"].flatMap((words) => [text(words, { look: "heading", ...wide }), null]),
);

const entry = (
  what: string,
  look: Look,
  { job, mark }: IssuedOpening,
  was: string,
  ...change: readonly (DrawnCell | null)[]
): DrawnRow => row(text(what, { look }), text(job), text(mark), text(was), ...change);
