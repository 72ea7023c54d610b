import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../../src/core/base/cell";
import { applyChanges } from "../../../src/core/bookcheck/applyChanges";
import { compareBooks, type RowChange } from "../../../src/core/bookcheck/compareBooks";
import { kitBookSections, type KitBookRows } from "../../../src/core/kitbook/rows";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { bookRows, type Notation } from "../kitbook/rows";

const between = (before: Notation, after: Notation): readonly string[] =>
  compareBooks(bookRows(before), bookRows(after)).map(brief);

const brief = ({ section, kind, what, before, after, cells }: RowChange): string =>
  `${section} ${before ?? "-"}>${after ?? "-"} ${kind} ${what}${
    kind === "changed"
      ? ` [${cells.map(({ column, before: old, after: now }) => `${column}: ${cellText(old.value)} > ${cellText(now.value)}`).join(", ")}]`
      : ""
  }`;

describe("two books", () => {
  test("that say the same have no difference", () => {
    expect(compareBooks(starterKitBook, starterKitBook)).toEqual([]);
  });

  test("with a size worked out otherwise differ in that cell", () => {
    expect(
      between(
        { sizes: ["Door | panels | IF(width <= 5', 1, 2) | count"] },
        { sizes: ["door | Panels | IF(width <= 6', 1, 2) | count"] },
      ),
    ).toEqual([
      "sizes 1>1 changed door: Panels [type: Door > door, name: panels > Panels, formula: IF(width <= 5', 1, 2) > IF(width <= 6', 1, 2)]",
    ]);
  });

  test("tell a row that came and a row that went", () => {
    expect(
      between(
        { parts: ["Door | Leaf | 1 | NUT | | 1", "Door | Leaf | 1 | BOLT | | 1"] },
        { parts: ["Door | Leaf | 1 | BOLT | | 1", "Door | Leaf | 1 | CLIP | | 2"] },
      ),
    ).toEqual(["parts 1>- removed Door, Leaf: NUT", "parts ->2 added Door, Leaf: CLIP"]);
  });

  test("with the same part twice pair the rows that are alike", () => {
    expect(
      between(
        { parts: ["Door | Leaf | 1 | NUT | | 1", "Door | Leaf | 1 | NUT | | 2"] },
        { parts: ["Door | Leaf | 1 | NUT | | 2", "Door | Leaf | 1 | NUT | | 3"] },
      ),
    ).toEqual(["parts 1>2 changed Door, Leaf: NUT [quantity: 1 > 3]"]);
  });

  test("whose part went into another bag show one change", () => {
    expect(
      between(
        { parts: ["Door | Leaf | 1 | NUT | | 1"] },
        { parts: ["Door | Track | 1 | NUT | | 1"] },
      ),
    ).toEqual(["parts 1>1 changed Door, Track: NUT [bag: Leaf > Track]"]);
  });

  test("whose limit has new words, or a new condition, show one change", () => {
    expect(
      between(
        { limits: ["Door | width > 9' | stop | Too wide", "Door | height > 9' | stop | Too high"] },
        { limits: ["Door | width > 9' | stop | Wide", "Door | height > 8' | stop | Too high"] },
      ),
    ).toEqual([
      "limits 1>1 changed Door: width > 9' [message: Too wide > Wide]",
      "limits 2>2 changed Door: height > 8' [when: height > 9' > height > 8']",
    ]);
  });

  test("show a chart's entries by their keys", () => {
    expect(
      between(
        { charts: ["plate | exact | 7' | 7' | P1"] },
        { charts: ["plate | exact | 7' | 7' | P2", "plate | exact | 8' | 7' | P3"] },
      ),
    ).toEqual([
      "charts 1>1 changed plate: 7' by 7' [value: P1 > P2]",
      "charts ->2 added plate: 8' by 7'",
    ]);
  });

  test("are the same where only the order of rows, spaces or the kind of a number differ", () => {
    expect(
      between(
        { sizes: ["Door | a | 1 | count", "Door | b | 2 | count"] },
        { sizes: ["Door | b | 2 | count", "Door  | a |  1 | count"] },
      ),
    ).toEqual([]);
  });
});

/** A book with few different words, so that likeness is not rare. */
const word = (...words: readonly string[]) => fc.constantFrom(...words);
const row = (...cells: readonly fc.Arbitrary<string>[]) =>
  fc.tuple(...cells).map((words) => words.join(" | "));
const types = word("Door", "Gate", "Door, Gate", "*");
const book: fc.Arbitrary<KitBookRows> = fc
  .record({
    sizes: fc.array(row(types, word("a", "b", "c"), word("1", "2"), word("count", "length"))),
    parts: fc.array(
      row(
        types,
        word("Leaf", "Track"),
        word("1", "2"),
        word("NUT", "BOLT"),
        word(""),
        word("1", "2", "a"),
      ),
    ),
    limits: fc.array(row(types, word("a > 1", "b > 1"), word("stop", "note"), word("Ho", "Hey"))),
    charts: fc.array(
      row(word("plate", "clip"), word("exact"), word("1", "2"), word("1", "2"), word("A", "B")),
    ),
  })
  .map(bookRows);

const turned = (change: RowChange): RowChange => ({
  ...change,
  kind: change.kind === "added" ? "removed" : change.kind === "removed" ? "added" : "changed",
  before: change.after,
  after: change.before,
  cells: change.cells.map(({ column, before, after }) => ({
    column,
    before: after,
    after: before,
  })),
});

/** Without what the row is called, which is told of the later book. */
const set = (changes: readonly RowChange[]): readonly string[] =>
  changes.map((change) => JSON.stringify({ ...change, what: "" })).toSorted();

describe("whatever the books", () => {
  test("a book does not differ from itself", () => {
    fc.assert(fc.property(book, (one) => expect(compareBooks(one, one)).toEqual([])));
  });

  test("one way is the other way turned round", () => {
    fc.assert(
      fc.property(book, book, (one, other) => {
        const there = compareBooks(one, other);
        const back = compareBooks(other, one);
        expect(set(back)).toEqual(set(there.map(turned)));
      }),
    );
  });

  test("taking all changes makes the other book, and taking none leaves the book", () => {
    fc.assert(
      fc.property(book, book, (one, other) => {
        const changes = compareBooks(one, other);
        expect(compareBooks(applyChanges(one, other, changes), other)).toEqual([]);
        expect(applyChanges(one, other, changes, () => false)).toEqual(one);
      }),
    );
  });

  test("taking some changes leaves the others to be taken", () => {
    fc.assert(
      fc.property(book, book, fc.array(fc.boolean()), (one, other, choice) => {
        const changes = compareBooks(one, other);
        const chosen = new Set(changes.filter((_, index) => choice[index] === true));
        const between = applyChanges(one, other, changes, (change) => chosen.has(change));
        const rest = compareBooks(between, other);
        expect(rest.length).toBeLessThanOrEqual(changes.length - chosen.size);
        expect(compareBooks(applyChanges(between, other, rest), other)).toEqual([]);
      }),
    );
  });

  test("no row is made up and none is lost", () => {
    fc.assert(
      fc.property(book, book, (one, other) => {
        const changes = compareBooks(one, other);
        for (const section of kitBookSections) {
          const ofSection = changes.filter((change) => change.section === section);
          const gone = ofSection.filter(({ kind }) => kind === "removed").length;
          const come = ofSection.filter(({ kind }) => kind === "added").length;
          expect(one[section].length - gone + come).toBe(other[section].length);
        }
      }),
    );
  });
});
