/** The kit book that Cribsheet starts with, until a firm owns one. */
import type { KitBookRows } from "../rows";
import { biPartingDoor } from "./biPartingDoor";
import { fixedTransom } from "./fixedTransom";
import { hingedDoor } from "./hingedDoor";
import { hingedDoorPair } from "./hingedDoorPair";
import { serviceWindow } from "./serviceWindow";
import { slidingDoor } from "./slidingDoor";
import { typedRows } from "./starterRows";
import { trackPlates } from "./trackPlates";

const types = [
  slidingDoor,
  biPartingDoor,
  hingedDoor,
  hingedDoorPair,
  serviceWindow,
  fixedTransom,
] as const;

/** As typed rows with no places: every row says where its numbers come from. */
export const starterKitBook: KitBookRows = typedRows(types, trackPlates);

/** The opening types of the starter kit book, as it writes them. */
export const starterTypes: readonly string[] = types.map(({ type }) => type);
