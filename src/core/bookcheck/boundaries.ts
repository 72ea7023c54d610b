/**
 * The boundary table: the exact values of one field at which anything that the book says of an opening
 * changes, all its other fields being given.
 *
 * The way: every formula's profile along the field gives the points at which it may change
 * (`candidateCuts`). Each is then tried, just below, at it and just above, and between all of them; what
 * trying finds that no profile told is narrowed down by halving. So no boundary is ever listed that is
 * none, and where all profiles are clear none is missing.
 */
import { between, finish, type Steps } from "../base/steps";
import type { FormulaValue } from "../formulas/value";
import type { KitBook, OpeningType, RowSource } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { ShowLength } from "../takeoff/describe";
import { candidateCuts } from "./candidateCuts";
import { openingState, stateKey, type OpeningState, type SpokenLimit } from "./openingState";
import type { Domain } from "./profile/profile";
import { eachAt, pieceAt, rowOutcomes, type RowOutcomes } from "./rowOutcomes";

export type BoundaryQuestion = {
  readonly book: KitBook;
  readonly type: OpeningType;
  /** The opening whose other fields are kept. */
  readonly opening: Opening;
  /** The name of the field that runs. */
  readonly field: string;
  /** Ends not included. */
  readonly domain: Domain;
  readonly show: ShowLength;
};

/** Lengths in inches, and plain numbers: from nothing to 50 ft. */
export const allSizes: Domain = { from: 0, to: 600 };

/** Something just below a boundary, at it and just above. */
export type Sides<Thing> = {
  readonly below: Thing;
  readonly at: Thing;
  readonly above: Thing;
};

export type Boundary = {
  readonly value: number;
  /** Which side the value itself goes with; `neither` where it is a case of its own. */
  readonly goesWith: "below" | "above" | "neither";
  readonly states: Sides<OpeningState>;
  /** Items of which not all sides count as many. */
  readonly items: readonly ({ readonly item: string } & Sides<number>)[];
  /** Sizes behind them that change, in words. */
  readonly sizes: readonly ({ readonly name: string } & Sides<string>)[];
  /** Limits that do not speak on all sides; the message is that of a side on which it does. */
  readonly limits: readonly (SpokenLimit & { readonly speaks: Sides<boolean> })[];
  /** Rows of the parts that do not do the same on all sides. */
  readonly rows: readonly RowSource[];
};

export type BoundaryTable = {
  readonly field: string;
  readonly domain: Domain;
  /** What holds below the first boundary. */
  readonly start: OpeningState;
  readonly boundaries: readonly Boundary[];
  /** Whether there can be no other boundary; else some stretches were only tried point by point. */
  readonly isProven: boolean;
};

/** All at once. @throws RangeError when the book has no such field. */
export const boundaryTable = (question: BoundaryQuestion): BoundaryTable =>
  finish(boundariesInSteps(question));

/** @throws RangeError when the book has no such field. */
export function* boundariesInSteps(question: BoundaryQuestion): Steps<BoundaryTable> {
  const { book, type, opening, field, domain, show } = question;
  const slot = book.fields.findIndex(({ name }) => name === field);
  if (slot < 0) throw new RangeError(`The book has no field ${field}`);
  const outcomesAt = (points: readonly number[]): RowOutcomes =>
    rowOutcomes(
      book,
      type,
      points.map((point) => withField(opening, field, point)),
      show,
    );
  const given = outcomesAt([(domain.from + domain.to) / 2]).take;
  const values = given.columns.map((column): FormulaValue => column[0] ?? null);
  const asked = { book, type, values, slot, domain };
  const { cuts, unclear } = yield* between(0, 0.6, candidateCuts(asked));
  const hidden = yield* between(0.6, 0.9, hiddenCuts(cuts, unclear, domain, outcomesAt));
  const all = [...cuts, ...hidden];
  const around = triples(
    all.toSorted((one, other) => one - other),
    domain,
  );
  const outcomes = outcomesAt(around.flatMap(({ below, at, above }) => [below, at, above]));
  const boundaries = around.flatMap(({ at: value }, index) => {
    const rows = { below: 3 * index, at: 3 * index + 1, above: 3 * index + 2 };
    const keys = mapSides(rows, (row) => stateKey(outcomes, row));
    if (keys.below === keys.at && keys.at === keys.above) return [];
    return [boundaryOf(value, keys, rows, outcomes, show)];
  });
  const first = boundaries[0];
  return {
    field,
    domain,
    start:
      first?.states.below ?? openingState(outcomesAt([(domain.from + domain.to) / 2]), 0, show),
    boundaries,
    isProven: unclear.length === 0,
  };
}

/** The opening with another value in a field. */
export const withField = (opening: Opening, field: string, value: FormulaValue): Opening => ({
  ...opening,
  fields: { ...opening.fields, [field]: value },
});

/** The same of each side. */
export const mapSides = <From, To>(sides: Sides<From>, to: (from: From) => To): Sides<To> => ({
  below: to(sides.below),
  at: to(sides.at),
  above: to(sides.above),
});

/** How far beside a point "just below" and "just above" are: nearer than any tape tells. */
const beside = 1e-6;

function triples(points: readonly number[], { from, to }: Domain): readonly Sides<number>[] {
  return points.map((at, index) => {
    const room = Math.min(at - (points[index - 1] ?? from), (points[index + 1] ?? to) - at);
    const step = Math.min(beside * Math.max(1, Math.abs(at)), room / 3);
    return { below: at - step, at, above: at + step };
  });
}

function boundaryOf(
  value: number,
  keys: Sides<string>,
  rows: Sides<number>,
  outcomes: RowOutcomes,
  show: ShowLength,
): Boundary {
  const states = mapSides(rows, (row) => openingState(outcomes, row, show));
  const items = namesIn(states, ({ items: of }) => of).map((item) => ({
    item,
    ...mapSides(states, (state) => state.items.get(item) ?? 0),
  }));
  const sizes = namesIn(states, ({ sizes: of }) => of).map((name) => ({
    name,
    ...mapSides(states, (state) => state.sizes.get(name) ?? ""),
  }));
  return {
    value,
    goesWith: keys.at === keys.below ? "below" : keys.at === keys.above ? "above" : "neither",
    states,
    items: items.filter(differs),
    sizes: sizes.filter(differs),
    limits: limitChanges(states),
    rows: outcomes.parts
      .filter(({ column, faults }) =>
        differs(
          mapSides(rows, (row) => {
            const item = pieceAt(column, row)?.item ?? "";
            return `${faults.get(row)?.key ?? ""} ${eachAt(column, row)} ${item}`;
          }),
        ),
      )
      .map(({ column }) => column.part.source),
  };
}

const differs = ({ below, at, above }: Sides<string | number | boolean>): boolean =>
  below !== at || at !== above;

const namesIn = (
  { below, at, above }: Sides<OpeningState>,
  of: (state: OpeningState) => ReadonlyMap<string, unknown>,
): readonly string[] => [...new Set([below, at, above].flatMap((state) => [...of(state).keys()]))];

function limitChanges(states: Sides<OpeningState>): Boundary["limits"] {
  const spoken = new Map<RowSource, SpokenLimit>();
  for (const { limits } of [states.below, states.above, states.at]) {
    for (const limit of limits) spoken.set(limit.source, limit);
  }
  return [...spoken.values()]
    .map((limit) => ({
      ...limit,
      speaks: mapSides(states, ({ limits }) =>
        limits.some(({ source }) => source === limit.source),
      ),
    }))
    .filter(({ speaks }) => differs(speaks));
}

/** Points tried within a stretch that is unclear. */
const triesInUnclear = 4096;

/** Boundaries that no profile told, found by trying between the cuts and narrowed down. */
function* hiddenCuts(
  cuts: readonly number[],
  unclear: readonly Domain[],
  domain: Domain,
  outcomesAt: (points: readonly number[]) => RowOutcomes,
): Steps<readonly number[]> {
  const gaps = [...cuts, domain.to].map((to, index) => ({
    from: cuts[index - 1] ?? domain.from,
    to,
  }));
  const spans = [
    ...gaps.map((gap) => ({ gap, tries: 3 })),
    ...unclear.map((gap) => ({ gap, tries: triesInUnclear })),
  ];
  const found: number[] = [];
  for (const [index, { gap, tries }] of spans.entries()) {
    yield index / spans.length;
    const step = (gap.to - gap.from) / (tries + 1);
    const points = Array.from({ length: tries }, (_, point) => gap.from + (point + 1) * step);
    const outcomes = outcomesAt(points);
    const keys = points.map((_, row) => stateKey(outcomes, row));
    for (const [point, key] of keys.entries()) {
      const [from, to, next] = [points[point], points[point + 1], keys[point + 1]];
      if (from === undefined || to === undefined || next === undefined || key === next) continue;
      const isCut = cuts.some((cut) => cut > from && cut < to);
      if (!isCut) found.push(halved({ from, to }, key, outcomesAt));
    }
  }
  return found;
}

/** The point between `from` and `to` at which the key stops being `before`, at its plainest. */
function halved(
  { from, to }: Domain,
  before: string,
  outcomesAt: (points: readonly number[]) => RowOutcomes,
): number {
  let [low, high] = [from, to];
  while (high - low > 1e-9 * Math.max(1, Math.abs(high))) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (stateKey(outcomesAt([middle]), 0) === before) low = middle;
    else high = middle;
  }
  for (const parts of [1, 2, 4, 8, 16, 32, 64, 100, 1000]) {
    const plain = Math.round(high * parts) / parts;
    if (Math.abs(plain - high) <= 2e-9 * Math.max(1, Math.abs(high))) return plain;
  }
  return high;
}
