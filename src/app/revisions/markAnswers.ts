/** What a person said of marks that may be one opening, kept in the workbook. */
import { markPairKey, type MarkAnswer, type MarkPair } from "../../core/revisions/markPairs";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";

const settingKey = "markAnswers";

type Settings = Pick<Workbook, "readSetting" | "writeSetting">;

/** What is no answer is passed over. */
export async function readAnswers(
  workbook: Pick<Workbook, "readSetting">,
): Promise<readonly MarkAnswer[]> {
  const text = await workbook.readSetting(settingKey);
  const read = text === null ? [] : jsonValue(text);
  return Array.isArray(read) ? read.filter(isAnswer) : [];
}

/** Keeps an answer; a later one about the same marks takes its place. */
export const keepAnswer = (
  workbook: Settings,
  answer: MarkAnswer,
): ReturnType<Workbook["writeSetting"]> => replaceAnswer(workbook, answer, [answer]);

/** Takes back what was said of two marks, so that they are a guess again. */
export const forgetAnswer = (
  workbook: Settings,
  pair: MarkPair,
): ReturnType<Workbook["writeSetting"]> => replaceAnswer(workbook, pair, []);

async function replaceAnswer(
  workbook: Settings,
  pair: MarkPair,
  by: readonly MarkAnswer[],
): ReturnType<Workbook["writeSetting"]> {
  const answers = await readAnswers(workbook);
  const others = answers.filter((each) => markPairKey(each) !== markPairKey(pair));
  return await workbook.writeSetting(settingKey, JSON.stringify([...others, ...by]));
}

function isAnswer(value: unknown): value is MarkAnswer {
  if (typeof value !== "object" || value === null) return false;
  const { job, from, to, isSame } = value as Readonly<Record<string, unknown>>;
  return [job, from, to].every((text) => typeof text === "string") && typeof isSame === "boolean";
}
