/** One mark of a picture as SVG elements, in the colour of the text around it. */
import type { SVGAttributes } from "react";
import { arrowHeads, meshPath, short } from "../../core/base/markShapes";
import {
  meshWidth,
  strokeDashes,
  strokeWidths,
  type Box,
  type Mark,
  type Stroke,
} from "../../core/base/picture";

export function PictureMark({ mark }: { readonly mark: Mark }) {
  switch (mark.kind) {
    case "box":
      return (
        <>
          {mark.fill === "mesh" ? (
            <path d={meshPath(mark)} strokeWidth={meshWidth} strokeOpacity={0.45} />
          ) : null}
          <rect
            {...boxOf(mark)}
            {...strokeOf(mark.stroke)}
            {...(mark.fill === "solid" ? { fill: "currentColor", fillOpacity: 0.14 } : {})}
          />
        </>
      );
    case "circle":
      return (
        <circle
          cx={short(mark.center.x)}
          cy={short(mark.center.y)}
          r={short(mark.radius)}
          {...strokeOf(mark.stroke)}
        />
      );
    case "line":
      return (
        <>
          <line
            x1={short(mark.from.x)}
            y1={short(mark.from.y)}
            x2={short(mark.to.x)}
            y2={short(mark.to.y)}
            {...strokeOf(mark.stroke)}
          />
          {arrowHeads(mark).map((corners, index) => (
            <polygon
              key={index}
              points={corners.map(({ x, y }) => `${short(x)},${short(y)}`).join(" ")}
              fill="currentColor"
              stroke="none"
            />
          ))}
        </>
      );
    case "words": {
      const { center, words, size, upright } = mark;
      const [x, y] = [short(center.x), short(center.y)];
      return (
        <text
          x={x}
          y={y}
          {...(upright ? { transform: `rotate(-90 ${x} ${y})` } : {})}
          fontSize={size}
          textAnchor="middle"
          dominantBaseline="central"
          fill="currentColor"
          stroke="none"
        >
          {words}
        </text>
      );
    }
  }
}

/** The attributes of a `rect`. */
export const boxOf = ({ x, y, width, height }: Box): SVGAttributes<SVGRectElement> => ({
  x: short(x),
  y: short(y),
  width: short(Math.max(0, width)),
  height: short(Math.max(0, height)),
});

function strokeOf(stroke: Stroke): SVGAttributes<SVGElement> {
  const dash = strokeDashes[stroke];
  return {
    strokeWidth: strokeWidths[stroke],
    ...(dash === undefined ? {} : { strokeDasharray: dash.join(" ") }),
  };
}
