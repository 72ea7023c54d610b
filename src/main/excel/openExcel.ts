/** The add-in in Excel: the pane, the worksheet functions and the ribbon's commands, in one runtime. */
import { openExcelWorkbook } from "../../adapters/excel/excelWorkbook";
import { mountPane } from "../mountPane";
import { excelFunctions } from "./excelFunctions";
import { buildNotices } from "./notices";
import { followOfficeTheme } from "./officeTheme";
import type { CommandDesk } from "./ribbon";
import { loadWithWorkbook } from "./startup";
import "./taskpane.css";

/** Fills `page`, which is empty, and answers the ribbon's commands. Office must be ready. */
export async function openExcel(
  page: HTMLElement,
  answerCommands: (desk: CommandDesk) => void,
): Promise<void> {
  // Excel may call these before the workbook is read, and waits for their answers.
  const functions = excelFunctions();
  const workbook = openExcelWorkbook();
  const { pane, say } = buildNotices(page);
  answerCommands({ workbook, say });

  const open = await workbook;
  const { setTheme } = mountPane(pane, {
    workbook: open,
    theme: followOfficeTheme((theme) => setTheme(theme)),
  });
  // Should Excel refuse, the add-in is started by its button, as in any other workbook.
  loadWithWorkbook(open).catch(() => undefined);
  await functions.connect(open);
}
