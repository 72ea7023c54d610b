/** Sheets to start with: a schedule, items, jobs and a kit book, beside whatever a workbook has already. */
import type { MeasureStyle } from "../../core/measures/measures";
import { starterItems } from "../../core/kitbook/starter/items";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import { itemsSheet } from "../../sheets/itemsSheet";
import { jobDatesSheet } from "../../sheets/orders/purchasingSheets";
import { scheduleHeadings, scheduleSheet } from "../../sheets/scheduleSheet";
import { kitBookDrawings } from "../../tables/kitBookDrawings";
import type { Drawing } from "../../workbook/drawing";
import { priceSetUpDrawings } from "../pricing/ownerSheets";

/** In the order in which they are made. */
export const setUpParts = ["schedule", "items", "jobs", "kitBook", "prices"] as const;
export type SetUpPart = (typeof setUpParts)[number];

/** Rows of an empty schedule that have drop-downs. */
const rowsToType = 200;

/**
 * The drawings of the parts wanted. They belong to the person, so writing them touches nothing that
 * stands. `types` are the opening types to choose from, `style` the units of rates.
 */
export const setUpDrawings = (
  wanted: ReadonlySet<SetUpPart>,
  types: readonly string[],
  style: MeasureStyle = "pounds",
): readonly Drawing[] =>
  setUpParts.filter((part) => wanted.has(part)).flatMap((part) => drawingsOf(part, types, style));

function drawingsOf(
  part: SetUpPart,
  types: readonly string[],
  style: MeasureStyle,
): readonly Drawing[] {
  switch (part) {
    case "schedule":
      return [
        scheduleSheet({
          name: "Schedule",
          notice: null,
          headings: scheduleHeadings,
          rows: [],
          types,
          spareRows: rowsToType,
        }),
      ];
    case "items":
      return [
        itemsSheet(
          "Items",
          starterItems,
          "Every cost and weight on this sheet is invented. Replace them with your suppliers' own.",
        ),
      ];
    case "jobs":
      return [jobDatesSheet([], null)];
    case "kitBook":
      return kitBookDrawings(starterKitBook);
    case "prices":
      return priceSetUpDrawings(style);
  }
}
