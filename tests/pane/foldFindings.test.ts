import { describe, expect, test } from "@jest/globals";
import type { Finding, FindingLevel } from "../../src/core/base/finding";
import { foldFindings } from "../../src/pane/mend/foldFindings";

const finding = (level: FindingLevel, message: string, row = 0): Finding => ({
  code: "x",
  level,
  message,
  found: "",
  place: { sheet: "Schedule", row, column: 0 },
});

describe("findings gathered for a person", () => {
  test("put what stops the count first, whatever the order they come in", () => {
    const levels = foldFindings([
      finding("note", "a"),
      finding("warn", "b"),
      finding("stop", "c"),
    ]).map(({ level }) => level);
    expect(levels).toEqual(["stop", "warn", "note"]);
  });

  test("say the same words once, with every cell in order", () => {
    const [notes] = foldFindings([
      finding("note", "same", 3),
      finding("note", "other", 4),
      finding("note", "same", 9),
    ]);
    expect(notes?.count).toBe(3);
    expect(notes?.folds.map(({ message }) => message)).toEqual(["same", "other"]);
    expect(notes?.folds[0]?.findings.map(({ place }) => place?.row)).toEqual([3, 9]);
  });

  test("keep the same words apart where they are of another level", () => {
    expect(foldFindings([finding("warn", "same"), finding("note", "same")])).toHaveLength(2);
  });

  test("are nothing where there are none", () => {
    expect(foldFindings([])).toEqual([]);
  });
});
