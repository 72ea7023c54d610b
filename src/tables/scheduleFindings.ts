/** What can be wrong with a schedule as a table, before any opening is looked at. */
import type { FindingTable } from "../core/base/finding";

export const scheduleFindings = {
  "no-schedule": {
    level: "stop",
    says: "No schedule of openings was found on {found}.",
    todo: "Give it a row of headings with at least mark, width and height, or say which column is which.",
  },
  "mapped-column-missing": {
    level: "stop",
    says: "There is no column {found} to take {column} from.",
    todo: "Name a heading of the schedule, or a column by its letters.",
  },
  "column-missing": {
    level: "stop",
    says: "The schedule has no column for {column}.",
    todo: "Add one, or say which column holds it.",
  },
  "heading-twice": {
    level: "warn",
    says: "{found} fits a column that another heading already has; {used} is used.",
    todo: "Rename the one that is not meant.",
  },
  "total-row": {
    level: "note",
    says: "The row that says {found} was taken as a total and not counted.",
    todo: "If it is an opening, give it its width and height.",
  },
  "title-row": {
    level: "note",
    says: "The row with only {found} was taken as a title and not counted.",
    todo: "If it is an opening, give it its mark, width and height.",
  },
} as const satisfies FindingTable;
