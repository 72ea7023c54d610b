/** What can be wrong in a kit book, besides what is wrong inside a formula. */
import type { FindingTable } from "../base/finding";

export const kitBookFindings = {
  "book-without-types": {
    level: "stop",
    says: "The kit book names no opening type.",
    todo: "Write an opening type such as Sliding door beside each row, or use the starter kit book.",
  },
  "book-type-empty": {
    level: "stop",
    says: "This row of the kit book names no opening type, so it is left out of every count.",
    todo: "Write an opening type, several with commas between, or * for all of them.",
  },
  "book-type-likeness": {
    level: "warn",
    says: 'The opening type "{found}" stands in {rows} of the kit book only, and there is one called "{other}".',
    todo: "Make them the same if they are meant to be.",
  },
  "book-type-without-parts": {
    level: "warn",
    says: 'The kit book has no parts for the opening type "{found}", so nothing is counted for it.',
    todo: "Add its parts, or correct the name.",
  },
  "book-cell-error": {
    level: "stop",
    says: "The cell shows {found}. A formula of the kit book is text, but the spreadsheet worked this one out.",
    todo: "Type an apostrophe in front of it, or format the cell as text and type it again.",
  },
  "book-cell-date": {
    level: "stop",
    says: "The spreadsheet made a date of what was typed: {found}.",
    todo: "Format the cell as text and type it again.",
  },
  "book-cell-empty": {
    level: "stop",
    says: "The {column} is missing.",
    todo: "Fill it in; the row is not used until then.",
  },
  "size-name-unusable": {
    level: "stop",
    says: 'No formula could use a size called "{found}".',
    todo: "Give it a name of letters, digits and _ that starts with a letter, such as leaf_width.",
  },
  "size-name-is-a-field": {
    level: "stop",
    says: '"{found}" is a column of the schedule, so a size cannot have this name.',
    todo: "Give the size another name.",
  },
  "size-hides-a-heading": {
    level: "warn",
    says: 'The schedule has a column "{heading}" and the kit book a size "{found}"; formulas use the size.',
    todo: "Rename one of them if formulas should use the column.",
  },
  "size-twice": {
    level: "stop",
    says: 'The opening type "{type}" already has a size "{found}"; this second one is not used.',
    todo: "Remove or rename one of them.",
  },
  "size-repeated": {
    level: "note",
    says: 'The size "{found}" stands twice for the opening type "{type}" with the same formula.',
    todo: "One of the rows can go.",
  },
  "size-unit-unknown": {
    level: "stop",
    says: 'The unit "{found}" is none that the kit book knows.',
    todo: "Write one of {known}.",
  },
  "size-wrong-kind": {
    level: "stop",
    says: 'The size "{size}" comes to {found}, which is not {wanted}.',
    todo: "Correct the formula or the unit.",
  },
  "size-cycle": {
    level: "stop",
    says: "These sizes need each other in a circle: {path}.",
    todo: "Work one of them out from fields of the schedule instead.",
  },
  "book-needs-bad-size": {
    level: "stop",
    says: 'This row needs the size "{size}", which cannot be worked out.',
    todo: "Correct that size; this row is not used until then.",
  },
  "book-needs-bad-chart": {
    level: "stop",
    says: 'This row needs the chart "{chart}", which has a bad row.',
    todo: "Correct that chart; this row is not used until then.",
  },
  "item-or-formula-empty": {
    level: "stop",
    says: "There is nothing after the = of this item.",
    todo: "Write an item's code, or = and a formula that gives one.",
  },
  "bag-empty": {
    level: "note",
    says: "This part goes into no bag.",
    todo: "Name the bag that the crew should find it in.",
  },
  "quantity-not-whole": {
    level: "stop",
    says: "The quantity is {found}, which is not a whole number from 0 up.",
    todo: "Write how many pieces one opening needs.",
  },
  "size-not-one-or-two": {
    level: "stop",
    says: "The size {found} has more than two measures.",
    todo: "Write one formula, or two with x between them and spaces around it: panel_width x height.",
  },
  "size-and-cut-length": {
    level: "stop",
    says: "This part has a size and a cut length.",
    todo: "Use the cut length for what is cut from stock, else the size, but not both.",
  },
  "level-unknown": {
    level: "stop",
    says: 'The level "{found}" is none that the kit book knows.',
    todo: "Write stop (not counted), warn (counted, likely wrong) or note.",
  },
  "message-name-unknown": {
    level: "stop",
    says: "The message shows {found}, and there is no size or field of that name.",
    todo: "{hint}",
  },
  "chart-name-empty": {
    level: "stop",
    says: "This entry belongs to no chart.",
    todo: "Write the name of its chart.",
  },
  "chart-match-unknown": {
    level: "stop",
    says: 'The match "{found}" is none that the kit book knows.',
    todo: "Write exact, or next up for the next larger entry.",
  },
  "chart-match-differs": {
    level: "stop",
    says: 'The chart "{chart}" matches {first} in an earlier row and {found} here.',
    todo: "Write the same match in every row of the chart.",
  },
  "chart-across-empty": {
    level: "stop",
    says: 'The chart "{chart}" is a two-way chart, and this entry has nothing across.',
    todo: "Write what the entry is for across, or take it out of all rows of the chart.",
  },
  "chart-key-unclear": {
    level: "stop",
    says: "{reason}",
    todo: "Write it so that it can be read in one way only.",
  },
  "chart-value-empty": {
    level: "warn",
    says: 'This entry of the chart "{chart}" has no value: looking there finds nothing.',
    todo: "Fill it in, or remove the row.",
  },
  "chart-entry-twice": {
    level: "stop",
    says: 'The chart "{chart}" has two entries for {found} with different values; neither is used.',
    todo: "Remove the wrong one.",
  },
  "chart-entry-repeated": {
    level: "note",
    says: 'The chart "{chart}" has the entry for {found} twice.',
    todo: "One of the rows can go.",
  },
  "chart-text-next-up": {
    level: "stop",
    says: 'The chart "{chart}" looks for the next larger number, and "{found}" stands among its numbers.',
    todo: "Write a number or a length, or make the chart's match exact.",
  },
  "chart-ways": {
    level: "stop",
    says: 'The chart "{chart}" has {has}, and this formula looks into it with {uses}.',
    todo: "Write CHART with the chart's name and one value for each way.",
  },
} as const satisfies FindingTable;

export type KitBookFindingCode = keyof typeof kitBookFindings;
