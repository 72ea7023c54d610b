/** The pane's colours, light and dark: Fluent's, around a wire green that both pages share. */
import {
  createDarkTheme,
  createLightTheme,
  type BrandVariants,
  type Theme,
} from "@fluentui/react-components";

const wireGreen: BrandVariants = {
  10: "#020f0d",
  20: "#0a221e",
  30: "#0e342e",
  40: "#12433b",
  50: "#175248",
  60: "#1d6156",
  70: "#246f63",
  80: "#2c7d70",
  90: "#43907f",
  100: "#5aa391",
  110: "#73b6a4",
  120: "#8dc8b7",
  130: "#a7d9ca",
  140: "#c1e9dd",
  150: "#daf5ed",
  160: "#eefbf7",
};

export const lightTheme: Theme = {
  ...createLightTheme(wireGreen),
  // Fluent's own makes a choice that is not made look as if it could not be made.
  colorNeutralForeground3: "#424242",
};

export const darkTheme: Theme = {
  ...createDarkTheme(wireGreen),
  colorNeutralForeground3: "#d6d6d6",
  // Fluent's own are made for a brighter brand; these keep text readable on the dark ground.
  colorBrandForeground1: wireGreen[120],
  colorBrandForeground2: wireGreen[130],
  colorBrandForegroundLink: wireGreen[120],
  colorBrandForegroundLinkHover: wireGreen[130],
  colorBrandForegroundLinkPressed: wireGreen[110],
  colorNeutralForeground2BrandHover: wireGreen[130],
  colorCompoundBrandForeground1: wireGreen[120],
  colorCompoundBrandStroke: wireGreen[110],
  colorCompoundBrandBackground: wireGreen[110],
  colorCompoundBrandBackgroundHover: wireGreen[120],
};
