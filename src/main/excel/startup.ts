/** Whether Excel starts the add-in together with this workbook, without showing the pane. */
import type { Workbook } from "../../workbook/workbook";

/**
 * A workbook with sheets of ours starts it from then on, so that its worksheet functions answer and
 * the ribbon's command works at once. Any other workbook is left as it is.
 */
export async function loadWithWorkbook(workbook: Workbook): Promise<void> {
  const sheets = await workbook.sheets();
  if (sheets.every(({ mark }) => mark === null)) return;
  await Office.addin.setStartupBehavior(Office.StartupBehavior.load);
}
