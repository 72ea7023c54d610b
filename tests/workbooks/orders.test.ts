/**
 * Orders of the demo and of a metric workbook, kept, sent and received, against what is expected of
 * their sheets. To accept a change, run with ACCEPT=1 and read the difference before it is committed.
 */
import { expect, test } from "@jest/globals";
import { countFile } from "../../src/app/orders/countFile";
import { keepDraft, sendKept } from "../../src/app/orders/keepOrder";
import { receiveKept } from "../../src/app/orders/receiveOrder";
import { writeSettings, defaultSettings } from "../../src/app/settings";
import { dateSerial } from "../../src/core/base/date";
import type { Drawing } from "../../src/workbook/drawing";
import type { Workbook } from "../../src/workbook/workbook";
import { orderOf } from "../app/orders/orderFiles";
import { demoWorkbook, workbookOf, type TypedSheets } from "../app/typedWorkbook";
import { drawingText } from "./drawingText";
import { check } from "./expected";

const day = dateSerial(2026, 11, 2) ?? 0;

/** Keeps, sends and receives one order for all jobs: the sheets that each act wrote. */
async function sheetsOf(workbook: Workbook): Promise<Readonly<Record<string, string>>> {
  let drawn: readonly Drawing[] = [];
  const watched: Workbook = {
    ...workbook,
    write: (drawings, options) => {
      drawn = drawings;
      return workbook.write(drawings, options);
    },
  };
  const written = (done: { readonly ok: boolean }): string => {
    expect(done).toMatchObject({ value: expect.anything() });
    return drawn.map(drawingText).join("\n");
  };
  const counted = await countFile({ file: "a.xlsx", workbook }, day);
  if (!counted.ok) throw new Error(counted.error.message);
  const order = orderOf([counted.value], { today: day });
  const kept = written(await keepDraft(watched, order, { day, number: null }));
  const number = "PO-2026-0001";
  const sent = written(await sendKept(watched, number, { day: day + 1, who: "KB" }));
  const received = written(await receiveKept(watched, number, { day: day + 14, who: "MJ" }));
  return { kept, sent, received };
}

test("an order of the demo gives the sheets expected of it", async () => {
  const { kept = "", received = "" } = await sheetsOf(await demoWorkbook());
  check("demo-order", kept);
  check("demo-order-received", received);
});

const metric: TypedSheets = {
  List: [
    ["Job", "Mark", "Qty", "Type", "Width", "Height", "Post height", "Tail post", "Floor"],
    ["Halle", "T-1", 2, "sliding door", 1219, 2134, 2438, "yes", "concrete"],
    ["Lager", "T-2", 1, "sliding door", 1524, 2134, 2438, "yes", "concrete"],
  ],
  Offers: [
    ["Item", "Size", "Supplier", "Pieces in a pack", "Price per pack", "Lead days"],
    ["TROLLEY", null, "Alder", 5, 50, 5],
    ["TRACK", 6000, "Birch", 1, 80, 8],
    ["HN 1/4", null, "Alder", 100, 4, 5],
  ],
  Stock: [
    ["Item", "Size", "On hand"],
    ["TROLLEY", null, 1],
    ["TRACK", 2900, 1],
  ],
  Dates: [
    ["Job", "Need by", "Ship to"],
    ["Halle", "2026-12-14", "Gate 1 (invented)"],
    ["Lager", "2027-01-15", "Gate 2 (invented)"],
  ],
};

test("an order in millimetres gives the sheets expected of it", async () => {
  const workbook = workbookOf(metric);
  await writeSettings(workbook, {
    ...defaultSettings,
    unit: "mm",
    lengths: "millimetres",
    currency: "EUR",
  });
  const { kept = "", sent = "", received = "" } = await sheetsOf(workbook);
  check("metric-order", [kept, sent, received].join("\n"));
});
