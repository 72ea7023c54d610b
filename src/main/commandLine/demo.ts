/** `npm run demo`: takes off the invented demo, writes its workbook and says where it is. */
import { join } from "node:path";
import { demoDrawings } from "../../app/demo/demoDrawings";
import { currencyIn, defaultSettings, lengthStyleOf } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import { writeTakeOff } from "../../app/writing/writeSheets";
import { fileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import { err, ok, type Result } from "../../core/base/result";
import { drawnWorkbook } from "../../workbook/drawnWorkbook";
import { answer, type Answer } from "./answer";
import { makeFolder, writeFileWhole } from "./files";
import { takeOffText } from "./takeOffText";

const folder = "out";
const path = join(folder, "cribsheet-demo.xlsx");

async function demo(): Promise<Result<Answer, string>> {
  const workbook = fileWorkbook(snapshotParts(drawnWorkbook(path, demoDrawings())), path);
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) return err(takeOff.error.message);
  const written = await writeTakeOff(workbook, takeOff.value, defaultSettings);
  if (!written.ok) return err(written.error.message);
  const isThere = makeFolder(folder);
  if (!isThere.ok) return isThere;
  const saved = writeFileWhole(path, workbook.bytes());
  if (!saved.ok) return saved;
  const lengths = lengthStyleOf(defaultSettings);
  const text = takeOffText(takeOff.value, lengths, currencyIn(defaultSettings));
  const sheets = written.value.map(({ name }) => name).join(", ");
  // The mistakes in the demo are meant: that some openings are not counted is no failure of it.
  return ok({ text: `${text}\n\nThe workbook is ${path}: ${sheets}.`, complete: true });
}

answer(await demo());
