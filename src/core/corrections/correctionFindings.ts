/** What can be wrong or doubtful in what a person typed on a hardware sheet. */
import type { FindingTable } from "../base/finding";

const stays = "Until then the line stays as it is counted.";

export const correctionFindings = {
  "correction-unreadable": {
    level: "warn",
    says: "The correction of {line}, {found}, cannot be read.",
    todo: `Type +3 for three more, -2 for two fewer, or =14 for fourteen instead. ${stays}`,
  },
  "correction-not-whole": {
    level: "warn",
    says: "The correction {found} of {line} is no whole number of pieces.",
    todo: `Type a whole number. ${stays}`,
  },
  "correction-below-zero": {
    level: "warn",
    says: "The correction {found} of {line} takes away more than the {counted} that are counted.",
    todo: `Type =0 if none is needed. ${stays}`,
  },
  "correction-without-line": {
    level: "warn",
    says: "The correction {found} is for {line}, which this job does not count any more: it is kept and changes nothing.",
    todo: "Type it at another line, or clear its Correction cell if it is done with.",
  },
  "correction-twice": {
    level: "warn",
    says: "The correction {found} is another one for {line}: it is kept and changes nothing.",
    todo: "Clear the one that is wrong.",
  },
  "correction-outdated": {
    level: "warn",
    says: "{found} stands instead of the {counted} of {line} that are counted now; {before} were counted when it was typed.",
    todo: "Check it. Change its reason to say that it still holds, or type another correction.",
  },
  "correction-unexplained": {
    level: "note",
    says: "The correction {found} of {line} has no {missing}.",
    todo: "Type it beside the correction, so that somebody can be asked.",
  },
  "correction-put-back": {
    level: "note",
    says: "What was typed for {line} ({found}) was gone from its sheet and is put back.",
    todo: "To take it away for good, clear its cells instead of deleting its row or its sheet.",
  },
  "spares-not-whole": {
    level: "warn",
    says: "The spares {found} of {line} are no whole number of pieces from zero up.",
    todo: "Type a whole number, or clear the cell. Until then they go by the item's rule.",
  },
  "added-without-item": {
    level: "stop",
    says: "Not counted: a row added by hand names no item.",
    todo: "Type the item's code, or clear the row.",
  },
  "added-without-quantity": {
    level: "stop",
    says: "Not counted: {line}, added by hand, has no quantity.",
    todo: "Type how many pieces are needed, or clear the row.",
  },
  "added-not-whole": {
    level: "stop",
    says: "Not counted: {found} is no number of pieces of {line}, which is added by hand.",
    todo: "Type a whole number above zero.",
  },
  "added-size": {
    level: "stop",
    says: "Not counted: {found} is no size of {line}, which is added by hand.",
    todo: "Type a length, or a width x a height, or nothing.",
  },
  "added-put-in": {
    level: "note",
    says: "A row for {line} was put in by hand: it counts as added by hand.",
    todo: "Check its quantity under Added by hand.",
  },
  "job-gone": {
    level: "warn",
    says: "{found} is not in the schedule any more. {count} of its corrections and added rows are kept and change nothing.{guess}",
    todo: "Mend the job's name in the schedule, or clear their cells if they are done with.",
  },
} as const satisfies FindingTable;

export type CorrectionFindingCode = keyof typeof correctionFindings;
