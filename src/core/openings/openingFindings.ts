/** What can be wrong with the cells of one opening; lengths have a table of their own. */
import type { FindingTable } from "../base/finding";

export const openingFindings = {
  "job-missing": {
    level: "warn",
    says: "The opening names no job; it is counted under {job}.",
    todo: "Type the job's name.",
  },
  "job-column-missing": {
    level: "note",
    says: "The schedule has no column for the job: all its openings are counted under {job}.",
    todo: "Add one if the schedule is of several jobs.",
  },
  "mark-missing": {
    level: "warn",
    says: "The opening has no mark; it goes by {mark}.",
    todo: "Type its mark from the drawings.",
  },
  "mark-twice": {
    level: "warn",
    says: "Mark {found} stands twice in this job: here and at {first}. Both are counted.",
    todo: "Give one of them its own mark, or remove it.",
  },
  "quantity-not-a-count": {
    level: "stop",
    says: "Not counted: the quantity is {found}, which is not a whole number above 0.",
    todo: "Type how many alike there are; remove the row if there are none.",
  },
  "quantity-missing": {
    level: "stop",
    says: "Not counted: the quantity is blank.",
    todo: "Type how many alike there are; remove the row if there are none.",
  },
  "quantity-assumed": {
    level: "note",
    says: "The schedule has no column for the quantity: each row counts as one opening.",
    todo: "Add a column for the quantity if rows stand for several alike.",
  },
  "type-missing": {
    level: "stop",
    says: "Not counted: the opening has no type.",
    todo: "Type one of the kit book's: {types}.",
  },
  "type-unknown": {
    level: "stop",
    says: "Not counted: the kit book has no opening type {found}.",
    todo: "{guess}It has {types}.",
  },
  "type-guessed": {
    level: "note",
    says: "The type {found} was taken as {type}.",
    todo: "Type the kit book's name for it to be sure.",
  },
  "size-is-missing": {
    level: "stop",
    says: "Not counted: {column} is blank.",
    todo: `Type a length, such as 7'-6", 90 or 2286 mm.`,
  },
  "not-yes-or-no": {
    level: "stop",
    says: "Not counted: {column} is {found}, which says neither yes nor no.",
    todo: "Type yes or no.",
  },
} as const satisfies FindingTable;
