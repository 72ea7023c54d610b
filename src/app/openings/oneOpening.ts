/**
 * Questions about one opening, as worksheet functions ask them: the same kit book, items and rules as
 * a take-off of the schedule, for an opening that is given by values instead of a row.
 *
 * Answers are kept by their inputs, so that ten functions about one door count it once.
 */
import { err, ok, type Result } from "../../core/base/result";
import { pieces, type Inches } from "../../core/base/units";
import { compileKitBook } from "../../core/kitbook/compileKitBook";
import type { KitBook } from "../../core/kitbook/kitBook";
import { checkItems, type Items } from "../../core/pricing/item";
import { asCounted } from "../../core/corrections/correctedLine";
import { priceMaterial, type Material } from "../../core/pricing/material";
import { takeOff, type Line } from "../../core/takeoff/takeOff";
import type { Take } from "../../core/takeoff/take";
import { checkGivenOpening, type GivenOpening } from "./givenOpening";
import type { Inputs } from "../reading/inputs";
import { currencyIn, lengthWriter, type Settings } from "../settings";

export type OpeningAnswer = {
  readonly lines: readonly Line[];
  /** Priced and weighed without spares, which belong to a job and not to an opening; when first asked for. */
  readonly material: () => Material;
  /** The opening with its sizes worked out; its only row is row 0. */
  readonly take: Take;
};

/** Answers about one opening after another, by one kit book. */
export type OpeningCounter = {
  readonly book: KitBook;
  readonly settings: Settings;
  readonly showLength: (length: Inches) => string;
  /** Error: why the opening cannot be counted, in plain words. */
  readonly count: (opening: GivenOpening) => Result<OpeningAnswer, string>;
};

const mostKept = 20_000;

/** A counter for what a workbook holds. Make a new one when its kit book, items or settings change. */
export function openingCounter(inputs: Inputs, settings: Settings): OpeningCounter {
  const headings = inputs.schedules.flatMap((schedule) => Object.values(schedule.otherHeadings));
  const { book } = compileKitBook(inputs.kitBook, [...new Set(headings)]);
  const items = withoutSpares(checkItems(inputs.items, currencyIn(settings)).items);
  const showLength = lengthWriter(settings);
  const kept = new Map<string, Result<OpeningAnswer, string>>();
  return {
    book,
    settings,
    showLength,
    count: (opening) => {
      const key = JSON.stringify([opening.fields, opening.others]);
      const known = kept.get(key);
      if (known !== undefined) return known;
      if (kept.size >= mostKept) kept.clear();
      const answer = countOne(opening, book, items, settings, showLength);
      kept.set(key, answer);
      return answer;
    },
  };
}

const withoutSpares = (items: Items): Items =>
  new Map(
    [...items].map(([key, item]) => [key, { ...item, spares: { percent: 0, least: pieces(0) } }]),
  );

function countOne(
  opening: GivenOpening,
  book: KitBook,
  items: Items,
  settings: Settings,
  showLength: (length: Inches) => string,
): Result<OpeningAnswer, string> {
  const types = book.types.map((type) => type.name);
  const { openings, findings } = checkGivenOpening(opening, types, settings.unit);
  const taken = takeOff(book, openings, showLength);
  const stop = [...findings, ...taken.findings].find((finding) => finding.level === "stop");
  const [take] = taken.takes;
  if (stop !== undefined) return err(stop.message);
  if (take === undefined) return err("The opening cannot be counted.");
  const [broken] = take.type.broken;
  if (broken !== undefined) return err(`The kit book has an error: ${broken.finding.message}`);
  const lines = taken.jobs[0]?.lines ?? [];
  let material: Material | null = null;
  return ok({
    lines,
    material: () => (material ??= priceMaterial(lines.map(asCounted), items)),
    take,
  });
}
