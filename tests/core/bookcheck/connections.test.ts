import { describe, expect, test } from "@jest/globals";
import { connectionsIn } from "../../../src/core/bookcheck/connections";
import { findingsOfConnections } from "../../../src/core/bookcheck/connectionFindings";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { usDollar } from "../../../src/core/money/currency";
import { checkItems } from "../../../src/core/pricing/item";
import { brief, compiled } from "../kitbook/rows";
import { starter } from "./openings";

const { items } = checkItems(starterItems, usDollar);

/** Parts of one bag and step; the last columns are when, cut length, minutes and joined. */
const book = (parts: readonly string[], sizes: readonly string[] = []) =>
  compiled({ sizes, parts: parts.map((part) => `Door | ${part}`) }).book;
const connections = (...parts: readonly string[]) => connectionsIn(book(parts), items).connections;
const codes = (...parts: readonly string[]) =>
  connections(...parts).map(({ faults }) => faults.map(({ code }) => code));

describe("what belongs together", () => {
  test("is a bolt with the washers and the nut below it", () => {
    expect(
      connections(
        'Leaf | 1 | HB 1/4 x 3/4 | | 2 | | | | 1/4"',
        "Leaf | 1 | LW 1/4 | | 2",
        "Leaf | 1 | HN 1/4 | | 2",
        'Leaf | 1 | CB 5/16 x 1 | | 1 | | | | 1/2"',
        "Leaf | 1 | HN 5/16 | | 1",
      ).map((connection) => connection.items),
    ).toEqual([
      ["HB 1/4 x 3/4", "LW 1/4", "HN 1/4"],
      ["CB 5/16 x 1", "HN 5/16"],
    ]);
  });

  test("is all of it where there is one bolt, in any order", () => {
    expect(
      connections(
        "Leaf | 1 | HN 1/4 | | 2",
        "Leaf | 1 | HB 1/4 x 3/4 | | 2",
        "Leaf | 1 | LW 1/4 | | 2",
      ).map((connection) => connection.items),
    ).toEqual([["HB 1/4 x 3/4", "HN 1/4", "LW 1/4"]]);
  });

  test.each([
    ["another bag", "Track | 1 | HN 1/4 | | 2"],
    ["another step", "Leaf | 2 | HN 1/4 | | 2"],
    ["another condition", "Leaf | 1 | HN 1/4 | | 2 | width > 5'"],
  ])("is not what has %s", (_what, nut) => {
    const { connections: found, loose } = connectionsIn(
      book(["Leaf | 1 | HB 1/4 x 3/4 | | 2", nut]),
      items,
    );
    expect(found.map((connection) => connection.items)).toEqual([["HB 1/4 x 3/4"]]);
    expect(loose.map(({ item }) => item)).toEqual(["HN 1/4"]);
  });

  test("is not what has another part between", () => {
    const parts = [
      "Leaf | 1 | HB 1/4 x 3/4 | | 2",
      "Leaf | 1 | STRIKE | | 1",
      "Leaf | 1 | HN 1/4 | | 2",
    ];
    expect(connections(...parts).map((connection) => connection.items)).toEqual([["HB 1/4 x 3/4"]]);
  });
});

describe("the counts of a connection", () => {
  const bolt = (quantity: string) => `Leaf | 1 | HB 1/4 x 3/4 | | ${quantity} | | | | 1/4"`;
  const washer = (quantity: string) => `Leaf | 1 | LW 1/4 | | ${quantity}`;
  const nut = (quantity: string) => `Leaf | 1 | HN 1/4 | | ${quantity}`;

  test.each([
    ["the same formula", "ROUNDUP(width / 2', 0)", "ROUNDUP(width / 2', 0)", []],
    ["two for each", "ROUNDUP(width / 2', 0)", "2 * ROUNDUP(width / 2', 0)", []],
    ["written otherwise and the same", "2 + 2", "4", []],
    ["too few", "4", "3", ["counts-differ"]],
    ["not always as many", "IF(width > 5', 4, 2)", "2", ["counts-differ"]],
  ])("may be %s", (_what, bolts, washers, faults) => {
    expect(codes(bolt(bolts), washer(washers), nut(bolts))).toEqual([faults]);
  });
});

describe("the thickness joined", () => {
  const nut = "Leaf | 1 | HN 1/4 | | 2";
  const bolt = (joined: string) => `Leaf | 1 | HB 1/4 x 1-1/4 | | 2 | | | | ${joined}`;

  test.each([
    ['3/4"', []],
    ["0.95", ["too-short"]],
    ["19.05 mm", []],
    ["IF(height > 8', 1, 0.75)", ["too-short"]],
    ["IF(height > 8', 0.2, 0.75)", ["too-long", "out-of-thread"]],
    ["0 - 1", ["joined-unusable"]],
    ['"thick"', ["joined-unusable"]],
    ["", ["joined-not-known"]],
  ])("%s", (joined, faults) => {
    expect(codes(bolt(joined), nut)).toEqual([faults]);
  });

  test("is a column of the parts that counts nothing", () => {
    const { book: read, findings } = compiled({
      parts: [`Door | ${bolt('3/4"')}`, `Door | ${nut}`],
    });
    expect(findings).toEqual([]);
    expect(read.types[0]?.parts[0]?.joined).toMatchObject({ text: '3/4"' });
  });
});

describe("findings", () => {
  test("stand at the bolt's row and say which it is", () => {
    const found = findingsOfConnections(
      connectionsIn(
        book([
          'Leaf | 1 | CB 1/4 x 1/2 | | 2 | | | | 1/8"',
          "Leaf | 1 | LW 1/4 | | 2",
          "Leaf | 1 | HN 1/4 | | 2",
        ]),
        items,
      ),
    );
    expect(found.map(brief)).toEqual(["parts!A1 too-short"]);
    expect(found[0]?.message).toMatch(/^Parts row 1: CB 1\/4 x 1\/2 may stand only 1.7 threads/);
  });

  test("about thicknesses that nobody gave are one", () => {
    const bolt = "Leaf | 1 | HB 1/4 x 3/4 | | 2";
    const nut = "Leaf | 1 | HN 1/4 | | 2";
    const found = findingsOfConnections(connectionsIn(book([bolt, nut, bolt, nut]), items));
    expect(found.map(({ code }) => code)).toEqual(["joined-nowhere"]);
  });

  test("have no place left empty in their words", () => {
    const found = findingsOfConnections(
      connectionsIn(
        book([
          'Leaf | 1 | HB 1/4 x 3/4 | | 2 | | | | 2"',
          "Leaf | 1 | FW 5/16 | | 3",
          "Track | 1 | HB 1/4 x 3/4 | | 2 | | | | 0.01",
          "Track | 1 | HN 1/4 | | 4",
          "Guide | 1 | CB 1/4 x 1-1/4 | | 2 | | | | 0.1",
          "Guide | 1 | HN 1/4 | | 2",
          "Stop | 1 | HN 1/4 | | 2",
          "Stile | 1 | HB 1/4 x 3/4 | | 2 | | | | 0 - 1",
        ]),
        items,
      ),
    );
    expect(found.length).toBeGreaterThan(6);
    for (const { message } of found) expect(message).not.toMatch(/[{}]|undefined|NaN/);
  });
});

// Thicknesses joined are invented; the bolts are common practice, no source.
describe("the starter", () => {
  const { connections: found, loose } = connectionsIn(starter, items);

  test("says of every bolt what it joins, and that the thickness is invented", () => {
    expect(found.length).toBeGreaterThan(25);
    for (const { joined } of found) expect(joined?.least).toBeGreaterThan(0);
    for (const type of starter.types) {
      for (const { joined, basis } of type.parts) {
        if (joined !== null) expect(basis).toMatch(/invented/);
      }
    }
  });

  test("has bolts, washers and nuts that belong together", () => {
    const known = ["too-short", "too-long", "nut-not-full", "out-of-thread", "neck-too-deep"];
    for (const { faults } of found) for (const { code } of faults) expect(known).toContain(code);
  });

  test("is short of two threads only where a half-inch bolt holds a strike", () => {
    const wrong = found.filter(({ faults }) => faults.length > 0);
    expect(new Set(wrong.map((connection) => connection.items[0]))).toEqual(
      new Set(["CB 1/4 x 1/2"]),
    );
    expect(new Set(wrong.flatMap(({ faults }) => faults.map(({ code }) => code)))).toEqual(
      new Set(["too-short"]),
    );
  });

  test("has no nut without a bolt but the trolleys'", () => {
    expect(loose.map(({ item }) => item)).toEqual(["HN 1/2", "HN 1/2"]);
  });
});
