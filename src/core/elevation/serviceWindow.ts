/** A framed hole in the partition with a sash that slides up. Heights are from its sill. */
import type { Doorway } from "./doorway";
import {
  around,
  box,
  boxAt,
  fromEndToEnd,
  lengthOf,
  line,
  measure,
  spread,
  type Layout,
} from "./layout";

const frame = 1.5;

export function serviceWindow(doorway: Doorway): Layout {
  const { width, height } = doorway;
  const guide = Math.max(0, ...doorway.pieces("sashGuide").map((piece) => lengthOf(piece, 0)));
  return {
    around: [
      around("opening", box(0, 0, width, height)),
      around("travel", line(width / 2, height * 0.55, width / 2, height * 0.85)),
    ],
    measures: [
      measure("below", 0, 0, width, "width"),
      measure("left", 0, 0, height, "height"),
      ...(guide === 0 ? [] : [measure("right", 0, 0, guide, "sash guide")]),
    ],
    placers: {
      frame: (pieces) => {
        let across = 0;
        let upright = 0;
        return pieces.map((piece) => {
          const length = lengthOf(piece, width);
          // Where width and height are the same, the first two lie: head and sill.
          const lies = length === width && (length !== height || across < 2);
          if (lies) {
            across += 1;
            return [box(0, across % 2 === 1 ? -frame : height, length, frame)];
          }
          upright += 1;
          return [box(upright % 2 === 1 ? -frame : width, 0, frame, length)];
        });
      },
      corner: (pieces) =>
        pieces.map((_, index) => {
          const x = index % 2 === 0 ? -frame / 2 : width + frame / 2;
          const y = index % 4 < 2 ? -frame / 2 : height + frame / 2;
          return [boxAt({ x, y }, 2.25, 2.25)];
        }),
      sashGuide: (pieces) =>
        pieces.map((piece, index) => {
          const x = index % 2 === 0 ? -2 * frame - 0.5 : width + frame + 0.5;
          return [box(x, 0, frame, lengthOf(piece, 2 * height))];
        }),
      panel: (pieces) =>
        pieces.map(({ size: [panelWidth = width, panelHeight = height] }) => [
          box((width - panelWidth) / 2, 0, panelWidth, panelHeight),
        ]),
      hasp: (pieces) => spread(pieces.length, 0, width).map((x) => [boxAt({ x, y: 1.5 }, 3, 3)]),
      shelf: (pieces) =>
        pieces.map((piece, index) => {
          const length = lengthOf(piece, width);
          return [box((width - length) / 2, -2 * frame - 1 - 2 * index, length, 1)];
        }),
      shelfBracket: (pieces) =>
        fromEndToEnd(pieces.length, 2, width - 2).map((x) => [
          box(x - 0.75, -2 * frame - 7, 1.5, 6),
        ]),
    },
  };
}
