/** What can be wrong with an alternate, or should be known of it. */
import type { FindingTable } from "../../base/finding";

export const alternateFindings = {
  "alternate-wrong": {
    level: "warn",
    says: "{name} is not offered: {reason}.",
    todo: "Mend its rows on the sheet of alternates.",
  },
  "alternate-job-unknown": {
    level: "warn",
    says: "{name} is for {found}, and there is no such job.",
    todo: "{guess}Type a job of the schedule, or leave it blank for every job.",
  },
  "alternate-column-unknown": {
    level: "warn",
    says: "{name} is not offered: it changes {found}, which is no column that can be changed.",
    todo: "{guess}The schedule's columns are {columns}.",
  },
  "alternate-openings-unknown": {
    level: "warn",
    says: "{name} is not offered for {job}: {found} is no mark and no opening type in it.",
    todo: "{guess}Type marks or types with commas between them, or leave it blank for all openings.",
  },
  "alternate-openings-nowhere": {
    level: "warn",
    says: "{name} is offered for no job: none has an opening marked {found}, or of that type.",
    todo: "Type marks or types with commas between them, or leave it blank for all openings.",
  },
  "alternate-openings-partly": {
    level: "warn",
    says: "{name} names {found}, which is no mark and no opening type of any job.",
    todo: "Type it as the schedule does. The others that it names are changed.",
  },
  "alternate-not-counted": {
    level: "warn",
    says: "{name} is not offered for {job}: with {found} in it opening {mark} cannot be counted. {message}",
    todo: "Type another value, or name in the column Openings those that it is for.",
  },
  "alternate-changes-nothing": {
    level: "note",
    says: "{name} changes nothing of what is counted for {job}.",
    todo: "See that the kit book counts by the column that it changes.",
  },
  "alternate-counts-more": {
    level: "warn",
    says: "What {name} adds to {job} holds openings that the base leaves out: {found}.",
    todo: "Mend their rows, or read its price as that of more openings.",
  },
  "alternate-not-priced": {
    level: "warn",
    says: "What {name} adds to {job} is only a least, and it is not quoted: not in it are {found}.",
    todo: "Give them a price and a weight in the items table.",
  },
} as const satisfies FindingTable;
