/** The sheets of a count that a person corrected, against `corrected.expected.txt`. */
import { test } from "@jest/globals";
import { memoryDesk } from "../app/corrections/desk";
import { sheetRows, typeInRow } from "../app/corrections/hardwareSheets";
import { scheduleRows, snapshotOf } from "../app/typedWorkbook";
import { defaultSettings } from "../../src/app/settings";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../src/app/reading/workbookTakeOff";
import { takeOffDrawings, writeTakeOff } from "../../src/app/writing/writeSheets";
import { writeRowName } from "../../src/core/corrections/rowName";
import { drawingText } from "./drawingText";
import { check } from "./expected";

const desk = memoryDesk(
  snapshotOf({
    Schedule: scheduleRows(
      "A-1 | 2 | hinged door | 3' | 7' | 8'",
      "A-2 | 1 | hinged door | 4' | 7' | 8'",
    ),
  }),
);

async function takeOff(): Promise<WorkbookTakeOff> {
  const result = await takeOffWorkbook(desk.workbook, defaultSettings);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** A person types in the row that is called `name`. */
function type(name: string, cells: Parameters<typeof typeInRow>[2]): void {
  const row = sheetRows(desk).find((each) => writeRowName(each.name).trim() === name);
  if (row === undefined) throw new RangeError(`No such row: ${name}`);
  typeInRow(desk, row, cells);
}

test("a corrected count gives the sheets expected of it", async () => {
  await writeTakeOff(desk.workbook, await takeOff(), defaultSettings);
  type("Crib | HN 1/4 |", { correction: "+6", reason: "two bags went astray", by: "AB" });
  type("Crib | HINGE |", { correction: "=8", reason: "one bent", by: "CD" });
  type("Crib | LATCH |", { correction: "-9", reason: "owner's own", by: "AB" });
  type("Crib | STRIKE |", { correction: "some" });
  type("Crib | PANEL | 36 x 84", { correction: "+1", reason: "cut on site", by: "AB" });
  type("Crib | LW 1/4 |", { spares: 25, reason: "open box", by: "AB" });
  type("Crib | #1", { item: "HASP", quantity: 2, reason: "asked for", by: "AB" });
  type("Crib | #2", { item: "SIGN", size: `1'-0" x 8"`, quantity: 1, reason: "asked for" });
  type("Crib | #3", { item: "HASP", quantity: "a few" });
  await writeTakeOff(desk.workbook, await takeOff(), defaultSettings);
  // The line of one correction goes.
  desk.type({ sheet: "Schedule", row: 1, column: 4 }, "4'");
  const drawings = takeOffDrawings(await takeOff(), defaultSettings);
  check("corrected", drawings.map(drawingText).join("\n"));
});
