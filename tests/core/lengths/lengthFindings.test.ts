import { describe, expect, test } from "@jest/globals";
import { fillPlaces } from "../../../src/core/base/finding";
import {
  lengthDoubt,
  lengthFault,
  lengthFinding,
  lengthFindings,
  type LengthDoubtCode,
  type LengthFaultCode,
} from "../../../src/core/lengths/lengthFindings";
import { readLength } from "../../../src/core/lengths/readLength";

const place = { sheet: "Schedule", row: 6, column: 3 };

describe("findings of lengths", () => {
  test("carry the cell, the level of their row and the words of the fault", () => {
    const result = readLength("7-14", "in");
    if (result.ok) throw new Error("read");
    expect(lengthFinding(result.error, { place, found: "7-14", job: "Mill", mark: "A1" })).toEqual({
      code: "length-inches-past-eleven",
      level: "stop",
      place,
      found: "7-14",
      message: result.error.message,
      job: "Mill",
      mark: "A1",
    });
  });

  test("of doubts do not stop the count", () => {
    const result = readLength(2134, "in");
    const [doubt] = result.ok ? result.value.doubts : [];
    if (doubt === undefined) throw new Error("no doubt");
    expect(lengthFinding(doubt, { place, found: "2134" })).toMatchObject({
      code: "length-not-a-door",
      level: "warn",
    });
  });

  const samples: readonly [LengthFaultCode | LengthDoubtCode, Parameters<typeof readLength>[0]][] =
    [
      ["length-blank", null],
      ["length-not-text-or-number", true],
      ["length-is-an-error", { kind: "error", error: "#N/A" }],
      ["length-is-a-date", { kind: "date", serial: 46_209 }],
      ["length-text-too-long", "8".repeat(200)],
      ["length-not-understood", "84 high"],
      ["length-is-two", "48 x 84"],
      ["length-not-a-fraction", "84 3/2"],
      ["length-inches-past-eleven", "7-14"],
      ["length-negative", "-84"],
      ["length-zero", 0],
      ["length-too-large", 1e9],
      ["length-not-a-door", 7],
      ["length-feet-guessed", "7 6"],
      ["length-many-inches", "7' 14"],
      ["length-comma", "84,125"],
    ];

  test.each(samples)("%s has all its words filled in", (code, value) => {
    const result = readLength(value, "in");
    const said = result.ok ? result.value.doubts[0] : result.error;
    expect(said?.code).toBe(code);
    expect(said?.message).not.toMatch(/\{\w+\}/);
  });

  test("are all made by some cell", () => {
    const made = new Set<string>([...samples.map(([code]) => code), "length-fraction-in-inches"]);
    expect(made).toEqual(new Set(Object.keys(lengthFindings)));
  });

  test("show a place that has no value, so that a missing one is seen", () => {
    expect(lengthDoubt("length-comma", "2,134", {}).message).toContain("{read}");
    expect(lengthFault("length-is-a-date", "6-Jul").message).toContain("{typed}");
    expect(fillPlaces("{a} {b}", { a: 1 })).toBe("1 {b}");
  });
});
