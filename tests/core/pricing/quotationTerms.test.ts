import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../src/core/base/cell";
import { termsFor, type TermKind, type TypedTerm } from "../../../src/core/pricing/quotationTerms";

const term = (kind: TermKind, value: CellValue, job = ""): TypedTerm => ({
  kind,
  job,
  cell: { value, place: null },
});
const of = (...typed: readonly TypedTerm[]) => termsFor(typed, " North ", 46_200);

describe("the terms of a job", () => {
  test("are the usual ones, and its own single terms instead of those, in any order", () => {
    const { terms } = of(
      term("customer", "Of the job", "north"),
      term("customer", "Usual"),
      term("firm", " Firm "),
      term("firm", "Another job's", "south"),
    );
    expect([terms.customer, terms.firm]).toEqual(["Of the job", "Firm"]);
  });

  test("are the usual lines, then its own", () => {
    const { terms } = of(
      term("note", "own", "north"),
      term("note", "usual"),
      term("note", "not this one", "south"),
      term("note", " "),
    );
    expect(terms.notes).toEqual(["usual", "own"]);
  });

  test("name the job as the project where no other is typed", () => {
    expect(of().terms.project).toBe(" North ");
    expect(of(term("project", "Hall 2")).terms.project).toBe("Hall 2");
  });

  test("are the starter's, marked so, where nothing was typed at all", () => {
    const { terms } = termsFor(null, "North", 46_200);
    const texts = [terms.firm, terms.customer, ...terms.inclusions, ...terms.exclusions];
    expect(texts.every((words) => words.startsWith("Starter text: "))).toBe(true);
  });
});

describe("validity", () => {
  test.each([
    [45, 45, 0],
    ["60", 60, 0],
    [null, 30, 0],
    [0, 30, 1],
    [1.5, 30, 1],
    ["a month", 30, 1],
    [1e9, 30, 1],
  ])("of %j is %d days", (typed, days, faults) => {
    const { terms, findings } = of(term("validDays", typed));
    expect([terms.validUntil - terms.date, findings.length]).toEqual([days, faults]);
  });
});
