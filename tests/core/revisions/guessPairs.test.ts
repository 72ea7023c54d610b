import { expect, test } from "@jest/globals";
import fc from "fast-check";
import { finish } from "../../../src/core/base/steps";
import { typingDistance } from "../../../src/core/base/typingDistance";
import { compareInSteps } from "../../../src/core/revisions/compareCounts";
import { openingLikeness, readyToCompare } from "../../../src/core/revisions/likeness";
import {
  likeliestFirst,
  likeliestPairs,
  type Candidate,
} from "../../../src/core/revisions/likeliestPairs";
import { anyCount, countWith, opening } from "./anyCounts";

test("openings are paired as if all pairs were sorted, the likeliest first, and taken in turn", () => {
  const candidates = (from: number) =>
    anyCount.map(({ openings }): readonly Candidate[] => {
      const ready = readyToCompare();
      return openings.map((each, place) => ({
        key: `${from}-${place}`,
        opening: each,
        rank: from + ((place * 7) % 13),
        compared: ready(each),
      }));
    });
  fc.assert(
    fc.property(candidates(0), candidates(5), (gone, come) => {
      const all = gone
        .flatMap((from) =>
          come.map((to) => ({
            from,
            to,
            likeness: openingLikeness(from.compared, to.compared, 0),
            ranks: [Math.min(from.rank, to.rank), Math.max(from.rank, to.rank)] as const,
          })),
        )
        .filter(({ likeness }) => likeness >= 0.6)
        .sort(likeliestFirst);
      const taken = new Set<Candidate>();
      const wanted = all.filter(({ from, to }) => {
        if (taken.has(from) || taken.has(to)) return false;
        taken.add(from).add(to);
        return true;
      });
      const pairs = finish(likeliestPairs(gone, come, new Set()));
      expect(pairs.map(({ oldKey, newKey }) => [oldKey, newKey])).toEqual(
        wanted.map(({ from, to }) => [from.key, to.key]),
      );
    }),
  );
});

test("what two texts begin and end with alike makes no difference to how far they are apart", () => {
  const text = fc.string({ unit: fc.constantFrom("a", "b", "-"), maxLength: 6 });
  fc.assert(
    fc.property(text, text, text, text, (start, one, other, end) => {
      expect(typingDistance(`${start}${one}${end}`, `${start}${other}${end}`)).toBe(
        typingDistance(one, other),
      );
    }),
  );
});

test("five hundred openings that all have another mark are compared in short steps", () => {
  const sizes = { width: 96, height: 84 };
  const many = (prefix: string) =>
    countWith(Array.from({ length: 500 }, (_, place) => opening(`${prefix}${place}`, sizes)));
  const steps = compareInSteps(many("D-"), many("E-"), []);
  let taken = 0;
  let last = 0;
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) {
    taken += 1;
    expect(step.value).toBeGreaterThanOrEqual(last);
    expect(step.value).toBeLessThanOrEqual(1);
    last = step.value;
  }
  expect(step.value.openings.guesses).toHaveLength(500);
  expect(taken).toBeGreaterThan(100);
});
