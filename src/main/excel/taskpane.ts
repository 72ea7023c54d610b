/** Entry of the pane in Excel. Where there is no Excel the page becomes the embedded spreadsheet. */
import { findHost } from "./findHost";

void (async () => {
  const host = await findHost();
  const pane = document.getElementById("pane");
  if (host === "excel" && pane !== null) {
    const { openExcel } = await import(/* webpackChunkName: "excel" */ "./openExcel");
    await openExcel(pane);
    return;
  }
  pane?.remove();
  const [{ openEmbedded }, { loadLocalFiles }] = await Promise.all([
    import(/* webpackChunkName: "page" */ "../embedded/openEmbedded"),
    import(/* webpackChunkName: "page" */ "../embedded/loadLocalFiles"),
  ]);
  await openEmbedded(document.body, loadLocalFiles);
})();
