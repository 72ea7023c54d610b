/** `npm run demo`: takes off the invented demo, writes its workbook and says where it is. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { demoDrawings } from "../../app/demo/demoDrawings";
import { currencyIn, defaultSettings, lengthStyleOf } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import { writeTakeOff } from "../../app/writing/writeSheets";
import { fileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import { writeFileWhole } from "./files";
import { takeOffText } from "./takeOffText";

const folder = "out";
const path = join(folder, "cribsheet-demo.xlsx");

const workbook = fileWorkbook(snapshotParts(drawnWorkbook(path, demoDrawings())), path);
const takeOff = await takeOffWorkbook(workbook, defaultSettings);
if (!takeOff.ok) throw new Error(takeOff.error.message);
const written = await writeTakeOff(workbook, takeOff.value, defaultSettings);
if (!written.ok) throw new Error(written.error.message);
mkdirSync(folder, { recursive: true });
const saved = writeFileWhole(path, workbook.bytes());
if (!saved.ok) throw new Error(saved.error);

const text = takeOffText(
  takeOff.value,
  lengthStyleOf(defaultSettings),
  currencyIn(defaultSettings),
);
process.stdout.write(
  `${text}\n\nThe workbook is ${path}: ${written.value.map(({ name }) => name).join(", ")}.\n`,
);
