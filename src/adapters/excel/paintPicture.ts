/**
 * A picture as an image. Excel's shapes know neither paths nor vector images at our floor, and an
 * elevation of lines and text boxes would be hundreds of them; one image is one request.
 */
import { arrowHeads } from "../../core/base/markShapes";
import {
  meshWidth,
  meshWires,
  strokeDashes,
  strokeWidths,
  type Box,
  type Mark,
  type Picture,
  type Spot,
  type Stroke,
} from "../../core/base/picture";
import { pictureInks } from "../../workbook/pictureInks";

/** A PNG of the picture in base64, or `null` where none can be made. */
export type PaintPicture = (picture: Picture) => Promise<string | null>;

/** Dots to a point: 216 to the inch, sharp in print and on a screen of twice the usual fineness. */
const fineness = 3;

const colour = {
  ink: `#${pictureInks.ink}`,
  tint: `#${pictureInks.tint}`,
  wire: `#${pictureInks.wire}`,
};

/** Paints on the page's own canvas; `null` where there is no page, or its browser refuses. */
export const paintOnCanvas: PaintPicture = async (picture) => {
  if (typeof document === "undefined") return null;
  const canvas = document.createElement("canvas");
  canvas.width = Math.ceil(picture.width * fineness);
  canvas.height = Math.ceil(picture.height * fineness);
  const pen = canvas.getContext("2d", { alpha: false });
  if (pen === null) return null;
  // White below it: Excel may show its cells in black, and then the lines would not be seen.
  pen.fillStyle = "#FFFFFF";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.scale(fineness, fineness);
  for (const mark of picture.marks) paintMark(pen, mark);
  const image = await new Promise<Blob | null>((made) => {
    canvas.toBlob(made, "image/png");
  });
  return image === null ? null : await base64(image);
};

type Pen = CanvasRenderingContext2D;

function paintMark(pen: Pen, mark: Mark): void {
  switch (mark.kind) {
    case "box":
      if (mark.fill === "solid") {
        pen.fillStyle = colour.tint;
        pen.fillRect(mark.x, mark.y, mark.width, mark.height);
      }
      if (mark.fill === "mesh") paintMesh(pen, mark);
      takeUp(pen, mark.stroke);
      pen.strokeRect(mark.x, mark.y, mark.width, mark.height);
      return;
    case "circle":
      takeUp(pen, mark.stroke);
      pen.beginPath();
      pen.arc(mark.center.x, mark.center.y, mark.radius, 0, 2 * Math.PI);
      pen.stroke();
      return;
    case "line":
      takeUp(pen, mark.stroke);
      pen.beginPath();
      trace(pen, [mark.from, mark.to]);
      pen.stroke();
      pen.fillStyle = colour.ink;
      for (const corners of arrowHeads(mark)) {
        pen.beginPath();
        trace(pen, corners);
        pen.fill();
      }
      return;
    case "words":
      paintWords(pen, mark);
  }
}

function paintMesh(pen: Pen, box: Box): void {
  pen.setLineDash([]);
  pen.lineWidth = meshWidth;
  pen.strokeStyle = colour.wire;
  pen.beginPath();
  for (const wire of meshWires(box)) trace(pen, wire);
  pen.stroke();
}

function paintWords(
  pen: Pen,
  { center, words, size, upright }: Extract<Mark, { readonly kind: "words" }>,
): void {
  pen.save();
  pen.translate(center.x, center.y);
  if (upright) pen.rotate(-Math.PI / 2);
  pen.font = `${size}px Arial, "Liberation Sans", sans-serif`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.fillStyle = colour.ink;
  pen.fillText(words, 0, 0);
  pen.restore();
}

function takeUp(pen: Pen, stroke: Stroke): void {
  pen.strokeStyle = colour.ink;
  pen.lineWidth = strokeWidths[stroke];
  pen.setLineDash([...(strokeDashes[stroke] ?? [])]);
}

function trace(pen: Pen, [first, ...others]: readonly Spot[]): void {
  if (first === undefined) return;
  pen.moveTo(first.x, first.y);
  for (const { x, y } of others) pen.lineTo(x, y);
}

const base64 = (image: Blob): Promise<string> =>
  new Promise((read, failed) => {
    const reader = new FileReader();
    reader.onload = () => {
      const address = typeof reader.result === "string" ? reader.result : "";
      read(address.slice(address.indexOf(",") + 1));
    };
    reader.onerror = () => {
      failed(reader.error ?? new Error("The image could not be read."));
    };
    reader.readAsDataURL(image);
  });
