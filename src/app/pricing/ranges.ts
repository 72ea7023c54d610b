/**
 * Where an owner's ranges come from: a sheet of ranges in the workbook; else those kept in the
 * workbook's settings, as the pane keeps them; else the starter's, which are invented.
 */
import { isPercentage } from "../../core/pricing/rates/percent";
import type { Block } from "../../core/base/cell";
import type { Finding } from "../../core/base/finding";
import {
  changeFault,
  rangeShapes,
  rangeSubjects,
  starterRanges,
  type OwnerRange,
} from "../../core/pricing/chances/ownerRanges";
import { checkRanges } from "../../core/pricing/rates/rangeRows";
import { readRangeTable } from "../../tables/rangeTable";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";

export type OwnerRanges = {
  readonly ranges: readonly OwnerRange[];
  /** `sheet`: only there they can be changed. */
  readonly from: "sheet" | "kept" | "starter";
  /** Of the sheet's rows. */
  readonly findings: readonly Finding[];
};

const rangesKey = "ranges";

/** The ranges of a workbook whose own sheets hold `blocks`. Of several sheets of ranges all rows count. */
export async function readOwnerRanges(
  workbook: Pick<Workbook, "readSetting">,
  blocks: readonly Block[],
): Promise<OwnerRanges> {
  const tables = blocks.flatMap((block) => readRangeTable(block) ?? []);
  if (tables.length > 0) return { ...checkRanges(tables), from: "sheet" };
  const text = await workbook.readSetting(rangesKey);
  const kept = text === null ? null : knownRanges(jsonValue(text));
  return kept === null
    ? { ranges: starterRanges, from: "starter", findings: [] }
    : { ranges: kept, from: "kept", findings: [] };
}

/** Keeps ranges in the workbook. They count where it has no sheet of ranges. */
export const keepOwnerRanges = (
  workbook: Workbook,
  ranges: readonly OwnerRange[],
): ReturnType<Workbook["writeSetting"]> => workbook.writeSetting(rangesKey, JSON.stringify(ranges));

/** `null` where any of it is no range: another version may have left it. */
function knownRanges(value: unknown): readonly OwnerRange[] | null {
  return Array.isArray(value) && value.every(isRange) ? value : null;
}

function isRange(value: unknown): value is OwnerRange {
  if (typeof value !== "object" || value === null) return false;
  const { subject, family, job, low, likely, high, shape } = value as Record<string, unknown>;
  const knownShape = rangeShapes.find((one) => one === shape);
  return (
    rangeSubjects.some((one) => one === subject) &&
    typeof family === "string" &&
    typeof job === "string" &&
    knownShape !== undefined &&
    isPercentage(low) &&
    isPercentage(likely) &&
    isPercentage(high) &&
    changeFault({ low, likely, high, shape: knownShape }) === null
  );
}
