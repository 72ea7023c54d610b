/** @jest-environment jsdom */
import { expect, test } from "@jest/globals";
import { tableOfText } from "../../../src/adapters/embedded/pastedText";

/** The cells of the table that the text becomes, as a browser reads them. */
function cellsOf(text: string): string[][] {
  const page = new DOMParser().parseFromString(tableOfText(text), "text/html");
  return [...page.querySelectorAll("tr")].map((row) =>
    [...row.querySelectorAll("td")].map((cell) => {
      for (const end of cell.querySelectorAll("br")) end.replaceWith("\n");
      return cell.textContent;
    }),
  );
}

test.each<[what: string, text: string, cells: string[][]]>([
  [
    "blank first cells",
    "\tA-1\t7'\n\t\t8'",
    [
      ["", "A-1", "7'"],
      ["", "", "8'"],
    ],
  ],
  [
    "blank last cells",
    "A-1\t\t\nA-2\t7'\t",
    [
      ["A-1", "", ""],
      ["A-2", "7'", ""],
    ],
  ],
  [
    "lines as they end in Windows",
    "A-1\t7'\r\nA-2\t8'\r\n",
    [
      ["A-1", "7'"],
      ["A-2", "8'"],
    ],
  ],
  ["a blank row between", "A-1\n\nA-2", [["A-1"], [""], ["A-2"]]],
  ["what looks like HTML", "<4'>\t&amp;\ta < b > c", [["<4'>", "&amp;", "a < b > c"]]],
  ["blanks around", "  a \t b", [["  a ", " b"]]],
  [
    "inch marks and ditto marks",
    `7'-0"\t"\t6"\n"\t"\t8"`,
    [
      [`7'-0"`, `"`, `6"`],
      [`"`, `"`, `8"`],
    ],
  ],
  ["a column of ditto marks", `"\n"\n7"`, [[`"`], [`"`], [`7"`]]],
  ["a cell of two lines", `"by ""us""\nor them"\tA-1`, [[`by "us"\nor them`, "A-1"]]],
  ["one cell and the end of its line", "A-1\r\n", [["A-1"]]],
])("a pasted text keeps its cells: %s", (_, text, cells) => {
  expect(cellsOf(text)).toEqual(cells);
});

test("a text of one cell is no table", () => {
  expect(tableOfText(`<b> 7'-0"`)).toBe("");
  expect(tableOfText("")).toBe("");
});
