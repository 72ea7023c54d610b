/**
 * Hours of a job from the minutes of its openings.
 *
 * For each opening row: its kit-book rows' minutes and the fixed minutes of an opening, times the
 * working-height factor, times the site factor, times what all alike take together by the learning
 * curve. Then the job's own fixed times, which no factor touches. All minutes are one person's work
 * (two people for an hour are two hours) and are not rounded; `hours` is, once, to hundredths.
 */
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { minutes, type Inches, type Minutes } from "../base/units";
import { shareWhole } from "../base/shareWhole";
import { figureText } from "./rollup/figureText";
import { heightFactorFor, type FixedTime, type LabourRules } from "./rates/labourRules";
import { learningInWords, timesTheFirst } from "./learning";

/** One kit-book row of an opening, as counted. */
export type WorkRow = {
  readonly bag: string;
  readonly item: string;
  /** One piece's minutes, or the whole row's where `times` is 1; `null` is not known, which is not zero. */
  readonly minutesEach: Minutes | null;
  /** For one opening. */
  readonly times: number;
  /** Its number among the kit book's parts; absent for work that is in no book. */
  readonly row?: number;
};

export type OpeningWork = {
  readonly mark: string;
  /** How many alike; one or more. */
  readonly quantity: number;
  /** How high the work reaches; `null` is not known and takes no factor. */
  readonly workingHeight: Inches | null;
  readonly rows: readonly WorkRow[];
};

export type JobWork = {
  readonly job: string;
  readonly openings: readonly OpeningWork[];
  /** Times every minute of installing at this site: 1 is an ordinary one. */
  readonly siteFactor: number;
};

/** One step of an explanation: what was done, and the minutes it came to. */
export type MinutesStep = { readonly says: string; readonly minutes: Minutes };

export type OpeningHours = {
  readonly mark: string;
  /** Of all alike. */
  readonly minutes: Minutes;
  readonly steps: readonly MinutesStep[];
};

export type BagHours = {
  readonly bag: string;
  readonly minutes: Minutes;
  /** The kit book's parts whose minutes they are, by number, each once. */
  readonly rows: readonly number[];
};
export type RoleHours = { readonly role: string; readonly hundredths: number };

export type JobHours = {
  readonly job: string;
  readonly openings: readonly OpeningHours[];
  /** In the order in which the openings first name them; `otherWork` for work that has no bag. */
  readonly bags: readonly BagHours[];
  readonly fixed: readonly MinutesStep[];
  readonly minutes: Minutes;
  /** Whole hundredths of an hour of one person: what labour is priced by. */
  readonly hundredths: number;
  /** The same hundredths, shared over the crew by people. */
  readonly roles: readonly RoleHours[];
  /** Working days of the crew for the openings, rounded up; zero where nothing is timed. */
  readonly days: number;
  readonly findings: readonly Finding[];
};

/** The bag under which fixed times of openings and of the job are gathered. */
export const otherWork = "not in a bag";

export const hoursFindings = {
  "minutes-not-known": {
    level: "note",
    says: "{item} has no minutes in the kit book: its work is not in the hours.",
    todo: "Give the row its minutes, or 0 where it takes none.",
  },
} as const satisfies FindingTable;

/** Hours of one opening row, all alike together, with the minutes of each bag. */
function openingHours(
  opening: OpeningWork,
  siteFactor: number,
  rules: LabourRules,
): OpeningHours & { readonly bags: readonly BagHours[] } {
  const { mark, quantity, rows } = opening;
  const steps: MinutesStep[] = [];
  const step = (says: string, value: number): Minutes => {
    steps.push({ says: `${says} = ${figureText(value, 2)} min`, minutes: minutes(value) });
    return minutes(value);
  };
  const bags: BagHours[] = [];
  for (const { bag, item, minutesEach, times, row: part } of rows) {
    if (minutesEach === null || times === 0) continue;
    const says = `${item}: ${figureText(minutesEach, 2)} min x ${figureText(times, 2)}`;
    const own = part === undefined ? [] : [part];
    bags.push({ bag, minutes: step(says, minutesEach * times), rows: own });
  }
  for (const fixed of rules.perOpening) {
    bags.push({ bag: otherWork, minutes: step(fixed.name, fixed.minutes), rows: [] });
  }
  const one = bags.reduce((sum, bag) => sum + bag.minutes, 0);
  const height = heightFactorFor(opening.workingHeight, rules.heights);
  const tall = one * (height?.factor ?? 1);
  if (height !== null) {
    step(
      `above ${figureText(height.above, 2)} in: ${figureText(one, 2)} min x ${figureText(height.factor, 2)}`,
      tall,
    );
  }
  const onSite = tall * siteFactor;
  if (siteFactor !== 1)
    step(`site: ${figureText(tall, 2)} min x ${figureText(siteFactor, 2)}`, onSite);
  const repeats = timesTheFirst(quantity, rules.learning);
  const all = onSite * repeats;
  if (quantity !== 1) {
    const curve =
      rules.learning === null
        ? ""
        : ` = ${figureText(repeats, 2)} times the first by the ${learningInWords(rules.learning)}`;
    step(
      `${quantity} alike${curve}: ${figureText(onSite, 2)} min x ${figureText(repeats, 2)}`,
      all,
    );
  }
  const factor = one === 0 ? 0 : all / one;
  return {
    mark,
    minutes: minutes(all),
    steps,
    bags: bags.map((bag) => ({ ...bag, minutes: minutes(bag.minutes * factor) })),
  };
}

/** How often a fixed time comes, and in words. */
function fixedStep(
  { name, minutes: each, basis }: FixedTime,
  people: number,
  days: number,
): MinutesStep {
  const times = (basis.includes("person") ? people : 1) * (basis.includes("day") ? days : 1);
  const by = basis === "job" ? "" : ` x ${times} (per ${basis})`;
  return {
    says: `${name}: ${figureText(each, 2)} min${by} = ${figureText(each * times, 2)} min`,
    minutes: minutes(each * times),
  };
}

/** Hours of a job. A row whose minutes are not known is left out, and one finding per item says so. */
export function jobHours(work: JobWork, rules: LabourRules): JobHours {
  const openings = work.openings.map((opening) => openingHours(opening, work.siteFactor, rules));
  const installing = openings.reduce((sum, opening) => sum + opening.minutes, 0);
  const people = rules.crew.reduce((sum, role) => sum + role.people, 0);
  // The millionth keeps a sum that doubles left a hair above a full day from asking for another.
  const days = Math.max(0, Math.ceil(installing / (people * rules.day) - 1e-6));
  const fixed = rules.perJob.map((time) => fixedStep(time, people, days));
  const total = installing + fixed.reduce((sum, step) => sum + step.minutes, 0);
  const hundredths = Math.round((total * 100) / 60);
  const shares = shareWhole(
    hundredths,
    rules.crew.map((role) => role.people),
  );
  const notTimed = new Set(
    work.openings.flatMap(({ rows }) =>
      rows.filter((row) => row.minutesEach === null && row.times > 0).map((row) => row.item),
    ),
  );
  return {
    job: work.job,
    openings: openings.map(({ mark, minutes: all, steps }) => ({ mark, minutes: all, steps })),
    bags: gathered([
      ...openings.flatMap((opening) => opening.bags),
      ...fixed.map((step) => ({ bag: otherWork, minutes: step.minutes, rows: [] })),
    ]),
    fixed,
    minutes: minutes(total),
    hundredths,
    roles: rules.crew.map(({ role }, index) => ({ role, hundredths: shares[index] ?? 0 })),
    days,
    findings: [...notTimed].map((item) =>
      makeFinding(hoursFindings, "minutes-not-known", { job: work.job, values: { item } }),
    ),
  };
}

function gathered(bags: readonly BagHours[]): readonly BagHours[] {
  const sums = new Map<string, { sum: number; readonly rows: Set<number> }>();
  for (const { bag, minutes: more, rows } of bags) {
    const known = sums.get(bag) ?? { sum: 0, rows: new Set() };
    known.sum += more;
    for (const row of rows) known.rows.add(row);
    sums.set(bag, known);
  }
  return [...sums].map(([bag, { sum, rows }]) => ({ bag, minutes: minutes(sum), rows: [...rows] }));
}
