/** Counts by chance, and short words for counts in examples. */
import fc from "fast-check";
import { cents, inches, pieces, tenThousandths } from "../../../src/core/base/units";
import type { Count, IssuedLine, IssuedOpening } from "../../../src/core/revisions/issue";
import { pieceKey } from "../../../src/core/takeoff/partColumn";

export const fields: Count["fields"] = [
  { name: "width", label: "Width", kind: "length" },
  { name: "height", label: "Height", kind: "length" },
  { name: "hand", label: "Hand", kind: "text" },
];

export const opening = (
  mark: string,
  values: IssuedOpening["fields"] = {},
  more: Partial<IssuedOpening> = {},
): IssuedOpening => ({
  job: "Crib",
  mark,
  position: 0,
  quantity: 1,
  type: "Sliding door",
  isCounted: true,
  fields: values,
  ...more,
});

export const issuedLine = (
  item: string,
  quantity: number,
  more: Partial<IssuedLine> = {},
): IssuedLine => ({
  job: "Crib",
  item,
  size: [],
  quantity: pieces(quantity),
  spares: pieces(0),
  unitCost: tenThousandths(10_000),
  cost: cents(100 * quantity),
  ...more,
});

export const countWith = (
  openings: readonly IssuedOpening[],
  lines: readonly IssuedLine[] = [],
  more: Partial<Count> = {},
): Count => ({
  currency: "USD",
  isComplete: true,
  fields,
  openings: placed(openings),
  lines,
  ...more,
});

/** Each opening at its place among those of its job. */
function placed(openings: readonly IssuedOpening[]): readonly IssuedOpening[] {
  const counts = new Map<string, number>();
  return openings.map((each) => {
    const position = counts.get(each.job) ?? 0;
    counts.set(each.job, position + 1);
    return { ...each, position };
  });
}

const job = fc.constantFrom("Crib", "Cage", "crib 2");
const mark = fc.constantFrom("A-1", "A-2", "A-10", "A-11", "B-1", "B1", "");
const value = fc.option(fc.constantFrom(36, 48, 84.5, "left", "right", true), { nil: undefined });

const anyOpening = fc
  .record({
    job,
    mark,
    quantity: fc.option(fc.integer({ min: 1, max: 9 }), { nil: null }),
    type: fc.constantFrom("Sliding door", "Hinged door"),
    isCounted: fc.boolean(),
    values: fc.record({ width: value, height: value, hand: value }),
  })
  .map(({ values, ...each }): IssuedOpening => {
    const known = Object.entries(values).flatMap(([name, held]) =>
      held === undefined ? [] : [[name, held] as const],
    );
    return { ...each, position: 0, fields: Object.fromEntries(known) };
  });

const anyLine = fc.record({
  job,
  item: fc.constantFrom("NUT", "nut", "JAMB", "TRACK"),
  size: fc.constantFrom([], [inches(84)], [inches(48), inches(84)]),
  quantity: fc.nat(50).map(pieces),
  spares: fc.nat(5).map(pieces),
  unitCost: fc.option(fc.nat(9999).map(tenThousandths), { nil: null }),
  cost: fc.option(fc.nat(99_999).map(cents), { nil: null }),
});

export const anyCount: fc.Arbitrary<Count> = fc
  .record({
    openings: fc.array(anyOpening, { maxLength: 8 }),
    lines: fc.uniqueArray(anyLine, {
      maxLength: 8,
      selector: (line) => `${line.job.toLowerCase()} ${pieceKey(line.item, line.size)}`,
    }),
    currency: fc.constantFrom("USD", "USD", "EUR"),
    isComplete: fc.boolean(),
  })
  .map(({ openings, lines, ...more }) => countWith(openings, lines, more));
