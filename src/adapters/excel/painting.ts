/** Every picture of a writing painted before anything is written: what cannot be, is said in words. */
import type { Picture } from "../../core/base/picture";
import type { Drawing } from "../../workbook/drawing";
import type { PaintPicture } from "./paintPicture";

/** Images in base64. Pictures of openings that are alike have the same marks, and one image. */
export type Images = ReadonlyMap<Picture["marks"], string>;

/** `null` when one could not be painted. Tells `onPicture` of each, and ends early when it is stopped. */
export async function paintPictures(
  drawings: readonly Drawing[],
  paint: PaintPicture,
  onPicture: (done: number) => void,
  isStopped: () => boolean,
): Promise<Images | null> {
  const pictures = new Map(
    drawings.flatMap(({ pictures: each = [] }) => each.map((one) => [one.marks, one] as const)),
  );
  const images = new Map<Picture["marks"], string>();
  for (const [marks, picture] of pictures) {
    if (isStopped()) return images;
    const image = await paint(picture).catch(() => null);
    if (image === null) return null;
    images.set(marks, image);
    onPicture(images.size / pictures.size);
  }
  return images;
}
