/** Corrections that go on under another name: of a job that was renamed, or in the place of another. */
import { readYesNo } from "../openings/yesNo";
import { jobKey } from "../takeoff/takeOff";
import {
  isAddedRow,
  isLineCorrection,
  isMoveAnswer,
  isSameTyped,
  type Correction,
} from "./correction";
import { freeName, rowKey, type AddedName, type LineName, type RowName } from "./rowName";

/** A correction's new name by its old `rowKey`, where it has a new one. */
export type Renamed = ReadonlyMap<string, RowName>;

export type Moved = { readonly corrections: readonly Correction[]; readonly renamed: Renamed };

/**
 * Carries out the answers: where a person said yes, all that was typed for the job that is gone
 * belongs to the job that it is called now. An answer to a question that is not asked any more is
 * dropped.
 */
export function answerMoves(corrections: readonly Correction[], jobs: readonly string[]): Moved {
  const inSchedule = new Map(jobs.map((job) => [jobKey(job), job]));
  const asked = corrections
    .filter(isMoveAnswer)
    .filter(({ name }) => !inSchedule.has(jobKey(name.from)) && inSchedule.has(jobKey(name.to)));
  const isYes = (each: Correction): boolean => readYesNo(each.typed.correction) === true;
  const others = corrections.filter((each) => !isMoveAnswer(each));
  const targets = new Map(
    asked
      .filter(isYes)
      .map(({ name }) => [jobKey(name.from), inSchedule.get(jobKey(name.to)) ?? name.to]),
  );
  const moved = moveTo(others, (job) => targets.get(jobKey(job)) ?? null);
  return { ...moved, corrections: [...moved.corrections, ...asked.filter((each) => !isYes(each))] };
}

function moveTo(
  corrections: readonly Correction[],
  targetOf: (job: string) => string | null,
): Moved {
  const kept = new Map<string, Correction>();
  const renamed = new Map<string, RowName>();
  const leaving: { readonly each: Correction<LineName | AddedName>; readonly job: string }[] = [];
  for (const each of corrections) {
    const isMovable = isLineCorrection(each) || isAddedRow(each);
    const job = isMovable ? targetOf(each.name.job) : null;
    if (isMovable && job !== null) leaving.push({ each, job });
    else kept.set(rowKey(each.name), each);
  }
  for (const { each, job } of leaving) {
    const before = kept.get(rowKey({ ...each.name, job }));
    if (before !== undefined && isSameTyped(before.typed, each.typed)) continue;
    const name = freeName({ ...each.name, job }, (key) => kept.has(key));
    renamed.set(rowKey(each.name), name);
    kept.set(rowKey(name), { ...each, name });
  }
  return { corrections: [...kept.values()], renamed };
}

/** A further correction of a line takes the first one's place where that was taken away. */
export function promoteCopies(corrections: readonly Correction[]): Moved {
  const keys = new Set(corrections.map(({ name }) => rowKey(name)));
  const renamed = new Map<string, RowName>();
  const inOrder = corrections
    .filter(isLineCorrection)
    .filter(({ name }) => name.copy > 1)
    .sort((one, other) => one.name.copy - other.name.copy);
  for (const { name } of inOrder) {
    const first = { ...name, copy: 1 };
    if (keys.has(rowKey(first))) continue;
    keys.add(rowKey(first));
    renamed.set(rowKey(name), first);
  }
  return {
    renamed,
    corrections: corrections.map((each) => {
      const name = renamed.get(rowKey(each.name));
      return name === undefined ? each : { ...each, name };
    }),
  };
}
