/**
 * Our own pictures read back from a file, so that they go on with the sheet into another host. Only
 * what we write is read; a spreadsheet that saved the file may have moved the group's own
 * coordinates, which changes nothing here.
 */
import {
  strokes,
  strokeDashes,
  strokeWidths,
  type Box,
  type Mark,
  type Stroke,
} from "../../core/base/picture";
import type { DrawnPicture } from "../../workbook/drawing";
import { unitsPerPoint } from "./drawnPictures";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml";

/** Our picture in an anchor; `null` when it is none that we drew, or no longer as we drew it. */
export function readPicture(anchor: XmlElement): DrawnPicture | null {
  const from = childNamed(anchor, "from");
  const group = childNamed(anchor, "grpSp");
  const place = childNamed(childNamed(group, "grpSpPr"), "xfrm");
  if (from === undefined || group === undefined || place === undefined) return null;
  const size = boxOf(place, "off", "ext");
  const inner = boxOf(place, "chOff", "chExt");
  const across = inner.width === 0 ? 1 : size.width / inner.width;
  const down = inner.height === 0 ? 1 : size.height / inner.height;
  const scaled = ({ x, y, width, height }: Box): Box => ({
    x: ((x - inner.x) * across) / unitsPerPoint,
    y: ((y - inner.y) * down) / unitsPerPoint,
    width: (width * across) / unitsPerPoint,
    height: (height * down) / unitsPerPoint,
  });
  const said = childNamed(childNamed(group, "nvGrpSpPr"), "cNvPr")?.attributes["descr"] ?? "";
  const [title = "", ...description] = said.split(". ");
  const count = (name: string): number => Number(childNamed(from, name)?.text ?? 0);
  return {
    row: count("row"),
    column: count("col"),
    width: points(size.width),
    height: points(size.height),
    title,
    description: description.join(". "),
    marks: marksOf(group, scaled),
  };
}

/** To a hundredth of a point, which is finer than any printer. */
const short = (value: number): number => Math.round(value * 100) / 100;
const points = (units: number): number => short(units / unitsPerPoint);

function boxOf(place: XmlElement, offset: string, extent: string): Box {
  const [at, size] = [childNamed(place, offset), childNamed(place, extent)];
  const number = (element: XmlElement | undefined, name: string): number =>
    Number(element?.attributes[name] ?? 0) || 0;
  return {
    x: number(at, "x"),
    y: number(at, "y"),
    width: number(size, "cx"),
    height: number(size, "cy"),
  };
}

function marksOf(group: XmlElement, scaled: (box: Box) => Box): readonly Mark[] {
  const marks: Mark[] = [];
  let isMeshNext = false;
  for (const shape of group.children) {
    const dress = childNamed(shape, "spPr");
    const place = childNamed(dress, "xfrm");
    if (dress === undefined || place === undefined) continue;
    // The wires of a mesh come first, then the frame around them.
    if (childNamed(dress, "custGeom") !== undefined) isMeshNext = true;
    else {
      marks.push(markOf(shape, dress, place, scaled(boxOf(place, "off", "ext")), isMeshNext));
      isMeshNext = false;
    }
  }
  return marks;
}

function markOf(
  shape: XmlElement,
  dress: XmlElement,
  place: XmlElement,
  box: Box,
  isMesh: boolean,
): Mark {
  const middle = { x: short(box.x + box.width / 2), y: short(box.y + box.height / 2) };
  const [x, y] = [short(box.x), short(box.y)];
  const [width, height] = [short(box.width), short(box.height)];
  const line = childNamed(dress, "ln");
  const drawn = { stroke: strokeOf(line), group: null };
  const words = wordsOf(shape);
  if (words !== null) {
    const { text, size, upright } = words;
    return { kind: "words", group: null, center: middle, words: text, size, upright };
  }
  if (shape.name === "cxnSp") {
    const [right, lower] = [short(box.x + box.width), short(box.y + box.height)];
    const [isLeft, isUp] = [isOn(place.attributes["flipH"]), isOn(place.attributes["flipV"])];
    const arrows =
      childNamed(line, "tailEnd") === undefined
        ? "none"
        : childNamed(line, "headEnd") === undefined
          ? "end"
          : "both";
    return {
      ...drawn,
      kind: "line",
      from: { x: isLeft ? right : x, y: isUp ? lower : y },
      to: { x: isLeft ? x : right, y: isUp ? y : lower },
      arrows,
    };
  }
  if (childNamed(dress, "prstGeom")?.attributes["prst"] === "ellipse") {
    return { ...drawn, kind: "circle", center: middle, radius: short(box.width / 2) };
  }
  const isSolid = childNamed(dress, "solidFill") !== undefined;
  return {
    ...drawn,
    kind: "box",
    x,
    y,
    width,
    height,
    fill: isMesh ? "mesh" : isSolid ? "solid" : "none",
  };
}

function wordsOf(shape: XmlElement): { text: string; size: number; upright: boolean } | null {
  const body = childNamed(shape, "txBody");
  const runs = childrenNamed(childNamed(body, "p"), "r");
  const text = runs.map((run) => childNamed(run, "t")?.text ?? "").join("");
  if (body === undefined || text === "") return null;
  return {
    text,
    size: Number(childNamed(runs[0], "rPr")?.attributes["sz"] ?? 800) / 100,
    upright: childNamed(body, "bodyPr")?.attributes["vert"] === "vert270",
  };
}

/** The stroke of that width, drawn through or dashed. */
function strokeOf(line: XmlElement | undefined): Stroke {
  const width = Number(line?.attributes["w"] ?? 0) / unitsPerPoint;
  const isDashed = childNamed(line, "prstDash") !== undefined;
  const alike = strokes.filter((stroke) => (strokeDashes[stroke] !== undefined) === isDashed);
  return alike.reduce((best, stroke) =>
    Math.abs(strokeWidths[stroke] - width) < Math.abs(strokeWidths[best] - width) ? stroke : best,
  );
}
