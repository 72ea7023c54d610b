/** The track plates that practice knows: eleven combinations of post and door height. */
import { bases, type StarterEntry } from "./starterRows";

/** Door height in feet, then the post heights that a plate is made for. */
const combinations = [
  [7, [7, 8, 9, 10, 12]],
  [8, [8, 9, 10, 12]],
  [10, [10, 12]],
] as const;

/** `PLATE 8-7` is the plate for a 7 ft door on 8 ft posts. */
export const trackPlates: readonly StarterEntry[] = combinations.flatMap(([door, posts]) =>
  posts.map((post) => ({
    chart: "track plate",
    match: "exact",
    down: `${post}'`,
    across: `${door}'`,
    value: `PLATE ${post}-${door}`,
    basis: bases.practice,
  })),
);
