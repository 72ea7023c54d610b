/**
 * Sizes of one item in one job that are closer than a tape tells: 7 ft, and 2134 mm. They are counted
 * as typed, so they are made, bought and bagged apart; mostly one of them was meant.
 */
import { makeFinding, type Finding } from "../base/finding";
import { inches, type Inches } from "../base/units";
import { writeLength } from "../lengths/writeLength";
import type { ShowLength } from "./describe";
import { aboutFormula } from "./faults";
import { sizeFormulasOf } from "./partColumn";
import { openingAt } from "./take";
import type { JobTakeOff, Line } from "./takeOff";
import { takeOffFindings } from "./takeOffFindings";

/**
 * Half of the sixteenth that shops measure to (common practice, no source), so that widths a sixteenth
 * apart may be halved. A length in whole millimetres is off by less: half of one is 0.0197 in.
 */
const closest = inches(1 / 32);

/** Two lines of one item; `odd` is the one of fewer pieces, of as many the one that no tape shows. */
type NearPair = { readonly odd: Line; readonly other: Line };

/** For each opening with such a size one finding, at the cell that the size comes from. */
export function nearSizes(
  jobs: readonly Pick<JobTakeOff, "job" | "lines">[],
  show: ShowLength,
): readonly Finding[] {
  return jobs.flatMap(({ lines }) => {
    const findings = new Map<string, Finding>();
    for (const pair of nearPairs(lines)) {
      const way = apartOn(pair);
      const [found, there] = twoLengths(pair, way, show);
      const values = { item: pair.odd.item, there, closest: show(closest) };
      for (const { take, part, rows } of pair.odd.counts) {
        const formula = sizeFormulasOf(part)[way];
        if (formula === undefined) continue;
        const about = aboutFormula(take, formula);
        for (const row of rows) {
          const { place, mark } = openingAt(take, row);
          const opening = `${place.sheet}\n${place.row}\n${mark}`;
          if (findings.has(opening)) continue;
          const details = { ...about(row), found, values };
          findings.set(opening, makeFinding(takeOffFindings, "size-nearly-alike", details));
        }
      }
    }
    return [...findings.values()];
  });
}

function nearPairs(lines: readonly Line[]): readonly NearPair[] {
  const byItem = new Map<string, Line[]>();
  for (const line of lines) {
    if (line.size.length === 0) continue;
    const key = `${line.item.toLowerCase()} ${line.size.length}`;
    const alike = byItem.get(key);
    if (alike === undefined) byItem.set(key, [line]);
    else alike.push(line);
  }
  return [...byItem.values()].flatMap((alike) => {
    const ascending = alike.toSorted((a, b) => firstOf(a) - firstOf(b));
    return ascending.flatMap((line, index) => {
      const pairs: NearPair[] = [];
      for (let next = index + 1; next < ascending.length; next += 1) {
        const other = ascending[next];
        if (other === undefined || firstOf(other) - firstOf(line) >= closest) break;
        if (!isNear(line, other)) continue;
        pairs.push(isOdder(line, other) ? { odd: line, other } : { odd: other, other: line });
      }
      return pairs;
    });
  });
}

const isOdder = (one: Line, other: Line): boolean =>
  one.quantity === other.quantity ? !isOnTape(one) : one.quantity < other.quantity;

const isOnTape = ({ size }: Line): boolean => size.every((length) => (length * 16) % 1 === 0);

const firstOf = ({ size }: Line): number => size[0] ?? 0;

const apart = (one: Line, other: Line, way: number): number =>
  Math.abs((one.size[way] ?? 0) - (other.size[way] ?? 0));

const isNear = (one: Line, other: Line): boolean =>
  one.size.every((_, way) => apart(one, other, way) < closest);

/** The way in which the sizes differ, the first of two: 0 is a length or a width, 1 a height. */
const apartOn = ({ odd, other }: NearPair): number =>
  Math.max(
    0,
    odd.size.findIndex((_, way) => apart(odd, other, way) > 0),
  );

/** Told apart where they would read the same, as sizes on a list are. */
function twoLengths(
  { odd, other }: NearPair,
  way: number,
  show: ShowLength,
): readonly [here: string, there: string] {
  const pair: readonly Inches[] = [odd.size[way] ?? inches(0), other.size[way] ?? inches(0)];
  const [here = "", there = ""] = pair.map(show);
  if (here !== there) return [here, there];
  const [exactHere = "", exactThere = ""] = pair.map((length) =>
    writeLength(length, { kind: "inches" }),
  );
  return [exactHere, exactThere];
}
