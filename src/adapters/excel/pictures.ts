/**
 * Our pictures on worksheets. They are put there unseen before the cells around them are exchanged,
 * under names that no picture of ours has there yet; when the new cells stand they are moved to
 * their places and shown, and the pictures that were there before go. So a writing that breaks off
 * leaves nothing to be seen, and needs no image to go on.
 */
import type { DrawnPicture } from "../../workbook/drawing";
import { pictureName } from "../../workbook/pictureWords";
import type { SheetSnapshot } from "../../workbook/snapshot";
import type { Prepared } from "./building";
import { anchorAt, type Corner } from "./corners";
import { hasExcelApi } from "./inExcel";
import { journalPart, journalXml, type Journal } from "./journal";
import { outbox, settingBytes } from "./outbox";
import type { Images } from "./painting";
import type { PlacedPicture } from "./placedPicture";

/** About how many settings one picture takes. */
const settingsEach = 10;

/**
 * Adds the pictures, unseen, and writes down in the journal which they are. When Excel refuses one,
 * what is there of them is named in the journal or gone.
 */
export async function addPictures(
  context: Excel.RequestContext,
  prepared: readonly Prepared[],
  images: Images,
  journal: Journal,
): Promise<readonly Prepared[]> {
  const { worksheets } = context.workbook;
  const asked = prepared.map((each) => {
    const worksheet = worksheets.getItem(each.plan.live?.id ?? each.plan.journal.aside);
    const pictures = each.plan.drawn.pictures ?? [];
    const isAsked = pictures.length > 0 && each.plan.live !== null;
    const shapes = isAsked ? worksheet.shapes.load("items/id,items/name") : null;
    return { each, worksheet, pictures, shapes };
  });
  if (asked.some(({ shapes }) => shapes !== null)) await context.sync();
  const wanted = asked.map(({ each, worksheet, pictures, shapes }) => {
    const first = 1 + highestNumber((shapes?.items ?? []).map(({ name }) => name));
    const placed = pictures.map((picture, index) =>
      placedAs(each.plan.drawn, picture, first + index),
    );
    const plan = { ...each.plan, journal: { ...each.plan.journal, pictures: placed } };
    return { each: { ...each, plan }, worksheet, pictures, placed, shapes };
  });
  const box = outbox(context);
  const xml = journalXml({ ...journal, sheets: wanted.map(({ each }) => each.plan.journal) });
  await box.room(xml.length);
  journalPart(context.workbook).setXml(xml);
  try {
    for (const { worksheet, pictures, placed } of wanted) {
      for (const [index, picture] of pictures.entries()) {
        const image = images.get(picture.marks);
        const place = placed[index];
        if (image === undefined || place === undefined) continue;
        const words = picture.title.length + picture.description.length;
        await box.room(image.length + 2 * words + settingsEach * settingBytes);
        addPicture(worksheet, image, picture, place);
      }
    }
    await box.send();
  } catch (error) {
    await dropNameless(context, wanted);
    throw error;
  }
  return wanted.map(({ each }) => each);
}

/** The size is tried at once: where Excel refuses it, there is still time to write words instead. */
function addPicture(
  worksheet: Excel.Worksheet,
  image: string,
  { title, description }: DrawnPicture,
  { name, width, height, reckoned }: PlacedPicture,
): void {
  const shape = worksheet.shapes.addImage(image);
  shape.name = name;
  shape.visible = false;
  shape.altTextTitle = title;
  shape.altTextDescription = description;
  shape.lockAspectRatio = false;
  shape.left = reckoned.left;
  shape.top = reckoned.top;
  shape.width = width;
  shape.height = height;
}

const placedAs = (
  drawn: SheetSnapshot,
  { row, column, width, height }: DrawnPicture,
  number: number,
): PlacedPicture => ({
  ...anchorAt(drawn, row, column),
  name: `${pictureName}${number}`,
  width,
  height,
});

export const isPictureName = (name: string): boolean => name.startsWith(pictureName);

const highestNumber = (names: readonly string[]): number =>
  names
    .filter(isPictureName)
    .map((name) => Number(name.slice(pictureName.length)))
    .reduce((most, number) => (Number.isInteger(number) ? Math.max(most, number) : most), 0);

/** An image that was added and then refused its name: on a sheet that stays it must not stay. */
async function dropNameless(
  context: Excel.RequestContext,
  wanted: readonly {
    readonly worksheet: Excel.Worksheet;
    readonly shapes: Excel.ShapeCollection | null;
  }[],
): Promise<void> {
  const asked = wanted.flatMap(({ worksheet, shapes }) =>
    shapes === null
      ? []
      : [
          {
            before: new Set(shapes.items.map(({ id }) => id)),
            now: worksheet.shapes.load("items/id,items/name,items/type"),
          },
        ],
  );
  try {
    await context.sync();
    const nameless = asked.flatMap(({ before, now }) =>
      now.items.filter(
        ({ id, name, type }) => type === "Image" && !before.has(id) && !isPictureName(name),
      ),
    );
    // Of two, one is a person's, and nothing tells which.
    if (nameless.length === 1) nameless[0]?.delete();
    await context.sync();
  } catch {
    // Excel no longer answers; what undoes the writing says so.
  }
}

/** Moves a picture to its cell and shows it. */
export function showPicture(
  shape: Excel.Shape,
  { width, height }: PlacedPicture,
  { left, top }: Corner,
): void {
  shape.lockAspectRatio = false;
  shape.left = left;
  shape.top = top;
  shape.width = width;
  shape.height = height;
  shape.lockAspectRatio = true;
  if (hasExcelApi("1.10")) shape.placement = "OneCell";
  shape.visible = true;
}
