import type { Box } from "../base/picture";
import type { Outline } from "./elevation";

/** The box that an outline fills. */
export function outlineBox(outline: Outline): Box {
  switch (outline.form) {
    case "box":
      return outline;
    case "line": {
      const { from, to } = outline;
      return {
        x: Math.min(from.x, to.x),
        y: Math.min(from.y, to.y),
        width: Math.abs(to.x - from.x),
        height: Math.abs(to.y - from.y),
      };
    }
    case "circle": {
      const { center, radius } = outline;
      return {
        x: center.x - radius,
        y: center.y - radius,
        width: 2 * radius,
        height: 2 * radius,
      };
    }
  }
}
