/**
 * Panels that do not move, side by side between two posts: a transom, or a type whose parts say no
 * more. Under posts of a known height they hang at the top; else they stand on a line of their own.
 */
import { panelsHeight, panelsWidth, type Doorway } from "./doorway";
import type { KitPiece } from "./connections";
import { clampsAt } from "./hungDoor";
import { around, box, line, measure, postsAround, type Layout } from "./layout";

export function fixedPanels(doorway: Doorway): Layout {
  const { width, height, postHeight } = doorway;
  const panels = doorway.pieces("panel");
  const panelHeight = panelsHeight(panels) || height;
  const foot = postHeight !== null && postHeight > panelHeight ? postHeight - panelHeight : 0;
  const lefts = leftsOf(panels, width);
  return {
    around: [
      ...postsAround(width, postHeight ?? panelHeight),
      ...(foot > 0 ? [around("floor", line(-12, 0, width + 12, 0))] : []),
      ...(panels.length === 0 ? [around("opening", box(0, 0, width, height))] : []),
    ],
    measures: [
      measure("below", 0, 0, width, "width"),
      ...(panels.length < 2
        ? []
        : panels.map(({ size: [own = width / panels.length] }, index) => {
            const left = lefts[index] ?? 0;
            return measure("above", 0, left, left + own, "panel");
          })),
      measure("left", 0, foot, foot + panelHeight, "height"),
      ...(postHeight === null ? [] : [measure("left", 1, 0, postHeight, "post height")]),
    ],
    placers: {
      panel: (pieces) =>
        pieces.map(({ size: [own = width / pieces.length, high = panelHeight] }, index) => [
          box(lefts[index] ?? 0, foot, own, high),
        ]),
      panelClamp: (pieces) => {
        const joints = lefts.slice(1);
        const where = joints.length > 0 ? joints : [panelsWidth(panels) / 2 || width / 2];
        return clampsAt(pieces, where, foot, foot + panelHeight);
      },
    },
  };
}

/** Where each panel starts. */
function leftsOf(panels: readonly KitPiece[], width: number): readonly number[] {
  let x = 0;
  return panels.map(({ size: [own = width / panels.length] }) => {
    x += own;
    return x - own;
  });
}
