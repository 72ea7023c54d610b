/**
 * Each example of this folder, taken off, against what is expected of it: `NAME.csv` (or the demo)
 * in, `NAME.expected.txt` out, which is every sheet that would be written
 * (`demo-prices.expected.txt` and `demo-packing.expected.txt` for the demo's price and packing sheets). To accept a change, run
 * with ACCEPT=1 and read the difference before it is committed.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "@jest/globals";
import { fileWorkbook } from "../../src/adapters/xlsx/fileWorkbook";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotParts } from "../../src/adapters/xlsx/snapshotBytes";
import { demoDrawings } from "../../src/app/demo/demoDrawings";
import { defaultSettings, type Settings } from "../../src/app/settings";
import { ownerDrawings } from "../../src/app/pricing/ownerDrawings";
import { packingDrawings } from "../../src/app/writing/packingLists";
import { priceDrawings, priceWorkbook } from "../../src/app/pricing/priceWorkbook";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import { workbookLoads } from "../../src/app/pricing/workbookLoads";
import { takeOffDrawings } from "../../src/app/writing/writeSheets";
import { drawnWorkbook } from "../../src/workbook/drawnWorkbook";
import type { Workbook } from "../../src/workbook/workbook";
import { drawingText } from "./drawingText";
import { check } from "./expected";

const folder = __dirname;

async function sheetsOf(workbook: Workbook, settings: Settings): Promise<string> {
  const takeOff = await takeOffWorkbook(workbook, settings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  return takeOffDrawings(takeOff.value, settings).map(drawingText).join("\n");
}

const examples = readdirSync(folder).filter((file) => file.endsWith(".csv"));

test.each(examples)("%s gives the sheets expected of it", async (file) => {
  const opened = openFile(readFileSync(join(folder, file)), file);
  if (!opened.ok) throw new Error(opened.error.message);
  const unit = file.includes("metric") ? "mm" : "in";
  const lengths = unit === "mm" ? "millimetres" : "feet and inches";
  check(
    file.replace(".csv", ""),
    await sheetsOf(opened.value, { ...defaultSettings, unit, lengths }),
  );
});

const demo = (): Workbook =>
  fileWorkbook(snapshotParts(drawnWorkbook("demo.xlsx", demoDrawings())), "demo.xlsx");

test("the demo gives the sheets expected of it", async () => {
  check("demo", await sheetsOf(demo(), defaultSettings));
});

test("the demo gives the packing lists, labels and loading lists expected of it", async () => {
  const takeOff = await takeOffWorkbook(demo(), defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const drawings = packingDrawings(takeOff.value, defaultSettings);
  check("demo-packing", drawings.map(drawingText).join("\n"));
});

test("the demo gives the price sheets expected of it", async () => {
  const workbook = demo();
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const prices = await priceWorkbook(workbook, takeOff.value, defaultSettings, 46_200);
  if (!prices.ok) throw new Error(prices.error.message);
  const loads = workbookLoads(takeOff.value, prices.value, defaultSettings);
  const drawings = [
    ...priceDrawings(prices.value, defaultSettings),
    ...ownerDrawings(takeOff.value, prices.value, defaultSettings, loads),
  ];
  const sheets = drawings.map(drawingText);
  const findings = prices.value.findings.map(({ level, message }) => `${level}: ${message}`);
  check("demo-prices", [...sheets, ...findings, ""].join("\n"));
});
