/**
 * What a firm sets for its prices, one row each: rates, times, percentages, rules. The rates sheet,
 * its reader and the starter values come from these rows.
 *
 * Every starter value is invented, and the sheet says so.
 */

/** What a rate's value must be. `money` is an amount, `rate` a price per something, to four decimals. */
export type RateKind = "money" | "rate" | "percent" | "number" | "count" | "choice" | "groups";

export type RateRow = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly kind: RateKind;
  /** As a person would type it; the empty text where nothing is set. */
  readonly starter: string | number;
  readonly says: string;
  /** The most that may be typed, percentages in percent; `mostOf` its kind where absent. */
  readonly most?: number;
  /** What may be typed, for `choice`, or named, for `groups`. */
  readonly choices?: readonly string[];
};

/** The most that may be typed where a row does not say: beyond it is a slip, and figures overflow. */
export const mostOf = { percent: 1000, number: 100_000, count: 1000 } as const;

const directGroups = ["material", "freight", "labour", "equipment", "subcontract", "allowance"];

export const rateRows = [
  {
    key: "leadPeople",
    label: "Lead installers on the crew",
    unit: "people",
    kind: "count",
    starter: 1,
    says: "",
  },
  {
    key: "leadRate",
    label: "Lead installer, wage",
    unit: "per hour",
    kind: "rate",
    starter: 41.5,
    says: "",
  },
  {
    key: "installerPeople",
    label: "Installers on the crew",
    unit: "people",
    kind: "count",
    starter: 1,
    says: "",
  },
  {
    key: "installerRate",
    label: "Installer, wage",
    unit: "per hour",
    kind: "rate",
    starter: 33.25,
    says: "",
  },
  {
    key: "burden",
    label: "Labour burden",
    unit: "% of wages",
    kind: "percent",
    starter: "38 %",
    says: "taxes, insurance and benefits on top of wages",
  },
  {
    key: "unpackMinutes",
    label: "Unpack and lay out",
    unit: "minutes per opening",
    kind: "number",
    starter: 12,
    says: "",
    most: 1440,
  },
  {
    key: "adjustMinutes",
    label: "Adjust and try",
    unit: "minutes per opening",
    kind: "number",
    starter: 10,
    says: "",
    most: 1440,
  },
  {
    key: "travelMinutes",
    label: "Travel",
    unit: "minutes per person and day",
    kind: "number",
    starter: 60,
    says: "",
    most: 1440,
  },
  {
    key: "setUpMinutes",
    label: "Set up",
    unit: "minutes per day",
    kind: "number",
    starter: 30,
    says: "",
    most: 1440,
  },
  {
    key: "cleanUpMinutes",
    label: "Clean up",
    unit: "minutes per day",
    kind: "number",
    starter: 20,
    says: "",
    most: 1440,
  },
  {
    key: "dayHours",
    label: "Working day",
    unit: "hours",
    kind: "number",
    starter: 7.5,
    says: "of one person",
    most: 24,
  },
  {
    key: "above8",
    label: "Work above 8 ft takes",
    unit: "times as long",
    kind: "number",
    starter: 1.15,
    says: "by the height of the post",
    most: 10,
  },
  {
    key: "above10",
    label: "Work above 10 ft takes",
    unit: "times as long",
    kind: "number",
    starter: 1.3,
    says: "by the height of the post",
    most: 10,
  },
  {
    key: "site",
    label: "This site takes",
    unit: "times as long",
    kind: "number",
    starter: 1,
    says: "1 is an ordinary site",
    most: 10,
  },
  {
    key: "learning",
    label: "Each doubling of alike openings takes",
    unit: "% of the time",
    kind: "percent",
    starter: "",
    says: "blank for no learning; 90 % is a ninety-percent unit curve",
    most: 100,
  },
  {
    key: "palletCarries",
    label: "One pallet carries",
    unit: "lb",
    kind: "number",
    starter: 1500,
    says: "blank ships loose",
  },
  {
    key: "palletWeight",
    label: "An empty pallet weighs",
    unit: "lb",
    kind: "number",
    starter: 45,
    says: "",
  },
  {
    key: "freight0",
    label: "Freight under 500 lb",
    unit: "per hundredweight",
    kind: "rate",
    starter: 46,
    says: "blank: freight is not priced",
  },
  {
    key: "freight500",
    label: "Freight from 500 lb",
    unit: "per hundredweight",
    kind: "rate",
    starter: 38.5,
    says: "",
  },
  {
    key: "freight1000",
    label: "Freight from 1,000 lb",
    unit: "per hundredweight",
    kind: "rate",
    starter: 31,
    says: "",
  },
  {
    key: "freight2000",
    label: "Freight from 2,000 lb",
    unit: "per hundredweight",
    kind: "rate",
    starter: 26.75,
    says: "",
  },
  {
    key: "freight5000",
    label: "Freight from 5,000 lb",
    unit: "per hundredweight",
    kind: "rate",
    starter: 21.4,
    says: "",
  },
  {
    key: "freightLeast",
    label: "Least freight charge",
    unit: "",
    kind: "money",
    starter: 115,
    says: "",
  },
  {
    key: "equipment",
    label: "Equipment",
    unit: "",
    kind: "money",
    starter: 0,
    says: "lifts, rented tools",
  },
  { key: "subcontract", label: "Subcontract", unit: "", kind: "money", starter: 0, says: "" },
  { key: "allowance", label: "Allowances", unit: "", kind: "money", starter: 0, says: "" },
  { key: "overhead", label: "Overhead", unit: "%", kind: "percent", starter: "12 %", says: "" },
  {
    key: "overheadOf",
    label: "Overhead is of",
    unit: "",
    kind: "groups",
    starter: "material, labour",
    says: "costs named with commas",
    choices: directGroups,
  },
  {
    key: "contingency",
    label: "Contingency",
    unit: "%",
    kind: "percent",
    starter: "3 %",
    says: "",
  },
  {
    key: "contingencyOf",
    label: "Contingency is of",
    unit: "",
    kind: "groups",
    starter: "material, freight, labour, equipment, subcontract",
    says: "costs named with commas",
    choices: [...directGroups, "overhead"],
  },
  {
    key: "taxPaid",
    label: "Sales tax that we pay",
    unit: "% of material",
    kind: "percent",
    starter: "",
    says: "blank where we buy for resale",
  },
  {
    key: "taxCharged",
    label: "Sales tax that we charge",
    unit: "% of the taxable part",
    kind: "percent",
    starter: "",
    says: "on top of the price; blank for none",
  },
  {
    key: "taxable",
    label: "Taxable part of the price",
    unit: "%",
    kind: "percent",
    starter: "100 %",
    says: "",
    most: 100,
  },
  {
    key: "bond",
    label: "Bond",
    unit: "% of the price",
    kind: "percent",
    starter: "",
    says: "blank for none",
  },
  {
    key: "method",
    label: "Price by",
    unit: "",
    kind: "choice",
    starter: "margin",
    says: "markup = profit / cost; margin = profit / price; typed",
    choices: ["markup", "margin", "typed"],
  },
  {
    key: "methodValue",
    label: "Markup, margin or typed price",
    unit: "% or amount",
    kind: "number",
    starter: "24 %",
    says: "a percentage, or the price itself where it is typed",
  },
  {
    key: "target",
    label: "Target margin",
    unit: "% of the price",
    kind: "percent",
    starter: "24 %",
    says: "margin = profit / price",
    most: 90,
  },
  {
    key: "roundTo",
    label: "Round the price to",
    unit: "whole currency units",
    kind: "number",
    starter: 10,
    says: "0 for none",
  },
  {
    key: "roundWay",
    label: "Rounding",
    unit: "",
    kind: "choice",
    starter: "up",
    says: "",
    choices: ["up", "nearest"],
  },
  {
    key: "sparesPaidBy",
    label: "Spares are paid by",
    unit: "",
    kind: "choice",
    starter: "job",
    says: "",
    choices: ["job", "stock"],
  },
  {
    key: "priceAge",
    label: "A price is old after",
    unit: "days",
    kind: "number",
    starter: 180,
    says: "",
  },
] as const satisfies readonly RateRow[];

export type RateKey = (typeof rateRows)[number]["key"];

/** Where every starter value comes from. */
export const rateBasis = "invented starter: replace with your own";
