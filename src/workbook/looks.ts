/** What each look and number format means in every host, so that a sheet is the same in all of them. */
import type { Look, NumberFormat } from "./drawing";

/** Colours are `RRGGBB`. An absent fill is none. */
export type LookStyle = {
  readonly bold: boolean;
  readonly italic: boolean;
  readonly size: number;
  readonly ink: string;
  readonly fill?: string;
  readonly lineBelow?: string;
  readonly lineAbove?: string;
};

const plain = { bold: false, italic: false, size: 10, ink: "1F2328" } as const;

/** Ink on fill has a contrast of 4.5 : 1 or more in each row (WCAG 2.2, success criterion 1.4.3). */
export const lookStyles: Readonly<Record<Look, LookStyle>> = {
  body: { ...plain, lineBelow: "E3E6E4" },
  title: { ...plain, bold: true, size: 16 },
  subtitle: { ...plain, size: 10, ink: "57606A" },
  heading: { ...plain, bold: true, ink: "FFFFFF", fill: "2F4F4A" },
  group: { ...plain, bold: true, fill: "E4ECE8" },
  total: { ...plain, bold: true, lineAbove: "2F4F4A" },
  input: { ...plain, ink: "0B4A8F", fill: "FFF9E5", lineBelow: "E3E6E4" },
  caution: { ...plain, italic: true, size: 9, ink: "6B3A00" },
  stop: { ...plain, bold: true, ink: "8A1C1C", fill: "FBE9E7" },
  warn: { ...plain, ink: "6B3A00", fill: "FFF1D6" },
  note: { ...plain, ink: "1F4E79", fill: "EAF2FA" },
  muted: { ...plain, ink: "57606A", lineBelow: "E3E6E4" },
  label: { ...plain, size: 8 },
  labelTitle: { ...plain, bold: true, size: 11 },
};

/** Spreadsheet format codes. */
export const numberFormatCodes: Readonly<Record<NumberFormat, string>> = {
  general: "General",
  text: "@",
  count: "#,##0",
  decimal: "#,##0.###",
  money: "#,##0.00",
  unitCost: "#,##0.00##",
  weight: "#,##0.0",
  hours: "#,##0.00",
  percent: "0.0%",
  rate: "0.0###%",
  date: "yyyy-mm-dd",
};
