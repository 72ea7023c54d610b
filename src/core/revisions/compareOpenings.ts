/**
 * Openings of two counts: which were added, removed and changed.
 *
 * An opening is the same where its job and mark are. One that is gone and one that is new in the same
 * job, likely enough the same under another mark, are a pair to confirm: a guess until a person says.
 */
import { sortInSteps } from "../base/sortInSteps";
import { between, type Steps } from "../base/steps";
import { compareNames } from "../base/textOrder";
import type { Field } from "../kitbook/fields";
import type { Count, IssuedOpening, IssuedValue } from "./issue";
import { guessPairs } from "./guessPairs";
import {
  byMark,
  nameOf,
  pairKey,
  pairName,
  saidPairs,
  takePairs,
  type MarkAnswer,
  type MarkPair,
  type Openings,
} from "./markPairs";

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

export type OpeningDifferences = {
  readonly added: readonly IssuedOpening[];
  readonly removed: readonly IssuedOpening[];
  readonly changed: readonly ChangedOpening[];
  /** Marks that a person said are one opening. */
  readonly renamed: readonly ChangedOpening[];
  /** Likely the same under another mark, the likeliest first; in none of the lists above. */
  readonly guesses: readonly (ChangedOpening & { readonly likeness: number })[];
  /** Marks, one gone and one new, that a person said are two openings. */
  readonly refused: readonly MarkPair[];
  /** Jobs of which too many openings came and went to look for the same under another mark. */
  readonly notGuessed: readonly string[];
};

/** So many openings are compared in one step. */
const openingsInStep = 250;

export function* compareOpenings(
  from: Count,
  to: Count,
  answers: readonly MarkAnswer[],
): Steps<OpeningDifferences> {
  const fields = fieldsOf(from, to);
  const older = byMark(from.openings);
  yield 0.02;
  const newer = byMark(to.openings);
  yield 0.05;
  const changed = yield* between(0.05, 0.2, changedIn(older, newer, fields));
  const removed = new Map([...older].filter(([key]) => !newer.has(key)));
  const added = new Map([...newer].filter(([key]) => !older.has(key)));

  const said = saidPairs(answers, removed, added);
  const renamed = takePairs(
    said.filter(({ isSame }) => isSame),
    removed,
    added,
  );
  const refused = said.filter(
    ({ isSame, oldKey, newKey }) => !isSame && removed.has(oldKey) && added.has(newKey),
  );
  const refusedKeys = new Set(refused.map(pairKey));
  const guesses = yield* between(0.2, 0.8, guessPairs(removed, added, refusedKeys));
  return {
    added: yield* between(0.8, 0.85, inOrder([...added.values()], nameOf)),
    removed: yield* between(0.85, 0.9, inOrder([...removed.values()], nameOf)),
    changed: yield* between(0.9, 0.95, inOrder(changed, pairName)),
    renamed: yield* between(
      0.95,
      1,
      inOrder(
        renamed.map((pair) => changedOpening(pair.from, pair.to, fields)),
        pairName,
      ),
    ),
    guesses: guesses.pairs.map((pair) => ({
      ...changedOpening(pair.from, pair.to, fields),
      likeness: pair.likeness,
    })),
    refused: refused.map(({ from, to }) => ({ job: to.job, from: from.mark, to: to.mark })),
    notGuessed: guesses.notGuessed,
  };
}

/** Openings of both counts, of which anything is another. */
function* changedIn(
  older: Openings,
  newer: Openings,
  fields: readonly OpeningField[],
): Steps<readonly ChangedOpening[]> {
  const changed: ChangedOpening[] = [];
  let looked = 0;
  for (const [key, one] of older) {
    looked += 1;
    if (looked % openingsInStep === 0) yield looked / older.size;
    const other = newer.get(key);
    if (other === undefined) continue;
    const each = changedOpening(one, other, fields);
    if (each.changes.length > 0) changed.push(each);
  }
  return changed;
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
  isRead: { name: "read", label: "Row can be read", kind: "yesNo" },
} as const;

/** A row that could be read in one of the counts only has no sizes to compare. */
function changedOpening(
  from: IssuedOpening,
  to: IssuedOpening,
  fields: readonly OpeningField[],
): ChangedOpening {
  const counted = { field: ownFields.isCounted, from: from.isCounted, to: to.isCounted };
  const changes: readonly FieldChange[] =
    isRead(from) === isRead(to)
      ? [
          { field: ownFields.quantity, from: from.quantity, to: to.quantity },
          { field: ownFields.type, from: from.type, to: to.type },
          counted,
          ...fields.map((field) => ({
            field,
            from: valueOf(from, field.name),
            to: valueOf(to, field.name),
          })),
        ]
      : [{ field: ownFields.isRead, from: isRead(from), to: isRead(to) }, counted];
  return { from, to, changes: changes.filter((each) => each.from !== each.to) };
}

const isRead = ({ quantity }: IssuedOpening): boolean => quantity !== null;

const valueOf = ({ fields }: IssuedOpening, name: string): IssuedValue | null =>
  Object.hasOwn(fields, name) ? (fields[name] ?? null) : null;

/** By names that are made once for each. */
function* inOrder<Each>(
  all: readonly Each[],
  nameOfEach: (each: Each) => string,
): Steps<readonly Each[]> {
  const named = all.map((each) => ({ each, name: nameOfEach(each) }));
  const sorted = yield* sortInSteps(named, (a, b) => compareNames(a.name, b.name));
  return sorted.map(({ each }) => each);
}
