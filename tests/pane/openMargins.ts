/** The view of margins, open on a workbook. */
import { within } from "@testing-library/react";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { openView, renderPane } from "./renderPane";

export async function openMargins(workbook: MemoryWorkbook) {
  const { user } = await renderPane(workbook);
  const panel = await openView(user, /Margins/);
  await within(panel).findByRole("combobox", { name: "First comes" });
  const openJob = async (name: RegExp): Promise<void> => {
    await user.click(within(panel).getByRole("button", { name }));
    await within(panel).findByRole("heading", { name });
  };
  const openPart = (name: string): Promise<void> =>
    user.click(within(panel).getByRole("button", { name }));
  return { user, panel, openJob, openPart };
}
