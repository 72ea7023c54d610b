/**
 * The hanging loads of every opening: the weight of its leaf, the worst load on a trolley and on a
 * hanger, bending and sinking of the track, each beside the capacity that was entered for it. A
 * capacity can be typed over on the sheet; the verdict follows.
 */
import { finish, type Steps } from "../../core/base/steps";
import {
  loadCaution,
  loadKinds,
  loadMethod,
  type LoadCheck,
  type LoadKind,
} from "../../core/pricing/loads/loadCheck";
import { worstOf } from "../../core/pricing/loads/worstLoads";
import type { MeasureKind, MeasureStyle } from "../../core/measures/measures";
import { measureText, shownAmount, shownUnit } from "../../core/measures/writeMeasure";
import type { JobLoads, OpeningLoads } from "../../core/pricing/loads/openingLoads";
import type { Drawing, DrawnCell, DrawnRow, Look, NumberFormat } from "../../workbook/drawing";
import { blank, blankRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow, joinedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at } from "../reference";

type KindWords = {
  readonly load: string;
  readonly most: string;
  readonly measure: MeasureKind;
  readonly format: NumberFormat;
};

const kindWords: Readonly<Record<LoadKind, KindWords>> = {
  trolley: {
    load: "Largest trolley load",
    most: "One carries",
    measure: "weight",
    format: "weight",
  },
  hanger: { load: "Largest hanger load", most: "One carries", measure: "weight", format: "weight" },
  track: { load: "Bending of the track", most: "It takes", measure: "bending", format: "count" },
  joint: { load: "Bending at a joint", most: "It takes", measure: "bending", format: "count" },
  deflection: {
    load: "Sinking of the track",
    most: "It may sink",
    measure: "length",
    format: "decimal",
  },
};

/** A newton metre is nearly nine inch-pounds. */
const formatOf = (kind: LoadKind, style: MeasureStyle): NumberFormat =>
  style === "metric" && kindWords[kind].measure === "bending" ? "weight" : kindWords[kind].format;

const unitOf = (kind: MeasureKind, style: MeasureStyle): string => shownUnit(kind, style).name;

/** As it is shown; digits beyond the twelfth are what converting leaves. */
const shown = (amount: number, kind: MeasureKind, style: MeasureStyle): number =>
  style === "pounds" ? amount : Number(shownAmount(amount, kind, style).toPrecision(12));

const headingsIn = (style: MeasureStyle) => [
  { words: "Mark", width: 12 },
  { words: "How many", width: 7, numbers: true },
  { words: "Type", width: 16 },
  { words: "Leaves", width: 7, numbers: true },
  { words: `One leaf weighs, ${unitOf("weight", style)}`, width: 9, numbers: true },
  ...loadKinds.flatMap((kind) => {
    const { load, most, measure } = kindWords[kind];
    const unit = unitOf(measure, style);
    return [
      { words: `${load}, ${unit}`, width: 10, numbers: true },
      { words: `${most}, ${unit}`, width: 8, numbers: true },
    ];
  }),
  { words: `Past the last hanger, ${unitOf("length", style)}`, width: 9, numbers: true },
  { words: "Verdict", width: 12 },
  { words: "Worst places", width: 36 },
];
const widths = headingsIn("pounds").map((column) => column.width);
const width = widths.length;
const firstKind = 5;
const beyondColumn = firstKind + 2 * loadKinds.length;

/** Openings of one step. */
const slice = 5;

/** The sheet, drawn in short steps. */
export function* drawHangingLoads(
  jobs: readonly JobLoads[],
  style: MeasureStyle = "pounds",
): Steps<Drawing> {
  const rows: DrawnRow[] = [
    wordsRow("Hanging loads", "title", width, { height: 26 }),
    wordsRow(loadCaution, "caution", width),
    wordsRow(
      `${loadMethod(style)} Capacities are what was entered from the supplier.`,
      "subtitle",
      width,
    ),
    fittedRow(headingRow(headingsIn(style)), widths),
  ];
  const heading = rows.length - 1;
  // A job begins a page: its engineer gets those.
  const breaks: number[] = [];
  const all = jobs.reduce((sum, { openings }) => sum + openings.length, 0);
  let done = 0;
  /** What leaves are weighed from, by its words: of many openings it is the same. */
  const weighed = new Map<string, DrawnRow>();
  for (const { job, openings } of jobs) {
    if (openings.length === 0) continue;
    if (rows.length > heading + 1) {
      rows.push(blankRow);
      breaks.push(rows.length);
    }
    rows.push(wordsRow(job, "group", width));
    for (const loads of openings) {
      if (done % slice === 0) yield done / all;
      done += 1;
      const words = weighedWords(loads, style);
      const below = weighed.get(words) ?? joinedRow(words, "muted", widths);
      weighed.set(words, below);
      rows.push(fittedRow(openingRow(loads, rows.length, style), widths), below);
    }
  }
  return {
    name: "Hanging loads",
    mark: { kind: "hanging loads", subject: "" },
    columnWidths: widths,
    rows,
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      breaksBefore: breaks,
      subject: "",
      title: "Hanging loads",
      caution: loadCaution,
    }),
  };
}

function openingRow(one: OpeningLoads, place: number, style: MeasureStyle): DrawnRow {
  const { opening, leaves, leafWeight, loads, checked } = one;
  const worst = loadKinds.map((kind) => ({ kind, check: worstOf(checked.checks, kind) }));
  const beyond = loads?.beyond ?? 0;
  const look = lookOf(checked.verdict);
  return row(
    text(opening.mark),
    number(opening.quantity, "count"),
    text(opening.type),
    number(leaves, "count"),
    leafWeight === null ? text("not known") : number(shown(leafWeight, "weight", style), "weight"),
    ...worst.flatMap(({ kind, check }) => {
      const { measure } = kindWords[kind];
      const format = formatOf(kind, style);
      return (
        [
          ["load", "body"],
          ["capacity", "input"],
        ] as const
      ).map(([of, look]) => {
        const amount = check?.[of] ?? null;
        return figure(amount === null ? null : shown(amount, measure, style), format, look);
      });
    }),
    beyond === 0 ? blank() : number(shown(beyond, "length", style), "decimal"),
    loads === null
      ? text(checked.verdict, { look })
      : formula(verdictFormula(place, worst), checked.verdict, "general", { look }),
    text(wordsOf(one, worst, style)),
  );
}

/** Stands across the sheet below its opening. */
function weighedWords({ parts }: OpeningLoads, style: MeasureStyle): string {
  const weighed = parts.parts.map(({ name, because }) => `${name} ${because}`);
  return `All leaves together ${measureText(parts.weight, "weight", style, 1)}: ${weighed.join("; ")}`;
}

const figure = (value: number | null, format: NumberFormat, look: Look): DrawnCell =>
  value === null ? blank({ look }) : number(value, format, { look });

const lookOf = (verdict: OpeningLoads["checked"]["verdict"]): Look =>
  verdict === "over" ? "stop" : verdict === "within" ? "body" : "note";

type Worst = readonly { readonly kind: LoadKind; readonly check: LoadCheck | null }[];

/** Over before not checked before within, as the core says it; a kind that an opening does not have is left out. */
function verdictFormula(place: number, worst: Worst): string {
  const pairs = worst.flatMap(({ check }, index) =>
    check === null
      ? []
      : [[at(place, firstKind + 2 * index), at(place, firstKind + 2 * index + 1)] as const],
  );
  const capacities = pairs.map(([, most]) => most).join(",");
  const over = pairs.map(
    ([load, most]) => `AND(COUNT(${load},${most})=2,${load}-${most}>${most}/1000000000)`,
  );
  const known = pairs.map(([load, most]) => `COUNT(${load},${most})=2`);
  return (
    `=IF(COUNT(${capacities})=0,"not checked",` +
    `IF(OR(${at(place, beyondColumn)}>0,${over.join(",")}),"over",` +
    `IF(AND(${known.join(",")}),"within","not checked")))`
  );
}

function wordsOf(
  { leafWeight, parts, loads, checked }: OpeningLoads,
  worst: Worst,
  style: MeasureStyle,
): string {
  if (leafWeight === null) return `No weight is given for ${parts.notWeighed.join(", ")}.`;
  const places = worst.flatMap(({ check }) =>
    typeof check?.load === "number" ? [check.where] : [],
  );
  const beyond =
    loads !== null && loads.beyond > 0
      ? [`a trolley runs ${measureText(loads.beyond, "length", style, 1)} past the last hanger`]
      : [];
  const [doubt] = loads === null ? checked.findings : [];
  return [
    [...new Set([...places, ...beyond])].join("; "),
    ...(doubt === undefined ? [] : [doubt.message]),
  ]
    .filter((words) => words !== "")
    .join(". ");
}

/** The same at once. */
export const hangingLoadsSheet = (...of: Parameters<typeof drawHangingLoads>): Drawing =>
  finish(drawHangingLoads(...of));
