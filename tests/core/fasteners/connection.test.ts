import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { boltFit, connectionFaults, type Connection } from "../../../src/core/fasteners/connection";
import { fastenerSizes, threadLength } from "../../../src/core/fasteners/fastenerSizes";
import { readFastener, type Fastener } from "../../../src/core/fasteners/readFastener";

function fastener(text: string): Fastener {
  const read = readFastener(text);
  if (read === null) throw new Error(`No fastener: ${text}`);
  return read;
}

/** `CB 1/4 x 1/2 + LW 1/4 + 2 FW 1/4 + HN 1/4`. */
function connection(text: string, joined: number | null): Connection {
  const [bolt = "", ...others] = text.split(" + ");
  return {
    bolt: fastener(bolt),
    onBolt: others.map((other) => {
      const [, each = "1", name = ""] = /^(?:(\d) )?([A-Z]+ .*)$/.exec(other) ?? [];
      return { fastener: fastener(name), each: Number(each) };
    }),
    joined,
  };
}
const faults = (text: string, joined: number | null): readonly string[] =>
  connectionFaults(connection(text, joined)).map(({ code }) => code);

// Dimensions: ASME B18.2.2, B18.21.1. Two threads beyond the nut: common practice, no source.
describe("a bolt's length", () => {
  test.each([
    // 1.25 - 0.75 - 0.226 leaves 0.274 in: 5.5 threads of 1/20 in.
    ["CB 1/4 x 1-1/4 + HN 1/4", 0.75, []],
    // 0.5 - 0.125 - 0.062 - 0.226 leaves 0.087 in: 1.7 threads.
    ["CB 1/4 x 1/2 + LW 1/4 + HN 1/4", 0.125, ["too-short"]],
    ["CB 1/4 x 1/2 + LW 1/4 + HN 1/4", 0.25, ["nut-not-full"]],
    // 0.75 - 0.071 - 0.062 - 0.226 - 0.1 = 0.291 in may be joined.
    ["HB 1/4 x 3/4 + FW 1/4 + LW 1/4 + HN 1/4", 0.291, []],
    ["HB 1/4 x 3/4 + FW 1/4 + LW 1/4 + HN 1/4", 0.292, ["too-short"]],
    ["HB 1/4 x 3/4 + 2 FW 1/4 + LW 1/4 + HN 1/4", 0.291, ["too-short"]],
    // More than half an inch beyond the nut.
    ["HB 1/4 x 3/4 + HN 1/4", 0.02, ["too-long"]],
    ["HB 1/4 x 3/4 + HN 1/4", 0.03, []],
    // 2 x 1/4 + 1/4 in of thread (ASME B18.2.1): half an inch of this bolt has none.
    ["HB 1/4 x 1-1/4 + HN 1/4", 0.49, ["too-long", "out-of-thread"]],
    ["HB 1/4 x 1-1/4 + HN 1/4", 0.51, ["too-long"]],
    ["HB 1/2 x 4 + HN 1/2", 2.7, ["too-long", "out-of-thread"]],
    ["HB 1/2 x 4 + HN 1/2", 3.2, []],
  ])("%s through %f in", (text, joined, codes) => {
    expect(faults(text, joined)).toEqual(codes);
  });

  test("is told with the next usual length", () => {
    const [fault] = connectionFaults(connection("CB 1/4 x 1/2 + LW 1/4 + HN 1/4", 0.125));
    expect(fault).toMatchObject({ code: "too-short", length: 0.75 });
  });

  test("of a square neck must lie within what is joined", () => {
    expect(faults("CB 1/4 x 3/4 + LW 1/4 + HN 1/4", 0.12)).toEqual(["neck-too-deep"]);
    expect(faults("CB 1/4 x 3/4 + LW 1/4 + HN 1/4", 0.125)).toEqual([]);
    expect(faults("HB 1/4 x 3/4 + LW 1/4 + HN 1/4", 0.12)).toEqual([]);
  });
});

describe("bolt, washers and nut", () => {
  test.each([
    ["HB 1/4 x 3/4 + FW 5/16 + HN 1/4", 0.25, ["size-differs"]],
    ["HB 1/4 x 3/4 + HN 5/16", 0.25, ["size-differs"]],
    ["hex bolt 1/4-20 x 3/4 + HN 1/4", 0.25, []],
    ["HB 1/4 x 3/4 + FW 1/4", 0.25, ["no-nut"]],
    ["HB 1/4 x 1-1/4 + 2 HN 1/4", 0.6, ["several-nuts"]],
    ["HB 1/4 x 3/4 + HN 1/4", null, ["joined-not-known"]],
    ["HB 1/4 + HN 1/4", 0.25, ["length-not-known"]],
    ["HB 7/16 x 1 + HN 7/16", 0.25, ["not-known", "not-known"]],
  ])("%s", (text, joined, codes) => {
    expect(faults(text, joined)).toEqual(codes);
  });

  test("of one size and two threads do not belong together", () => {
    const fine = { ...fastener("HN 1/4"), threads: 28 };
    const coarse = fastener("hex bolt, 1/4-20 x 3/4 in");
    const given = { bolt: coarse, onBolt: [{ fastener: fine, each: 1 }], joined: 0.25 };
    expect(connectionFaults(given).map(({ code }) => code)).toEqual(["threads-differ"]);
  });
});

describe("whatever is joined", () => {
  const any = fc.record({
    size: fc.constantFrom(...fastenerSizes),
    length: fc.integer({ min: 1, max: 24 }).map((quarters) => quarters / 4),
    joined: fc.integer({ min: 0, max: 400 }).map((hundredths) => hundredths / 100),
    washers: fc.nat(2),
  });

  test("a longer bolt stands farther beyond its nut, and no bolt is too short and too long", () => {
    fc.assert(
      fc.property(any, ({ size, length, joined, washers }) => {
        const bolt = (long: number): Connection => ({
          bolt: { kind: "hex bolt", nominal: size.nominal, size, threads: null, length: long },
          onBolt: [
            { fastener: fastener(`FW ${size.nominal}`), each: washers },
            { fastener: fastener(`HN ${size.nominal}`), each: 1 },
          ],
          joined,
        });
        const [short, long] = [boltFit(bolt(length)), boltFit(bolt(length + 0.25))];
        expect((long?.beyond ?? 0) - (short?.beyond ?? 0)).toBeCloseTo(0.25, 9);
        const codes = connectionFaults(bolt(length)).map(({ code }) => code);
        const ways = ["nut-not-full", "too-short", "too-long"].filter((code) =>
          codes.some((c) => c === code),
        );
        expect(ways.length).toBeLessThanOrEqual(1);
        const told = connectionFaults(bolt(length)).find((fault) => "length" in fault);
        if (told !== undefined && "length" in told) {
          const better = connectionFaults(bolt(told.length)).map(({ code }) => code);
          expect(better).not.toContain("too-short");
          expect(better).not.toContain("nut-not-full");
        }
      }),
    );
  });

  test("threads are as long as the standard has them", () => {
    // ASME B18.2.1: 3/4, 7/8, 1 and 1-1/4 in.
    expect(fastenerSizes.map(threadLength)).toEqual([0.75, 0.875, 1, 1.25]);
  });
});
