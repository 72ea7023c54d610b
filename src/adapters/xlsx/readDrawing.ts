/** What lies over the cells of a sheet: ours is read, of all else it is only known that it is there. */
import { chartName } from "../../workbook/chartLooks";
import type { DrawnChart, DrawnPicture } from "../../workbook/drawing";
import { pictureName } from "../../workbook/pictureWords";
import { nameIn } from "./drawnPictures";
import { partText, type Parts } from "./parts";
import { readChart, type SheetSizes } from "./readCharts";
import { readPicture } from "./readPictures";
import { DamagedFile, parseXml } from "./xml";

export type ReadDrawing = {
  readonly pictures: readonly DrawnPicture[];
  readonly charts: readonly DrawnChart[];
  /** Charts and pictures that a snapshot cannot hold: a person's, and an image of ours. */
  readonly others: number;
};

/** What is drawn on a sheet by the drawing part at `target`. */
export function readDrawing(parts: Parts, target: string, sheet: SheetSizes): ReadDrawing {
  const source = partText(parts, target);
  // What somebody else drew is not ours to understand, so it is not even parsed.
  if (source === null || !(source.includes(pictureName) || source.includes(chartName))) {
    return { pictures: [], charts: [], others: 1 };
  }
  const anchors = parseXml(source).children;
  const named = anchors.map((anchor) => ({ anchor, name: nameIn(anchor) ?? "" }));
  const pictures = named.flatMap(({ anchor, name }) =>
    name.startsWith(pictureName) ? (readPicture(anchor) ?? []) : [],
  );
  const charts = named.flatMap(({ anchor, name }) =>
    name.startsWith(chartName)
      ? (understood(() => readChart(parts, target, anchor, sheet)) ?? [])
      : [],
  );
  return { pictures, charts, others: anchors.length - pictures.length - charts.length };
}

/** A chart that names cells which no sheet has is told as left out, and is no reason not to open a file. */
function understood<Read>(read: () => Read): Read | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof DamagedFile) return null;
    throw error;
  }
}
