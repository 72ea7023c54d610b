/** Entry of the pane in Excel. Where there is no Excel the page becomes the embedded spreadsheet. */
import { findHost } from "./findHost";
import { commandsToCome } from "./ribbon";

void (async () => {
  const commands = commandsToCome();
  const host = await findHost({ atOffice: commands.associate });
  const pane = document.getElementById("pane");
  if (host === "excel" && pane !== null) {
    const { openExcel } = await import(/* webpackChunkName: "excel" */ "./openExcel");
    await openExcel(pane, commands.connect);
    return;
  }
  pane?.remove();
  const [{ openEmbedded }, { loadLocalFiles }] = await Promise.all([
    import(/* webpackChunkName: "page" */ "../embedded/openEmbedded"),
    import(/* webpackChunkName: "page" */ "../embedded/loadLocalFiles"),
  ]);
  await openEmbedded(document.body, loadLocalFiles);
})();
