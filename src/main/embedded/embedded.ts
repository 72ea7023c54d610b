/** Entry of the embedded page. */
import { openEmbedded } from "./openEmbedded";
import { loadLocalFiles } from "./loadLocalFiles";

void openEmbedded(document.body, loadLocalFiles);
