/** Entry of the embedded page. */
import { openEmbedded } from "./openEmbedded";
import { localFiles } from "./localFiles";

void openEmbedded(document.body, localFiles);
