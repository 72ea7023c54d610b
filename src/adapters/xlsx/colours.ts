/** Colours as a file names them, in whichever of four ways, as plain `RRGGBB`. */
import { partText, type Parts } from "./parts";
import { childNamed, parseXml, type XmlElement } from "./xml";

/** The `RRGGBB` of a colour element; `undefined` for none or for the host's own. */
export type ColourReader = (element: XmlElement | undefined) => string | undefined;

/** A reader that knows the theme at `themePath`. */
export function colourReader(parts: Parts, themePath: string | undefined): ColourReader {
  const theme = themePath === undefined ? [] : themeColours(parts, themePath);
  return (element) => {
    if (element === undefined) return undefined;
    const { rgb, theme: place, indexed, tint = "0" } = element.attributes;
    const plain =
      rgb?.slice(-6).toUpperCase() ??
      (place === undefined ? undefined : theme[Number(place)]) ??
      (indexed === undefined ? undefined : palette[Number(indexed)]);
    return plain === undefined || !/^[0-9A-F]{6}$/.test(plain)
      ? undefined
      : tinted(plain, Number(tint));
  };
}

/** In the order that cells count them: light 1 and dark 1 change places, and so do the seconds. */
const themeOrder = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];

function themeColours(parts: Parts, path: string): readonly (string | undefined)[] {
  const source = partText(parts, path);
  if (source === null) return [];
  const scheme = childNamed(childNamed(parseXml(source), "themeElements"), "clrScheme");
  return themeOrder.map((name) => {
    const colour = childNamed(scheme, name)?.children[0];
    const { val, lastClr } = colour?.attributes ?? {};
    return (colour?.name === "sysClr" ? lastClr : val)?.toUpperCase();
  });
}

/**
 * Darker where `tint` is below zero, lighter above: of the colour's lightness, not of each part.
 * (ECMA-376 part 1, 18.8.19.)
 */
function tinted(colour: string, tint: number): string {
  if (!Number.isFinite(tint) || tint === 0) return colour;
  const channels = [0, 2, 4].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const most = Math.max(...channels);
  const least = Math.min(...channels);
  const light = (most + least) / 2;
  const wanted = tint < 0 ? light * (1 + tint) : light * (1 - tint) + tint;
  const spread = (lightness: number): number => Math.min(lightness, 1 - lightness);
  // The same hue and saturation at another lightness: distances from the middle scale alike.
  const scale = spread(light) === 0 ? 0 : spread(wanted) / spread(light);
  return channels
    .map((channel) => Math.round(255 * (wanted + (channel - light) * scale)))
    .map((channel) => Math.min(255, Math.max(0, channel)).toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase();
}

const firstEight = ["000000", "FFFFFF", "FF0000", "00FF00", "0000FF", "FFFF00", "FF00FF", "00FFFF"];

/** The colours that files name by number. (ECMA-376 part 1, 18.8.27.) */
const palette: readonly string[] = [
  ...firstEight,
  ...firstEight,
  ..."800000 008000 000080 808000 800080 008080 C0C0C0 808080".split(" "),
  ..."9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF".split(" "),
  ..."000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF".split(" "),
  ..."00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99".split(" "),
  ..."3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696".split(" "),
  ..."003366 339966 003300 333300 993300 993366 333399 333333".split(" "),
];
