/**
 * Our pictures on a sheet, as shapes that spreadsheets draw themselves (DrawingML, ECMA-376 part 1,
 * chapter 20): sharp at any size, on the screen and in print, without an image in the file.
 *
 * Each picture is one group with a name of ours, so that it is known again and replaced; charts and
 * pictures that a person put beside it stay.
 */
import {
  meshWidth,
  meshWires,
  strokeDashes,
  strokeWidths,
  type Box,
  type Mark,
  type Stroke,
} from "../../core/base/picture";
import { textWidth } from "../../core/base/textWidth";
import type { DrawnPicture } from "../../workbook/drawing";
import { pictureInks } from "../../workbook/pictureInks";
import { pictureName } from "../../workbook/pictureWords";
import { encode, neededText } from "./parts";
import {
  addRelationship,
  freePath,
  relationshipsOf,
  removePart,
  removeRelationships,
  setContentType,
  xmlStart,
} from "./relationships";
import { append, escapeXml, parseXml, splice, type Splice, type XmlElement } from "./xml";

/**
 * Puts `pictures` on the sheet at `path` in place of those that were ours. `drawing` is the id of
 * the sheet's drawing, where it has one; the answer is the id it has now.
 */
export function putPictures(
  parts: Map<string, Uint8Array>,
  path: string,
  drawing: string | null,
  pictures: readonly DrawnPicture[],
): string | null {
  const old = relationshipsOf(parts, path).find(({ id }) => id === drawing);
  if (old === undefined && pictures.length === 0) return null;
  const target = old?.target ?? freePath(parts, "xl/drawings/drawing", ".xml");
  const source = old === undefined ? emptyDrawing : neededText(parts, target);
  if (pictures.length === 0 && !source.includes(pictureName)) return drawing;
  const root = parseXml(source);
  const ours = root.children.filter(isOurs);
  const gone = ours.map(({ start, end }): Splice => ({ start, end, text: "" }));
  removeImages(parts, target, new Set(ours.flatMap(imageIds)));
  let id = highestId(root);
  const added = pictures.map((picture, index) => {
    const xml = anchorXml(picture, index + 1, id + 1);
    id += idsPerMark * picture.marks.length + 1;
    return xml;
  });
  parts.set(target, encode(splice(source, [...gone, append(source, root, added.join(""))])));
  if (old !== undefined) return old.id;
  setContentType(parts, target, "application/vnd.openxmlformats-officedocument.drawing+xml");
  return addRelationship(parts, path, "drawing", target);
}

/** The relationships of the images in an anchor: a spreadsheet itself may have put ours there as such. */
const imageIds = (element: XmlElement): readonly string[] => [
  ...(element.name === "blip" ? [element.attributes["embed"] ?? ""] : []),
  ...element.children.flatMap(imageIds),
];

/** Pictures that are alike share an image, so only one that nothing else shows goes. */
function removeImages(
  parts: Map<string, Uint8Array>,
  drawing: string,
  ids: ReadonlySet<string>,
): void {
  if (ids.size === 0) return;
  const images = relationshipsOf(parts, drawing).filter(({ id }) => ids.has(id));
  removeRelationships(parts, drawing, ({ id }) => ids.has(id));
  const lists = [...parts.keys()].filter((path) => path.endsWith(".rels"));
  const shown = new Set(
    lists.flatMap((list) => relationshipsOf(parts, partOfList(list)).map(({ target }) => target)),
  );
  for (const { target } of images) if (!shown.has(target)) removePart(parts, target);
}

/** `xl/drawings/_rels/drawing1.xml.rels` lists what `xl/drawings/drawing1.xml` points at. */
const partOfList = (list: string): string => list.replace(/_rels\/([^/]*)\.rels$/, "$1");

export const namespaces = `xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"`;
export const emptyDrawing = `${xmlStart}<xdr:wsDr ${namespaces}></xdr:wsDr>`;

/** Whether what is anchored is one of our pictures. */
const isOurs = (anchor: XmlElement): boolean => nameIn(anchor)?.startsWith(pictureName) === true;

/** The name of the first thing in an anchor. */
export function nameIn(element: XmlElement): string | undefined {
  if (element.name === "cNvPr") return element.attributes["name"];
  for (const child of element.children) {
    const name = nameIn(child);
    if (name !== undefined) return name;
  }
  return undefined;
}

export const highestId = (element: XmlElement): number =>
  element.children.reduce(
    (most, child) => Math.max(most, highestId(child)),
    element.name === "cNvPr" ? Number(element.attributes["id"] ?? 0) || 0 : 0,
  );

/** A box of mesh takes two: its wires and its frame. */
const idsPerMark = 2;

/** English Metric Units, of which a point has this many. */
export const unitsPerPoint = 12_700;
export const units = (points: number): number => Math.round(points * unitsPerPoint);

function anchorXml(picture: DrawnPicture, number: number, firstId: number): string {
  const { row, column, width, height, title, description, marks } = picture;
  const extent = `cx="${units(width)}" cy="${units(height)}"`;
  const zero = `x="0" y="0"`;
  return [
    `<xdr:oneCellAnchor ${namespaces}>`,
    `<xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>`,
    `<xdr:ext ${extent}/>`,
    `<xdr:grpSp><xdr:nvGrpSpPr><xdr:cNvPr id="${firstId}" name="${pictureName}${number}" descr="${escapeXml(`${title}. ${description}`)}"/><xdr:cNvGrpSpPr/></xdr:nvGrpSpPr>`,
    `<xdr:grpSpPr><a:xfrm><a:off ${zero}/><a:ext ${extent}/><a:chOff ${zero}/><a:chExt ${extent}/></a:xfrm></xdr:grpSpPr>`,
    ...marks.map((mark, index) => markXml(mark, firstId + 1 + idsPerMark * index)),
    "</xdr:grpSp><xdr:clientData/></xdr:oneCellAnchor>",
  ].join("");
}

const { ink, tint, wire } = pictureInks;

function markXml(mark: Mark, id: number): string {
  switch (mark.kind) {
    case "box":
      return mark.fill === "mesh" ? meshXml(mark, id) : shapeXml(id, mark, "rect", mark);
    case "circle": {
      const { center, radius } = mark;
      const side = 2 * radius;
      const box = { x: center.x - radius, y: center.y - radius, width: side, height: side };
      return shapeXml(id, box, "ellipse", { stroke: mark.stroke, fill: "none" });
    }
    case "line":
      return lineXml(mark, id);
    case "words":
      return wordsXml(mark, id);
  }
}

type Dress = { readonly stroke: Stroke; readonly fill: "none" | "solid" | "mesh" };

const shapeXml = (id: number, box: Box, form: "rect" | "ellipse", dress: Dress): string =>
  `<xdr:sp macro="" textlink=""><xdr:nvSpPr>${namedXml(id)}<xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr>${placeXml(box)}<a:prstGeom prst="${form}"><a:avLst/></a:prstGeom>${
    dress.fill === "solid" ? solidXml(tint) : "<a:noFill/>"
  }${strokeXml(dress.stroke)}</xdr:spPr></xdr:sp>`;

/** A box and the wires in it, as two paths of one shape. */
function meshXml(box: Box & { readonly stroke: Stroke }, id: number): string {
  const { x, y, width, height } = box;
  const spot = (across: number, down: number): string =>
    `<a:pt x="${units(across - x)}" y="${units(down - y)}"/>`;
  const wires = meshWires(box).map(
    ([from, to]) =>
      `<a:moveTo>${spot(from.x, from.y)}</a:moveTo><a:lnTo>${spot(to.x, to.y)}</a:lnTo>`,
  );
  const mesh = `<xdr:sp macro="" textlink=""><xdr:nvSpPr>${namedXml(id)}<xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr>${placeXml(box)}<a:custGeom><a:avLst/><a:gdLst/><a:ahLst/><a:cxnLst/><a:rect l="0" t="0" r="r" b="b"/><a:pathLst><a:path w="${units(width)}" h="${units(height)}" fill="none">${wires.join("")}</a:path></a:pathLst></a:custGeom><a:noFill/><a:ln w="${units(meshWidth)}">${solidXml(wire)}</a:ln></xdr:spPr></xdr:sp>`;
  const frame = shapeXml(id + 1, box, "rect", { stroke: box.stroke, fill: "none" });
  return wires.length === 0 ? frame : mesh + frame;
}

function lineXml(mark: Extract<Mark, { readonly kind: "line" }>, id: number): string {
  const { from, to, arrows, stroke } = mark;
  const box = {
    x: Math.min(from.x, to.x),
    y: Math.min(from.y, to.y),
    width: Math.abs(to.x - from.x),
    height: Math.abs(to.y - from.y),
  };
  const flips = `${to.x < from.x ? ` flipH="1"` : ""}${to.y < from.y ? ` flipV="1"` : ""}`;
  const head = `type="triangle" w="sm" len="med"`;
  const ends = [
    arrows === "both" ? `<a:headEnd ${head}/>` : "",
    arrows === "none" ? "" : `<a:tailEnd ${head}/>`,
  ].join("");
  return `<xdr:cxnSp macro=""><xdr:nvCxnSpPr>${namedXml(id)}<xdr:cNvCxnSpPr/></xdr:nvCxnSpPr><xdr:spPr>${placeXml(box, flips)}<a:prstGeom prst="line"><a:avLst/></a:prstGeom>${strokeXml(stroke, ends)}</xdr:spPr></xdr:cxnSp>`;
}

function wordsXml(mark: Extract<Mark, { readonly kind: "words" }>, id: number): string {
  const { center, words, size, upright } = mark;
  // Wider than the words are, so that another font does not break them into two lines.
  const [long, high] = [textWidth(words, size) * 1.3 + 4, size * 1.5];
  const [width, height] = upright ? [high, long] : [long, high];
  const box = { x: center.x - width / 2, y: center.y - height / 2, width, height };
  const turned = upright ? ` vert="vert270"` : "";
  return `<xdr:sp macro="" textlink=""><xdr:nvSpPr>${namedXml(id)}<xdr:cNvSpPr txBox="1"/></xdr:nvSpPr><xdr:spPr>${placeXml(box)}<a:prstGeom prst="rect"><a:avLst/></a:prstGeom><a:noFill/><a:ln><a:noFill/></a:ln></xdr:spPr><xdr:txBody><a:bodyPr${turned} wrap="none" lIns="0" tIns="0" rIns="0" bIns="0" anchor="ctr"/><a:lstStyle/><a:p><a:pPr algn="ctr"/><a:r><a:rPr lang="en-US" sz="${Math.round(size * 100)}">${solidXml(ink)}<a:latin typeface="Arial"/></a:rPr><a:t>${escapeXml(words)}</a:t></a:r></a:p></xdr:txBody></xdr:sp>`;
}

const namedXml = (id: number): string => `<xdr:cNvPr id="${id}" name="Mark ${id}"/>`;

const placeXml = ({ x, y, width, height }: Box, flips = ""): string =>
  `<a:xfrm${flips}><a:off x="${units(x)}" y="${units(y)}"/><a:ext cx="${units(width)}" cy="${units(height)}"/></a:xfrm>`;

const solidXml = (colour: string): string =>
  `<a:solidFill><a:srgbClr val="${colour}"/></a:solidFill>`;

function strokeXml(stroke: Stroke, ends = ""): string {
  const dash = strokeDashes[stroke] === undefined ? "" : `<a:prstDash val="dash"/>`;
  return `<a:ln w="${units(strokeWidths[stroke])}">${solidXml(ink)}${dash}${ends}</a:ln>`;
}
