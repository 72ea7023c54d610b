/** An estimate -> what is frozen of it. */
import { between, finish, type Steps } from "../base/steps";
import { pieces } from "../base/units";
import type { Estimate } from "../estimate/estimate";
import type { JobEstimate } from "../estimate/jobEstimate";
import { isFormulaError, type FormulaValue } from "../formulas/value";
import { standardFields } from "../kitbook/fields";
import type { Opening } from "../openings/opening";
import type { MaterialLine } from "../pricing/material";
import { sumOf } from "../money/amounts";
import { pieceKey } from "../takeoff/partColumn";
import type { Count, IssuedLine, IssuedOpening, IssuedValue } from "./issue";

/** Fields that every opening has beside the others. */
const ownFields: ReadonlySet<string> = new Set(["job", "mark", "quantity", "type"]);

/** The count of all jobs. Openings are in the schedule's order, also those that gave no count. */
export const countOf = (estimate: Estimate, currency: string): Count =>
  finish(countInSteps(estimate, currency));

/** The same, a step at a time. */
export function* countInSteps(
  { jobs, kitBook, complete }: Estimate,
  currency: string,
): Steps<Count> {
  const openings: IssuedOpening[] = [];
  const lines: IssuedLine[] = [];
  for (const [place, job] of jobs.entries()) {
    const counting = between(place / jobs.length, (place + 1) / jobs.length, openingsOf(job));
    openings.push(...(yield* counting));
    lines.push(...linesOf(job));
  }
  return {
    currency,
    isComplete: complete,
    fields: (kitBook.fields.length === 0 ? standardFields : kitBook.fields)
      .filter(({ name }) => !ownFields.has(name))
      .map(({ name, label, kind }) => ({ name, label, kind })),
    openings,
    lines,
  };
}

/** So many openings are looked at in one step. */
const openingsInStep = 200;

function* openingsOf({ job, takeOff, uncounted }: JobEstimate): Steps<readonly IssuedOpening[]> {
  const stopped = new Set(takeOff.stopped);
  const read: { readonly row: number; readonly opening: Unplaced }[] = [];
  for (const opening of takeOff.openings) {
    if (read.length % openingsInStep === 0) yield read.length / takeOff.openings.length;
    const { mark, quantity, type, place } = opening;
    const isCounted = !stopped.has(opening);
    const fields = issuedFields(opening);
    read.push({ row: place.row, opening: { mark, quantity, type, isCounted, fields } });
  }
  const places = new Set(takeOff.openings.map(({ place }) => `${place.sheet}\n${place.row}`));
  const unread = uncounted
    .filter(({ place }) => !places.has(`${place.sheet}\n${place.row}`))
    .map(({ place, mark }) => ({
      row: place.row,
      opening: { mark, quantity: null, type: "", isCounted: false, fields: {} },
    }));
  return [...read, ...unread]
    .sort((one, other) => one.row - other.row)
    .map(({ opening }, position) => ({ job, position, ...opening }));
}

type Unplaced = Omit<IssuedOpening, "job" | "position">;

const issuedFields = ({ fields }: Opening): IssuedOpening["fields"] =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, value]) =>
      ownFields.has(name) ? [] : issuedValue(value).map((issued) => [name, issued] as const),
    ),
  );

/** One value, or none for a blank. */
function issuedValue(value: FormulaValue): readonly IssuedValue[] {
  if (isFormulaError(value)) return value.code === "missing" ? [] : [value.message];
  return value === null || value === "" ? [] : [value];
}

/** A line that was added by hand is put to the counted one of its item and size. */
function linesOf({ job, material }: JobEstimate): readonly IssuedLine[] {
  const lines = new Map<string, IssuedLine>();
  for (const each of material.lines) {
    const key = pieceKey(each.line.item, each.line.size);
    const before = lines.get(key);
    lines.set(key, before === undefined ? lineOf(job, each) : together(before, lineOf(job, each)));
  }
  return [...lines.values()];
}

const lineOf = (job: string, { line, item, spares, cost }: MaterialLine): IssuedLine => ({
  job,
  item: line.item,
  size: line.size,
  quantity: line.quantity,
  spares,
  unitCost: item?.unitCost ?? null,
  cost,
});

const together = (one: IssuedLine, other: IssuedLine): IssuedLine => ({
  ...one,
  quantity: pieces(one.quantity + other.quantity),
  spares: pieces(one.spares + other.spares),
  cost: one.cost === null || other.cost === null ? null : sumOf([one.cost, other.cost]),
});
