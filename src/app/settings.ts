/** What a firm sets once for a workbook, kept inside it. */
import type { Inches } from "../core/base/units";
import type { LengthUnit } from "../core/lengths/length";
import {
  fractionDenominators,
  writeLength,
  type FractionDenominator,
  type LengthStyle,
} from "../core/lengths/writeLength";
import { measureStyleOf, type MeasureStyle } from "../core/measures/measures";
import { currencies, currencyOf, usDollar, type Currency } from "../core/money/currency";
import { isLabelGrid, plainLabelGrid, type LabelGrid } from "../sheets/crew/labelGrid";
import type { ScheduleMapping } from "../tables/scheduleLayout";
import type { Source, Workbook } from "../workbook/workbook";
import { jsonValue } from "./jsonValue";

export const lengthStyleNames = ["feet and inches", "inches", "millimetres"] as const;
export type LengthStyleName = (typeof lengthStyleNames)[number];

export type Settings = {
  /** What a bare number in the schedule means. */
  readonly unit: LengthUnit;
  /** How lengths are written. */
  readonly lengths: LengthStyleName;
  /** The finest fraction of an inch that is written. */
  readonly fraction: FractionDenominator;
  /** ISO 4217 code of the currency that prices are in. */
  readonly currency: string;
  /** Whether the written sheets show costs. */
  readonly withCosts: boolean;
  /** One hardware sheet per job, or one for all. */
  readonly sheetPerJob: boolean;
  /** Which sheet or table is the schedule; `null` to find it. */
  readonly schedule: Source | null;
  /** Which column is what, where the person said so. */
  readonly columns: ScheduleMapping;
  /** The paper that bag labels are printed on. */
  readonly labels: LabelGrid;
};

export const defaultSettings: Settings = {
  unit: "in",
  lengths: "feet and inches",
  fraction: 16,
  currency: usDollar.code,
  withCosts: true,
  sheetPerJob: true,
  schedule: null,
  columns: {},
  labels: plainLabelGrid,
};

const settingKey = "settings";

/** The workbook's settings; what is not set, or cannot be read, is the default. */
export async function readSettings(workbook: Workbook): Promise<Settings> {
  const text = await workbook.readSetting(settingKey);
  return text === null ? defaultSettings : { ...defaultSettings, ...knownSettings(text) };
}

/** Keeps the settings in the workbook. */
export const writeSettings = (
  workbook: Workbook,
  settings: Settings,
): ReturnType<Workbook["writeSetting"]> =>
  workbook.writeSetting(settingKey, JSON.stringify(settings));

type LengthSettings = Pick<Settings, "lengths" | "fraction">;

/** How the settings write a length. */
export function lengthStyleOf(settings: LengthSettings): LengthStyle {
  switch (settings.lengths) {
    case "feet and inches":
      return { kind: "feet-inches", denominator: settings.fraction };
    case "inches":
      return { kind: "inches" };
    case "millimetres":
      return { kind: "mm" };
  }
}

/** How the settings write weights and loads. */
export const measureStyleIn = (settings: LengthSettings): MeasureStyle =>
  measureStyleOf(lengthStyleOf(settings));

/** Writes lengths as the settings say. */
export function lengthWriter(settings: LengthSettings): (length: Inches) => string {
  const style = lengthStyleOf(settings);
  return (length) => writeLength(length, style);
}

/** The currency of the settings. */
export const currencyIn = (settings: Settings): Currency =>
  currencyOf(settings.currency) ?? usDollar;

/** The settings of a text that are of their kind; the others are left to their defaults. */
function knownSettings(text: string): Partial<Settings> {
  const read = jsonValue(text);
  if (typeof read !== "object" || read === null) return {};
  const given = read as Readonly<Record<string, unknown>>;
  const has = (key: keyof Settings, isRight: (value: unknown) => boolean): boolean =>
    Object.hasOwn(given, key) && isRight(given[key]);
  const isOneOf = (list: readonly unknown[]) => (value: unknown) => list.includes(value);
  const isYesNo = (value: unknown): boolean => typeof value === "boolean";
  const right: readonly [keyof Settings, (value: unknown) => boolean][] = [
    ["unit", isOneOf(["in", "mm"])],
    ["lengths", isOneOf(lengthStyleNames)],
    ["fraction", isOneOf(fractionDenominators)],
    ["currency", isOneOf(currencies.map(({ code }) => code))],
    ["withCosts", isYesNo],
    ["sheetPerJob", isYesNo],
    ["schedule", isSource],
    ["columns", isMapping],
    ["labels", isLabelGrid],
  ];
  const kept = right
    .filter(([key, isRight]) => has(key, isRight))
    .map(([key]) => [key, given[key]]);
  return Object.fromEntries(kept) as Partial<Settings>;
}

function isSource(value: unknown): boolean {
  if (value === null) return true;
  if (typeof value !== "object") return false;
  const source = value as Readonly<Record<string, unknown>>;
  return (
    (source["kind"] === "sheet" && typeof source["sheet"] === "string") ||
    (source["kind"] === "table" && typeof source["table"] === "string")
  );
}

const isMapping = (value: unknown): boolean =>
  typeof value === "object" &&
  value !== null &&
  Object.values(value).every((heading) => typeof heading === "string");
