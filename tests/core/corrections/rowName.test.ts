import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { inches } from "../../../src/core/base/units";
import {
  bandMark,
  readRowName,
  rowKey,
  writeRowName,
  type RowName,
} from "../../../src/core/corrections/rowName";

const words = fc
  .string({ unit: fc.constantFrom("a", "B", "7", "'", " ", "|", "#", ">", "\\", "x", "-") })
  .map((text) => text.trim());
const count = fc.integer({ min: 1, max: 99 });
const name = fc.oneof(
  fc.record({
    kind: fc.constant("line" as const),
    job: words,
    item: words,
    size: fc.array(fc.double({ min: 0.01, max: 999, noNaN: true }).map(inches), { maxLength: 2 }),
    copy: count,
  }),
  fc.record({ kind: fc.constant("added" as const), job: words, number: count }),
  fc.record({ kind: fc.constant("move" as const), from: words, to: words }),
);

describe("the name of a row", () => {
  test("is read back from its cell, whatever the job and the item are called", () => {
    fc.assert(
      fc.property(name, (each: RowName) => {
        expect(readRowName(writeRowName(each))).toEqual(each);
      }),
    );
  });

  test("is read back where a host cuts spaces off", () => {
    fc.assert(
      fc.property(name, (each: RowName) => {
        expect(readRowName(writeRowName(each).trim())).toEqual(each);
      }),
    );
  });

  test("reads as job, item and size in inches", () => {
    const size = [inches(48), inches(84.5)];
    const line: RowName = { kind: "line", job: "Crib", item: "PANEL", size, copy: 1 };
    expect(writeRowName(line)).toBe("Crib | PANEL | 48 x 84.5");
    expect(writeRowName({ ...line, copy: 2 })).toBe("Crib | PANEL | 48 x 84.5 | #2");
  });

  test.each(["", bandMark, "Fasteners", "Crib | PANEL | wide", "Crib | #0", "a | b |  | d"])(
    "is none in %s",
    (text) => {
      expect(readRowName(text)).toBeNull();
    },
  );

  test("is the same for a job and an item in other letters and spaces", () => {
    const key = (job: string, item: string): string =>
      rowKey({ kind: "line", job, item, size: [], copy: 1 });
    expect(key("Crib  one", "hn 1/4 ")).toBe(key("crib one", "HN 1/4"));
    expect(key("Crib", "HN 1/4")).not.toBe(key("Crib", "HN 1/2"));
  });
});
