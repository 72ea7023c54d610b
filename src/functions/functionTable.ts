/**
 * The worksheet functions, one row each. Registration in every host, the help while typing, the
 * table in README and the tests come from these rows.
 */
import { cellText, isBlank } from "../core/base/cell";
import { err, ok } from "../core/base/result";
import { inches } from "../core/base/units";
import { normalName, nearestName } from "../core/formulas/names";
import { isFormulaError } from "../core/formulas/value";
import { toInches } from "../core/lengths/length";
import { readLength } from "../core/lengths/readLength";
import { fractionDenominators, writeLength, writeSize } from "../core/lengths/writeLength";
import { majorUnits } from "../core/money/writeMoney";
import { itemKey } from "../core/pricing/item";
import { describeSource } from "../core/takeoff/describe";
import { because, minutesOf, quantityOf } from "../core/takeoff/explain";
import { countsIn } from "../core/takeoff/take";
import type { OpeningAnswer } from "../app/openings/oneOpening";
import { lengthStyleOf } from "../app/settings";
import { codeFault } from "./itemCodes";
import { countGiven, oneValue, openingArguments, wrong } from "./openingArguments";
import { priceFunctions } from "./priceFunctions";
import { trackPlate } from "./trackPlate";
import type { FunctionArgument, WorksheetFunction } from "./worksheetFunction";

const item: FunctionArgument = {
  name: "item",
  says: "code of the item, as in the kit book",
  optional: false,
  takes: "value",
};

/** The lines of an item for an opening, of every size. */
const linesOf = ({ lines }: OpeningAnswer, code: string) =>
  lines.filter((line) => itemKey(line.item) === itemKey(code));

const textInput = (input: Parameters<typeof oneValue>[0]): string =>
  cellText(oneValue(input) ?? null).trim();

export const functionTable: readonly WorksheetFunction[] = [
  {
    name: "COUNT",
    says: "How many of an item one opening needs, without spares.",
    arguments: [item, ...openingArguments],
    answers: "number",
    example: `=CRIB.COUNT("HN 1/4", "sliding door", "8'-0""", "7'-0""", "7'-0""", "yes", "concrete")`,
    run: ([code = null, ...opening], counter) => {
      const words = textInput(code);
      const fault = codeFault(words, counter.book);
      if (fault !== null) return err(fault);
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      return ok(linesOf(answer.value, words).reduce((sum, line) => sum + line.quantity, 0));
    },
  },
  {
    name: "KIT",
    says: "The whole kit of one opening as rows: item, size, pieces, description.",
    arguments: openingArguments,
    answers: "rows",
    example: `=CRIB.KIT("sliding door", A5, B5, C5, "yes", "concrete")`,
    run: (opening, counter) => {
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const style = lengthStyleOf(counter.settings);
      const rows = answer.value
        .material()
        .lines.map(({ line, item: known }) => [
          line.item,
          writeSize(line.size, style),
          line.quantity,
          known?.description ?? "",
        ]);
      return ok([["Item", "Size", "Pieces", "Description"], ...rows]);
    },
  },
  {
    name: "WHY",
    says: "The reason for a count: the kit-book rows, their formulas and the numbers put in.",
    arguments: [item, ...openingArguments],
    answers: "text",
    example: `=CRIB.WHY("PANEL", "sliding door", "8'-0""", "7'-0""", "7'-0""")`,
    run: ([code = null, ...opening], counter) => {
      const words = textInput(code);
      const fault = codeFault(words, counter.book);
      if (fault !== null) return err(fault);
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const reasons = linesOf(answer.value, words).flatMap((line) =>
        [...countsIn(line.counts)].map(
          (count) =>
            `${quantityOf(count)} for ${count.part.bag}: ${because(count, counter.showLength)}`,
        ),
      );
      return ok(
        reasons.length === 0 ? `No ${words} is needed for this opening.` : reasons.join("\n"),
      );
    },
  },
  {
    name: "SIZE",
    says: "A size that the kit book works out for an opening, such as leaf_width or track_length; lengths in inches.",
    arguments: [
      { name: "size", says: "name of the size in the kit book", optional: false, takes: "value" },
      ...openingArguments,
    ],
    answers: "number",
    example: `=CRIB.SIZE("track_length", "sliding door", "8'-0""", "7'-0""", "7'-0""")`,
    run: ([name = null, ...opening], counter) => {
      const wanted = normalName(textInput(name));
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const { take } = answer.value;
      const size = take.type.sizes.find((each) => normalName(each.name) === wanted);
      if (size === undefined) {
        const near = nearestName(
          wanted,
          take.type.sizes.map((each) => each.name),
        );
        const hint = near === undefined ? "" : `; did you mean ${near}`;
        return err(wrong("size", `${take.type.name} has no size of that name${hint}`));
      }
      const value = take.columns[size.slot]?.[0] ?? null;
      if (isFormulaError(value)) return err({ code: "na", message: value.message });
      return ok(value ?? "");
    },
  },
  {
    name: "PLATE",
    says: "The track plate for a post and a door, from the kit book's chart.",
    arguments: [
      { name: "post_height", says: "height of the line post", optional: false, takes: "value" },
      { name: "door_height", says: "height of the door", optional: false, takes: "value" },
    ],
    answers: "text",
    example: `=CRIB.PLATE("8'-0""", "7'-0""")`,
    run: trackPlate,
  },
  {
    name: "COST",
    says: "Material cost of one opening, without spares. #N/A where an item of it has no cost.",
    arguments: openingArguments,
    answers: "number",
    example: `=CRIB.COST("sliding door", A5, B5, C5, "yes", "concrete")`,
    run: (opening, counter) => {
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const { total, unpriced } = answer.value.material();
      if (unpriced.length > 0)
        return err({ code: "na", message: `Not priced: ${unpriced.join(", ")}.` });
      return ok(total === null ? 0 : majorUnits(total));
    },
  },
  {
    name: "WEIGHT",
    says: "Weight of one opening's material in pounds, without spares. #N/A where an item of it has no weight.",
    arguments: openingArguments,
    answers: "number",
    example: `=CRIB.WEIGHT("sliding door", A5, B5, C5, "yes", "concrete")`,
    run: (opening, counter) => {
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const { weight, unweighed } = answer.value.material();
      if (unweighed.length > 0)
        return err({ code: "na", message: `Not weighed: ${unweighed.join(", ")}.` });
      return ok(weight);
    },
  },
  {
    name: "HOURS",
    says: "Hours of one person for one opening: the kit book's minutes for its rows, without times of the job. #N/A where a row's minutes cannot be worked out.",
    arguments: openingArguments,
    answers: "number",
    example: `=CRIB.HOURS("sliding door", A5, B5, C5, "yes", "concrete")`,
    run: (opening, counter) => {
      const answer = countGiven(opening, counter);
      if (!answer.ok) return answer;
      const counts = answer.value.lines.flatMap((line) => [...countsIn(line.counts)]);
      let sum = 0;
      for (const count of counts) {
        const minutes = minutesOf(count);
        if (!minutes.ok) {
          const row = describeSource(count.part.source);
          return err({
            code: "na",
            message: `The minutes of ${row} are no time: ${minutes.error}.`,
          });
        }
        // A row without minutes is work done with the part before it, as in a job's hours.
        sum += minutes.value ?? 0;
      }
      return ok(sum / 60);
    },
  },
  ...priceFunctions,
  {
    name: "INCHES",
    says: "A length read from text such as 7'-0 1/2\" or 2134 mm, as inches.",
    arguments: [
      { name: "length", says: "the text or number to read", optional: false, takes: "value" },
      {
        name: "unit",
        says: `"in" or "mm" for a bare number; left out is the workbook's unit`,
        optional: true,
        takes: "value",
      },
    ],
    answers: "number",
    example: `=CRIB.INCHES("7'-0 1/2""")`,
    run: ([length = null, unit = null], { settings }) => {
      const value = oneValue(length);
      if (value === undefined) return err(wrong("length", "give it one cell or one value"));
      const words = textInput(unit).toLowerCase();
      if (words !== "" && words !== "in" && words !== "mm") {
        return err(wrong("unit", `it is ${words}, and only in and mm are known`));
      }
      const read = readLength(value, words === "in" || words === "mm" ? words : settings.unit);
      return read.ok
        ? ok(toInches(read.value.length))
        : err({ code: "value", message: read.error.message });
    },
  },
  {
    name: "FEET",
    says: "A number of inches written as feet and inches, such as 7'-0 1/2\".",
    arguments: [
      { name: "inches", says: "the length in inches", optional: false, takes: "value" },
      {
        name: "fraction",
        says: "finest fraction: 1, 2, 4, 8, 16, 32 or 64; left out is the workbook's",
        optional: true,
        takes: "value",
      },
    ],
    answers: "text",
    example: "=CRIB.FEET(84.5)",
    run: ([length = null, fraction = null], { settings }) => {
      const value = oneValue(length);
      if (typeof value !== "number" || !Number.isFinite(value)) {
        return err(wrong("inches", "it is not a number"));
      }
      const wanted = oneValue(fraction) ?? null;
      const denominator = isBlank(wanted)
        ? settings.fraction
        : fractionDenominators.find((each) => each === wanted);
      if (denominator === undefined) {
        return err(
          wrong("fraction", `it is ${cellText(wanted)}, and not 1, 2, 4, 8, 16, 32 or 64`),
        );
      }
      return ok(writeLength(inches(value), { kind: "feet-inches", denominator }));
    },
  },
];
