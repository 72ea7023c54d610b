/**
 * Openings of two counts: which were added, removed and changed.
 *
 * An opening is the same where its job and mark are. One that is gone and one that is new in the same
 * job, likely enough the same under another mark, are a pair to confirm: a guess until a person says.
 */
import { jobKey } from "../takeoff/takeOff";
import { compareNames } from "../base/textOrder";
import type { Field } from "../kitbook/fields";
import type { Count, IssuedOpening, IssuedValue } from "./issue";
import { openingLikeness } from "./likeness";

export type OpeningField = Pick<Field, "name" | "label" | "kind">;

/** `null` is blank. */
export type FieldChange = {
  readonly field: OpeningField;
  readonly from: IssuedValue | null;
  readonly to: IssuedValue | null;
};

/** One opening in both counts. `changes` is empty only where its mark alone is another. */
export type ChangedOpening = {
  readonly from: IssuedOpening;
  readonly to: IssuedOpening;
  readonly changes: readonly FieldChange[];
};

/** What a person says of two marks of a job, the older one first. */
export type MarkAnswer = {
  readonly job: string;
  readonly from: string;
  readonly to: string;
  readonly isSame: boolean;
};

export type OpeningDifferences = {
  readonly added: readonly IssuedOpening[];
  readonly removed: readonly IssuedOpening[];
  readonly changed: readonly ChangedOpening[];
  /** Marks that a person said are one opening. */
  readonly renamed: readonly ChangedOpening[];
  /** Likely the same under another mark, the likeliest first; in none of the lists above. */
  readonly guesses: readonly (ChangedOpening & { readonly likeness: number })[];
};

/** Below this, two openings are taken to be two. */
const leastLikeness = 0.6;
/** So many pairs of one job are looked at; a job with more is not guessed at. */
const mostPairs = 250_000;

export function compareOpenings(
  from: Count,
  to: Count,
  answers: readonly MarkAnswer[],
): OpeningDifferences {
  const fields = fieldsOf(from, to);
  const older = byMark(from.openings);
  const newer = byMark(to.openings);
  const both = [...older].flatMap(([key, one]): readonly ChangedOpening[] => {
    const other = newer.get(key);
    return other === undefined ? [] : [changedOpening(one, other, fields)];
  });
  const removed = new Map([...older].filter(([key]) => !newer.has(key)));
  const added = new Map([...newer].filter(([key]) => !older.has(key)));

  const said = new Map(answers.map((answer) => [answerKey(answer), answer.isSame]));
  const pairs = pairsByJob(removed, added).map((pair) => ({
    ...pair,
    isSame: said.get(answerKey({ job: pair.from.job, from: pair.from.mark, to: pair.to.mark })),
  }));
  const renamed = takePairs(
    pairs.filter(({ isSame }) => isSame === true),
    removed,
    added,
  );
  const likely = pairs
    .filter(({ isSame }) => isSame === undefined)
    .map((pair) => ({ ...pair, likeness: openingLikeness(pair.from, pair.to) }))
    .filter(({ likeness }) => likeness >= leastLikeness)
    .sort((a, b) => b.likeness - a.likeness || compareNames(pairName(a), pairName(b)));
  const guesses = takePairs(likely, removed, added);
  return {
    added: [...added.values()].sort((a, b) => compareNames(nameOf(a), nameOf(b))),
    removed: [...removed.values()].sort((a, b) => compareNames(nameOf(a), nameOf(b))),
    changed: both.filter(({ changes }) => changes.length > 0).sort(byName),
    renamed: renamed.map((pair) => changedOpening(pair.from, pair.to, fields)).sort(byName),
    guesses: guesses.map((pair) => ({
      ...changedOpening(pair.from, pair.to, fields),
      likeness: pair.likeness,
    })),
  };
}

type Openings = Map<string, IssuedOpening>;

/** A mark that is used twice in a job is told apart by which of them it is. */
function byMark(openings: readonly IssuedOpening[]): Openings {
  const found: Openings = new Map();
  for (const opening of openings) {
    const name = `${jobKey(opening.job)}\n${markKey(opening.mark)}`;
    let count = 1;
    while (found.has(`${name}\n${count}`)) count += 1;
    found.set(`${name}\n${count}`, opening);
  }
  return found;
}

type Pair = {
  readonly oldKey: string;
  readonly newKey: string;
  readonly from: IssuedOpening;
  readonly to: IssuedOpening;
};

/** Every opening that is gone with every one that is new in the same job. */
function pairsByJob(removed: Openings, added: Openings): readonly Pair[] {
  const addedTo = new Map<string, [string, IssuedOpening][]>();
  for (const [key, opening] of added) {
    const job = addedTo.get(jobKey(opening.job)) ?? [];
    job.push([key, opening]);
    addedTo.set(jobKey(opening.job), job);
  }
  const removedFrom = new Map<string, number>();
  for (const { job } of removed.values()) {
    removedFrom.set(jobKey(job), (removedFrom.get(jobKey(job)) ?? 0) + 1);
  }
  return [...removed].flatMap(([oldKey, from]): readonly Pair[] => {
    const others = addedTo.get(jobKey(from.job)) ?? [];
    if (others.length * (removedFrom.get(jobKey(from.job)) ?? 0) > mostPairs) return [];
    return others.map(([newKey, to]) => ({ oldKey, newKey, from, to }));
  });
}

/** The pairs in their order, but for those of which an opening is taken; takes both from the lists. */
function takePairs<Taken extends Pair>(
  pairs: readonly Taken[],
  removed: Openings,
  added: Openings,
): readonly Taken[] {
  return pairs.filter(({ oldKey, newKey }) => {
    if (!removed.has(oldKey) || !added.has(newKey)) return false;
    removed.delete(oldKey);
    added.delete(newKey);
    return true;
  });
}

/** Fields of either count, each once; quantity, type and whether it was counted stand first. */
function fieldsOf(from: Count, to: Count): readonly OpeningField[] {
  const fields = new Map<string, OpeningField>();
  const known = [...from.fields, ...to.fields].sort((a, b) => compareNames(a.label, b.label));
  for (const { name, label, kind } of known) {
    if (!fields.has(name)) fields.set(name, { name, label, kind });
  }
  return [...fields.values()];
}

const ownFields = {
  quantity: { name: "quantity", label: "Quantity", kind: "number" },
  type: { name: "type", label: "Type", kind: "text" },
  isCounted: { name: "counted", label: "Counted", kind: "yesNo" },
} as const;

function changedOpening(
  from: IssuedOpening,
  to: IssuedOpening,
  fields: readonly OpeningField[],
): ChangedOpening {
  const own = [
    { field: ownFields.quantity, from: from.quantity, to: to.quantity },
    { field: ownFields.type, from: from.type, to: to.type },
    { field: ownFields.isCounted, from: from.isCounted, to: to.isCounted },
  ];
  const others = fields.map((field) => ({
    field,
    from: valueOf(from, field.name),
    to: valueOf(to, field.name),
  }));
  return { from, to, changes: [...own, ...others].filter((each) => each.from !== each.to) };
}

const valueOf = ({ fields }: IssuedOpening, name: string): IssuedValue | null =>
  Object.hasOwn(fields, name) ? (fields[name] ?? null) : null;

const markKey = (mark: string): string => mark.trim().replace(/\s+/g, " ").toLowerCase();

const answerKey = ({ job, from, to }: Pick<MarkAnswer, "job" | "from" | "to">): string =>
  [jobKey(job), markKey(from), markKey(to)].join("\n");

/** The same whichever of two openings is the older one, so that a comparison turns round whole. */
const pairName = ({ from, to }: Pick<ChangedOpening, "from" | "to">): string =>
  [nameOf(from), nameOf(to)].sort(compareNames).join("\n");

const nameOf = ({ job, mark, position }: IssuedOpening): string =>
  [jobKey(job), mark, String(position).padStart(9, "0")].join("\t");

const byName = (one: ChangedOpening, other: ChangedOpening): number =>
  compareNames(pairName(one), pairName(other));
