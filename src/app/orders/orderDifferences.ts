/** What workbooks that are ordered together say differently, and what the person decided about it. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { itemKey, type Item } from "../../core/pricing/item";
import type { ChosenJob, JobsFile } from "./chooseJobs";
import { typedText } from "./orderTables";

/** True where the person has decided it, so that it is a difference no longer in doubt. */
export type Deciding = {
  /** Each workbook is counted by its own kit book, or all by one that was named. */
  readonly kitBooksDecided: boolean;
  /** One code is one item, whatever its description; or one table was named for all. */
  readonly itemsDecided: boolean;
};

export const differenceFindings = {
  "kit-books-differ": {
    level: "stop",
    says: "{found} counts by another kit book than {first}.",
    todo: "Decide: each by its own kit book, or all by the one you name.",
  },
  "items-differ": {
    level: "stop",
    says: "{item} is “{found}” in {file} and “{description}” in {first}, and both are on the order as one.",
    todo: "Decide: the code is one item whatever its words, or the items of the workbook you name hold.",
  },
} as const satisfies FindingTable;

/** Only of workbooks with a chosen job, and of items that are on the order. */
export function differences(
  files: readonly JobsFile[],
  chosen: readonly ChosenJob<JobsFile>[],
  { kitBooksDecided, itemsDecided }: Deciding,
): readonly Finding[] {
  const used = files.filter((file) => chosen.some((each) => each.file === file));
  return [
    ...(kitBooksDecided ? [] : differingBooks(used)),
    ...(itemsDecided ? [] : differingItems(used, chosen)),
  ];
}

function differingBooks([first, ...others]: readonly JobsFile[]): readonly Finding[] {
  if (first === undefined) return [];
  const book = typedText(first.takeOff.inputs.kitBook);
  return others
    .filter(({ takeOff }) => typedText(takeOff.inputs.kitBook) !== book)
    .map(({ file }) =>
      makeFinding(differenceFindings, "kit-books-differ", {
        found: file,
        values: { first: first.file },
      }),
    );
}

function differingItems(
  files: readonly JobsFile[],
  chosen: readonly ChosenJob<JobsFile>[],
): readonly Finding[] {
  const codes = new Set(
    chosen.flatMap(({ estimate }) => estimate.material.lines.map(({ line }) => itemKey(line.item))),
  );
  return [...codes].flatMap((code) => {
    const known = files.flatMap(({ file, takeOff }) => {
      const item = takeOff.estimate.items.get(code);
      return item === undefined ? [] : [{ file, item }];
    });
    const [first, ...others] = known;
    if (first === undefined) return [];
    return others
      .filter(({ item }) => !isSameThing(item, first.item))
      .map(({ file, item }) =>
        makeFinding(differenceFindings, "items-differ", {
          found: thingWords(item),
          values: {
            item: item.code,
            file,
            description: thingWords(first.item),
            first: first.file,
          },
        }),
      );
  });
}

const thingWords = ({ description, unit }: Item): string => `${description} (${unit.label})`;

const isSameThing = (one: Item, other: Item): boolean =>
  one.unit.by === other.unit.by &&
  one.description.trim().toLowerCase() === other.description.trim().toLowerCase();
