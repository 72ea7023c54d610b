/** Files of the person's own disk, read and written in the browser. */
import { err } from "../../core/base/result";
import type { WorkbookFiles } from "./workbookFiles";

export const localFiles: WorkbookFiles = {
  read: (name) => Promise.resolve(err(`Nothing here reads files like ${name} yet.`)),
  write: () => Promise.reject(new Error("Nothing here writes files yet.")),
};
