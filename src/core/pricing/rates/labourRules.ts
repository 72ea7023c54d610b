/** How a firm turns minutes of work into hours of a job. Every figure here is the firm's own. */
import { inches, minutes, type Inches, type Minutes } from "../../base/units";
import type { Learning } from "../learning";

/** What a fixed time is counted by. A day is a working day of the crew on the site. */
export const fixedTimeBases = ["job", "person", "day", "person and day"] as const;
export type FixedTimeBasis = (typeof fixedTimeBases)[number];

/** Work done once for each opening, whatever its parts: unpacking, laying out, adjusting. */
export type OpeningTime = { readonly name: string; readonly minutes: Minutes };

/** Work that comes with the job and not with an opening: travel, set-up, clean-up. */
export type FixedTime = OpeningTime & { readonly basis: FixedTimeBasis };

/** Work on an opening taller than `above` takes `factor` times as long. */
export type HeightFactor = { readonly above: Inches; readonly factor: number };

/** So many people of one role; `people` is a whole number, one or more. */
export type CrewRole = { readonly role: string; readonly people: number };

export type LabourRules = {
  readonly perOpening: readonly OpeningTime[];
  readonly perJob: readonly FixedTime[];
  readonly heights: readonly HeightFactor[];
  /** Who works on the site; hours are shared over the roles by people. At least one. */
  readonly crew: readonly CrewRole[];
  /** One person's working minutes a day; more than zero. */
  readonly day: Minutes;
  /** `null`: a repeat takes as long as the first. */
  readonly learning: Learning | null;
  /** Where the figures come from. */
  readonly basis: string;
};

/** Rules to begin with: invented for the demo, to be replaced by the firm's own times. */
export const starterLabourRules: LabourRules = {
  perOpening: [
    { name: "unpack and lay out", minutes: minutes(12) },
    { name: "adjust and try", minutes: minutes(10) },
  ],
  perJob: [
    { name: "travel", minutes: minutes(60), basis: "person and day" },
    { name: "set up", minutes: minutes(30), basis: "day" },
    { name: "clean up", minutes: minutes(20), basis: "day" },
  ],
  heights: [
    { above: inches(96), factor: 1.15 },
    { above: inches(120), factor: 1.3 },
  ],
  crew: [
    { role: "lead installer", people: 1 },
    { role: "installer", people: 1 },
  ],
  day: minutes(450),
  learning: null,
  basis: "invented starter: replace with your own times",
};

/** The rule of the greatest height that `height` is above, or `null`: then the factor is 1. */
export const heightFactorFor = (
  height: Inches | null,
  heights: readonly HeightFactor[],
): HeightFactor | null =>
  height === null
    ? null
    : heights
        .filter(({ above }) => height > above)
        .reduce<HeightFactor | null>(
          (best, next) => (best === null || next.above > best.above ? next : best),
          null,
        );
