import { expect, test } from "@jest/globals";
import type { CellValue } from "../../src/core/base/cell";
import { readTermsTable } from "../../src/tables/termsTable";

const read = (...rows: readonly (readonly CellValue[])[]) =>
  readTermsTable({ sheet: "Terms", row: 2, column: 1, rows });

test("a terms sheet gives each term its kind, its job without case and its cell", () => {
  const reading = read(
    ["Our terms"],
    ["Quotation term", "Job", "Text"],
    ["firm", null, "Invented Partitions"],
    ["NOTE", " North ", "Bring a lift"],
    ["Note", "", " "],
  );
  expect(reading).toEqual({
    findings: [],
    terms: [
      {
        kind: "firm",
        job: "",
        cell: { value: "Invented Partitions", place: { sheet: "Terms", row: 4, column: 3 } },
      },
      {
        kind: "note",
        job: "north",
        cell: { value: "Bring a lift", place: { sheet: "Terms", row: 5, column: 3 } },
      },
    ],
  });
});

test("a column for jobs may be missing", () => {
  expect(read(["Quotation term", "Text"], ["Firm", "F"])?.terms[0]?.job).toBe("");
});

test("a kind that nobody knows is named, with a guess", () => {
  const reading = read(["Quotation term", "Text"], ["Exclusions", "permits"]);
  expect(reading?.terms).toEqual([]);
  expect(reading?.findings[0]?.message).toContain("Did you mean Exclusion?");
});

test.each([[[]], [[["Text", "Job"]]], [[["Rate", "Usual"]]]])("%j is no terms sheet", (rows) => {
  expect(read(...rows)).toBeNull();
});
