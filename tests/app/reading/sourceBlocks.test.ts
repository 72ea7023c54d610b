import { expect, test } from "@jest/globals";
import { sameSource } from "../../../src/app/reading/sourceBlocks";

test("a sheet is the same one however its letters are typed, and never a table of that name", () => {
  const doors = { kind: "sheet", sheet: "Doors" } as const;
  expect(sameSource(doors, { kind: "sheet", sheet: "doors" })).toBe(true);
  expect(sameSource(doors, { kind: "sheet", sheet: "Door" })).toBe(false);
  expect(sameSource(doors, { kind: "table", table: "Doors" })).toBe(false);
});
