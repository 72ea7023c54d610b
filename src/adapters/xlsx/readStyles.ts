/** What the numbered styles of a file mean. */
import { isDateFormat } from "../../workbook/dateFormats";
import type { CellStyle, LineStyle } from "../../workbook/snapshot";
import type { ColourReader } from "./colours";
import { partText, type Parts } from "./parts";
import { childNamed, childrenNamed, isOn, parseXml, type XmlElement } from "./xml";

export type FileStyle = { readonly style: CellStyle; readonly isDate: boolean };

/** Each style by its number; none where the file has no such part. */
export function readStyles(
  parts: Parts,
  path: string | undefined,
  colour: ColourReader,
): readonly FileStyle[] {
  const source = path === undefined ? null : partText(parts, path);
  if (source === null) return [];
  const root = parseXml(source);
  const list = (name: string, row: string): readonly XmlElement[] =>
    childrenNamed(childNamed(root, name), row);
  const formats = new Map(
    list("numFmts", "numFmt").map(({ attributes }) => [
      Number(attributes["numFmtId"]),
      attributes["formatCode"] ?? "General",
    ]),
  );
  const [fonts, fills, borders] = [
    list("fonts", "font"),
    list("fills", "fill"),
    list("borders", "border"),
  ];
  return list("cellXfs", "xf").map((xf) => {
    const { numFmtId = "0", fontId = "0", fillId = "0", borderId = "0" } = xf.attributes;
    const code = formats.get(Number(numFmtId)) ?? builtInFormats[Number(numFmtId)] ?? "General";
    const style: CellStyle = {
      ...fontStyle(fonts[Number(fontId)], fonts[0], colour),
      ...fillStyle(fills[Number(fillId)], colour),
      ...borderStyle(borders[Number(borderId)], colour),
      ...(code === "General" ? {} : { format: code }),
      ...alignStyle(childNamed(xf, "alignment")),
    };
    return { style, isDate: isDateFormat(code) };
  });
}

/** A font's name and size are left out where they are the workbook's own (its first font's). */
function fontStyle(
  font: XmlElement | undefined,
  usual: XmlElement | undefined,
  colour: ColourReader,
): Partial<CellStyle> {
  const valueOf = (of: XmlElement | undefined, name: string): string | undefined =>
    childNamed(of, name)?.attributes["val"];
  const has = (name: string): boolean => {
    const element = childNamed(font, name);
    return element !== undefined && isOn(element.attributes["val"], true);
  };
  const name = valueOf(font, "name");
  const size = valueOf(font, "sz");
  const ink = colour(childNamed(font, "color"));
  const underline = childNamed(font, "u");
  return {
    ...(name === undefined || name === valueOf(usual, "name") ? {} : { font: name }),
    ...(size === undefined || size === valueOf(usual, "sz") ? {} : { size: Number(size) }),
    ...(has("b") ? { bold: true } : {}),
    ...(has("i") ? { italic: true } : {}),
    ...(underline !== undefined && underline.attributes["val"] !== "none"
      ? { underline: true }
      : {}),
    ...(has("strike") ? { strike: true } : {}),
    ...(ink === undefined || ink === "000000" ? {} : { ink }),
  };
}

/** A pattern's own colour stands for it; a gradient is left out. */
function fillStyle(fill: XmlElement | undefined, colour: ColourReader): Partial<CellStyle> {
  const pattern = childNamed(fill, "patternFill");
  const type = pattern?.attributes["patternType"] ?? "none";
  if (type === "none") return {};
  const ink = colour(childNamed(pattern, type === "solid" ? "fgColor" : "bgColor"));
  return ink === undefined ? {} : { fill: ink };
}

function borderStyle(border: XmlElement | undefined, colour: ColourReader): Partial<CellStyle> {
  const line = (...names: readonly string[]): LineStyle | undefined => {
    const side = names.map((name) => childNamed(border, name)).find((each) => each !== undefined);
    const style = side?.attributes["style"] ?? "none";
    if (style === "none") return undefined;
    const weight = /^(thick|double)$/.test(style)
      ? "thick"
      : style.startsWith("medium")
        ? "medium"
        : "thin";
    return { weight, ink: colour(childNamed(side, "color")) ?? "000000" };
  };
  const [above, below] = [line("top"), line("bottom")];
  const [left, right] = [line("left", "start"), line("right", "end")];
  return {
    ...(above === undefined ? {} : { lineAbove: above }),
    ...(below === undefined ? {} : { lineBelow: below }),
    ...(left === undefined ? {} : { lineLeft: left }),
    ...(right === undefined ? {} : { lineRight: right }),
  };
}

function alignStyle(alignment: XmlElement | undefined): Partial<CellStyle> {
  const { horizontal, vertical, wrapText, indent } = alignment?.attributes ?? {};
  const across = ["left", "center", "right"] as const;
  const align = across.find((each) => each === horizontal);
  const alignDown = vertical === undefined ? undefined : down[vertical];
  return {
    ...(align === undefined ? {} : { align }),
    ...(Number(indent) > 0 ? { indent: true } : {}),
    ...(alignDown === undefined ? {} : { alignDown }),
    ...(isOn(wrapText) ? { wrap: true } : {}),
  };
}

const down: Readonly<Record<string, "top" | "middle" | "bottom">> = {
  top: "top",
  center: "middle",
  bottom: "bottom",
};

/** The formats that files name by number alone. (ECMA-376 part 1, 18.8.30, in United States form.) */
export const builtInFormats: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yyyy h:mm",
  // 27 to 36 and 50 to 58 are dates in East Asian forms.
  ...Object.fromEntries(
    [27, 28, 29, 30, 31, 36, 50, 51, 52, 53, 54, 57, 58].map((id) => [id, "m/d/yyyy"]),
  ),
  ...Object.fromEntries([32, 33, 34, 35, 55, 56].map((id) => [id, "h:mm:ss"])),
  37: "#,##0 ;(#,##0)",
  38: "#,##0 ;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mm:ss.0",
  48: "##0.0E+0",
  49: "@",
};
