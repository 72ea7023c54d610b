/**
 * Finding columns by their heading words, in any order and any case.
 *
 * A heading fits a column when it is one of the column's words (`Qty`), or one of them with only
 * filler around it (`Clear opening width`). `Track height` does not fit `height`: `track` is no filler.
 */
import { cellText, type CellValue } from "../core/base/cell";

/** What a person may write over one column. `words` are in lower case with single spaces. */
export type ColumnRule<Key extends string> = {
  readonly key: Key;
  /** The heading Cribsheet itself writes. */
  readonly label: string;
  readonly words: readonly string[];
};

/** The unit that a heading such as `Width (mm)` gives to the bare numbers below it. */
export type HeadingUnit = "in" | "mm" | "ft" | null;

/** A column of the block that was recognised; `column` counts from the block's first. */
export type ColumnMatch<Key extends string> = {
  readonly key: Key;
  readonly column: number;
  readonly heading: string;
  readonly unit: HeadingUnit;
};

export type HeadingMatch<Key extends string> = {
  readonly matches: readonly ColumnMatch<Key>[];
  /** Columns with a heading that no rule knows. */
  readonly others: readonly { readonly column: number; readonly heading: string }[];
  /** Columns whose heading fits a key that a better or earlier column already has. */
  readonly repeats: readonly ColumnMatch<Key>[];
};

const fillers = new Set([
  "a",
  "and",
  "clear",
  "dim",
  "dimension",
  "door",
  "doors",
  "finished",
  "is",
  "net",
  "nominal",
  "of",
  "opening",
  "openings",
  "overall",
  "size",
  "the",
  "there",
  "with",
]);

const unitWords: Readonly<Record<string, HeadingUnit>> = {
  in: "in",
  inch: "in",
  inches: "in",
  mm: "mm",
  millimetres: "mm",
  millimeters: "mm",
  ft: "ft",
  feet: "ft",
};

/** The words of a heading without its unit, and the unit: `Post ht. (mm)` is `post ht` in mm. */
export function readHeading(text: string): {
  readonly words: readonly string[];
  readonly unit: HeadingUnit;
} {
  const words = text
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll("#", " number ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
  const last = words.at(-1) ?? "";
  const unit = words.length > 1 ? (unitWords[last] ?? null) : null;
  return { words: unit === null ? words : words.slice(0, -1), unit };
}

/** How well a heading fits: 1000 for the very words, fewer for words among fillers, 0 for none. */
function fit(words: readonly string[], rule: ColumnRule<string>): number {
  const heading = words.join(" ");
  let best = 0;
  for (const wanted of rule.words) {
    if (heading === wanted) return 1000;
    const parts = wanted.split(" ");
    const start = words.findIndex((_, index) =>
      parts.every((part, at) => words[index + at] === part),
    );
    if (start < 0) continue;
    const rest = [...words.slice(0, start), ...words.slice(start + parts.length)];
    if (rest.every((word) => fillers.has(word)))
      best = Math.max(best, 10 * parts.length - rest.length);
  }
  return best;
}

type Fit<Key extends string> = {
  readonly key: Key;
  readonly unit: HeadingUnit;
  readonly score: number;
};

/** The rule that a heading fits best, the first on a tie; `null` where it fits none. */
function bestFit<Key extends string>(
  heading: string,
  rules: readonly ColumnRule<Key>[],
): Fit<Key> | null {
  const { words, unit } = readHeading(heading);
  let best: Fit<Key> | null = null;
  for (const rule of rules) {
    const score = fit(words, rule);
    if (score > (best?.score ?? 0)) best = { key: rule.key, unit, score };
  }
  return best;
}

const mostKept = 2000;

/** `bestFit`, once for each text: finding the headings of a sheet asks for the same texts again and again. */
function fitFinder<Key extends string>(
  rules: readonly ColumnRule<Key>[],
): (heading: string) => Fit<Key> | null {
  const known = fitsByRules.get(rules) ?? new Map<string, Fit<string> | null>();
  fitsByRules.set(rules, known);
  return (heading) => {
    const kept = known.get(heading);
    // What is kept for these rules has their keys.
    if (kept !== undefined) return kept as Fit<Key> | null;
    if (known.size >= mostKept) known.clear();
    const found = bestFit(heading, rules);
    known.set(heading, found);
    return found;
  };
}

const fitsByRules = new WeakMap<readonly ColumnRule<string>[], Map<string, Fit<string> | null>>();

/**
 * Gives each key the column that fits it best; on a tie the leftmost. A column serves one key.
 * `fixed` names the column of a key outright and wins over any guess.
 */
export function matchHeadings<Key extends string>(
  cells: readonly CellValue[],
  rules: readonly ColumnRule<Key>[],
  fixed: ReadonlyMap<Key, number> = new Map(),
): HeadingMatch<Key> {
  const taken = new Map<Key, ColumnMatch<Key>>();
  const headings = cells.map((cell) => cellText(cell).trim());
  const fixedColumns = new Set(fixed.values());
  for (const [key, column] of fixed) {
    const heading = headings[column] ?? "";
    taken.set(key, { key, column, heading, unit: readHeading(heading).unit });
  }

  const fitOf = fitFinder(rules);
  const candidates = headings.flatMap((heading, column) => {
    const best = heading === "" || fixedColumns.has(column) ? null : fitOf(heading);
    return best === null ? [] : [{ ...best, column, heading }];
  });
  const repeats: ColumnMatch<Key>[] = [];
  for (const { key, column, heading, unit } of candidates.toSorted((a, b) => b.score - a.score)) {
    const match = { key, column, heading, unit };
    if (taken.has(key)) repeats.push(match);
    else taken.set(key, match);
  }
  const used = new Set([...taken.values(), ...repeats].map((match) => match.column));
  return {
    matches: [...taken.values()].sort((a, b) => a.column - b.column),
    others: headings.flatMap((heading, column) =>
      heading === "" || used.has(column) ? [] : [{ column, heading }],
    ),
    repeats,
  };
}

/**
 * The row that looks most like headings among the first `within` rows: the one with the most keys,
 * at least `least`; on a tie the upper one. `-1` where no row does.
 */
export function findHeadingRow<Key extends string>(
  rows: readonly (readonly CellValue[])[],
  rules: readonly ColumnRule<Key>[],
  least: number,
  within = 40,
): number {
  let bestRow = -1;
  let bestCount = least - 1;
  for (const [index, cells] of rows.slice(0, within).entries()) {
    const texts = cells.filter((cell) => typeof cell === "string");
    if (texts.length < least) continue;
    const count = matchHeadings(cells, rules).matches.length;
    if (count > bestCount) {
      bestRow = index;
      bestCount = count;
    }
  }
  return bestRow;
}
