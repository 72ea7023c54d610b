/** Cell styles in our words and in the grid's. */
import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IBorderStyleData,
  type IColorStyle,
  type IStyleData,
  type Nullable,
} from "@univerjs/core";
import type { CellStyle, LineStyle } from "../../workbook/snapshot";

const alignments = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;

const alignmentsDown = {
  top: VerticalAlign.TOP,
  middle: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
} as const;

/** About what a spreadsheet makes of one step. */
const indentPixels = 9;

const weights = {
  thin: BorderStyleTypes.THIN,
  medium: BorderStyleTypes.MEDIUM,
  thick: BorderStyleTypes.THICK,
} as const;

const colour = (rgb: string): IColorStyle => ({ rgb: `#${rgb}` });
const line = ({ weight, ink }: LineStyle): IBorderStyleData => ({
  s: weights[weight],
  cl: colour(ink),
});

/** Styles as the grid keeps them: by ids that stand in the cells. */
export type GridStyles = {
  /** One for each of our styles, in order. */
  readonly ids: readonly string[];
  readonly byId: Readonly<Record<string, IStyleData>>;
};

/** A style's id is its own text, so that the same style has the same id in every sheet. */
export function gridStyles(styles: readonly CellStyle[]): GridStyles {
  const made = styles.map(gridStyle);
  const ids = made.map((style) => JSON.stringify(style));
  const byId: Record<string, IStyleData> = {};
  for (const [index, style] of made.entries()) byId[ids[index] ?? ""] = style;
  return { ids, byId };
}

/** The grid's style for ours. */
export function gridStyle(style: CellStyle): IStyleData {
  const { lineAbove, lineBelow, lineLeft, lineRight } = style;
  const borders = {
    ...(lineAbove && { t: line(lineAbove) }),
    ...(lineBelow && { b: line(lineBelow) }),
    ...(lineLeft && { l: line(lineLeft) }),
    ...(lineRight && { r: line(lineRight) }),
  };
  return {
    ...(style.font !== undefined && { ff: style.font }),
    ...(style.size !== undefined && { fs: style.size }),
    ...(style.bold === true && { bl: BooleanNumber.TRUE }),
    ...(style.italic === true && { it: BooleanNumber.TRUE }),
    ...(style.underline === true && { ul: { s: BooleanNumber.TRUE } }),
    ...(style.strike === true && { st: { s: BooleanNumber.TRUE } }),
    ...(style.ink !== undefined && { cl: colour(style.ink) }),
    ...(style.fill !== undefined && { bg: colour(style.fill) }),
    ...(Object.keys(borders).length > 0 && { bd: borders }),
    ...(style.format !== undefined && { n: { pattern: style.format } }),
    ...(style.align && { ht: alignments[style.align] }),
    ...(style.indent === true && { pd: { l: indentPixels } }),
    ...(style.alignDown && { vt: alignmentsDown[style.alignDown] }),
    ...(style.wrap === true && { tb: WrapStrategy.WRAP }),
  };
}

/** Our style for the grid's. What we have no word for (rotation, theme colours) is left out. */
export function plainStyle(style: IStyleData): CellStyle {
  const ink = hexOf(style.cl);
  const fill = hexOf(style.bg);
  const lines = style.bd ?? {};
  const above = plainLine(lines.t);
  const below = plainLine(lines.b);
  const left = plainLine(lines.l);
  const right = plainLine(lines.r);
  const align = keyOf(alignments, style.ht);
  const alignDown = keyOf(alignmentsDown, style.vt);
  return {
    ...(typeof style.ff === "string" && { font: style.ff }),
    ...(style.fs !== undefined && { size: style.fs }),
    ...(style.bl === BooleanNumber.TRUE && { bold: true }),
    ...(style.it === BooleanNumber.TRUE && { italic: true }),
    ...(style.ul?.s === BooleanNumber.TRUE && { underline: true }),
    ...(style.st?.s === BooleanNumber.TRUE && { strike: true }),
    ...(ink !== undefined && { ink }),
    ...(fill !== undefined && { fill }),
    ...(above && { lineAbove: above }),
    ...(below && { lineBelow: below }),
    ...(left && { lineLeft: left }),
    ...(right && { lineRight: right }),
    ...(style.n && { format: style.n.pattern }),
    ...(align && { align }),
    ...(style.pd?.l === indentPixels && { indent: true }),
    ...(alignDown && { alignDown }),
    ...(style.tb === WrapStrategy.WRAP && { wrap: true }),
  };
}

const keyOf = <Key extends string>(
  words: Readonly<Record<Key, number>>,
  found: Nullable<number>,
): Key | undefined => (Object.keys(words) as Key[]).find((key) => words[key] === found);

function plainLine(border: Nullable<IBorderStyleData>): LineStyle | undefined {
  if (!border || border.s === BorderStyleTypes.NONE) return undefined;
  return { weight: keyOf(weights, border.s) ?? "thin", ink: hexOf(border.cl) ?? "000000" };
}

/** `#RRGGBB` and `rgb(r, g, b)` as `RRGGBB`; anything else as nothing. */
function hexOf(color: Nullable<IColorStyle>): string | undefined {
  const text = color?.rgb;
  if (typeof text !== "string") return undefined;
  const hex = /^#([0-9a-f]{6})$/i.exec(text)?.[1];
  if (hex !== undefined) return hex.toUpperCase();
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/i.exec(text);
  return parts
    ?.slice(1, 4)
    .map((part) => Number(part).toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase();
}
