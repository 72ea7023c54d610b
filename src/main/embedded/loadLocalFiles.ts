/** Files of the person's own disk, whose reader and writer come when they are first needed. */
import type { LoadFiles } from "../../workbook/files";

export const loadLocalFiles: LoadFiles = async () => {
  const { localFiles } = await import(/* webpackChunkName: "files" */ "./localFiles");
  return localFiles;
};
