/** The sheets about a kit book, against `book-check.expected.txt` and `boundaries.expected.txt`. */
import { test } from "@jest/globals";
import { bookCheckDrawing, boundaryDrawing } from "../../src/app/kitbook/bookSheets";
import { checkKitBook } from "../../src/app/kitbook/checkKitBook";
import { checkGivenOpening } from "../../src/app/openings/givenOpening";
import { readInputs } from "../../src/app/reading/inputs";
import { kitBookAtHand } from "../../src/app/kitbook/kitBookAtHand";
import { readOpeningWords } from "../../src/app/openings/openingWords";
import { defaultSettings } from "../../src/app/settings";
import { setUpDrawings } from "../../src/app/writing/setUpWorkbook";
import { finish } from "../../src/core/base/steps";
import { boundaryTable } from "../../src/core/bookcheck/boundaries";
import { openingTypeNamed } from "../../src/core/kitbook/kitBook";
import { workbookOf } from "../app/typedWorkbook";
import { drawingText } from "./drawingText";
import { check } from "./expected";

/** A workbook that owns the starter, one of whose rows a person spoiled. */
async function hand() {
  const workbook = workbookOf({ Start: [] });
  await workbook.write(setUpDrawings(new Set(["kitBook", "items"]), []));
  workbook.type({ sheet: "Kit book limits", row: 3, column: 1 }, "widht > 8'");
  const inputs = await readInputs(workbook, defaultSettings);
  if (!inputs.ok) throw new Error(inputs.error.message);
  return kitBookAtHand(inputs.value, defaultSettings);
}

test("the check of a book gives the sheet expected of it", async () => {
  const book = await hand();
  check("book-check", drawingText(bookCheckDrawing(book, finish(checkKitBook(book)))));
});

test("the boundaries of a width give the sheet expected of them", async () => {
  const at = await hand();
  const words = "type=sliding door, width=8', height=7', post height=7', tail post=yes";
  const given = readOpeningWords(words, at.book.fields);
  if (!given.ok) throw new Error(given.error);
  const [opening] = checkGivenOpening(given.value, ["Sliding door"], "in").openings;
  const type = openingTypeNamed(at.book, "sliding door");
  const field = at.book.fields.find(({ name }) => name === "width");
  if (opening === undefined || type === undefined || field === undefined) throw new Error("None.");
  const domain = { from: 0, to: 600 };
  const table = boundaryTable({ ...at, type, opening, field: field.name, domain });
  check("boundaries", drawingText(boundaryDrawing(at, { type, opening, field }, table)));
});
