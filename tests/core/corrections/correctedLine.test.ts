import { expect, test } from "@jest/globals";
import { pieces } from "../../../src/core/base/units";
import { readChange } from "../../../src/core/corrections/change";
import { asCounted, correctionWords } from "../../../src/core/corrections/correctedLine";
import { nothingTyped } from "../../../src/core/corrections/correction";
import { lineName } from "../../../src/core/corrections/rowName";

test.each([
  [{ correction: "14", by: "AB", reason: "on site" }, "=14 by AB: on site"],
  [{ correction: "＋3" }, "+3"],
  [{ correction: "plenty", by: "AB" }, "plenty (not used) by AB"],
  [{ spares: "2", by: "AB" }, "spares typed by AB"],
])("what was typed, %j, is told as %s", (cells, words) => {
  const typed = { ...nothingTyped, ...cells };
  const change = readChange(typed.correction);
  const line = asCounted({ item: "JAMB", size: [], quantity: pieces(2), counts: [] });
  const name = lineName("Crib", line);
  expect(
    correctionWords({
      ...line,
      typed: { name, typed, counted: null },
      change: change.ok ? change.value : null,
    }),
  ).toBe(words);
});
