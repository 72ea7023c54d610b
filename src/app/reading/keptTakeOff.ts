/**
 * A take-off that is made again and again while a workbook changes, a step at a time, and each time
 * only where it changed. The outcome is that of `takeOffInputs`; only the order of a job's lines and
 * of findings about the same cell may differ.
 */
import type { Block } from "../../core/base/cell";
import { ok, type Result } from "../../core/base/result";
import { between, type Steps } from "../../core/base/steps";
import type { Finding } from "../../core/base/finding";
import { finishEstimate, headingsOf } from "../../core/estimate/estimate";
import { compileKitBook } from "../../core/kitbook/compileKitBook";
import { starterItems } from "../../core/kitbook/starter/items";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import { checkItems } from "../../core/pricing/item";
import { joinTakeOffs } from "../../core/takeoff/joinTakeOffs";
import { kitBookParts } from "../../tables/kitBookParts";
import { readKitBook } from "../../tables/kitBookTable";
import { scheduleLayout, type ScheduleLayout } from "../../tables/scheduleLayout";
import type { EnteredLoads } from "../pricing/enteredLoads";
import { nothingRead, type ReadCorrections } from "../corrections/corrections";
import { findInputs, gatherInputs, type OtherInputs } from "./inputs";
import { onceForSame } from "./onceForSame";
import {
  countSchedule,
  type CountedSchedule,
  type PartBasis,
  type SchedulePart,
} from "./scheduleParts";
import { currencyIn, lengthWriter, type Settings } from "../settings";
import { sourceKey, type SourceBlock } from "./sourceBlocks";
import { workbookTakeOff, type WorkbookTakeOff } from "./workbookTakeOff";

/** Counts what the blocks hold. What is unchanged is best the same object as before. */
export type KeptTakeOff = (
  blocks: readonly SourceBlock[],
  settings: Settings,
  corrections?: ReadCorrections,
  others?: OtherInputs,
) => Steps<WorkbookTakeOff>;

/** How much of the way is done once the schedules are counted. */
const whenCounted = 0.9;

/** `enteredLoads` gives the check of hanging loads, which may come later than the rest. */
export function keptTakeOff(enteredLoads: EnteredLoads): KeptTakeOff {
  const readBookIn = onceForSame(readKitBook);
  const readBook = (blocks: readonly Block[]) => readBookIn(blocks.filter(holdsKitBook));
  const compile = onceForSame(compileKitBook);
  const check = onceForSame(checkItems);
  const writerFor = onceForSame((lengths: Settings["lengths"], fraction: Settings["fraction"]) =>
    lengthWriter({ lengths, fraction }),
  );
  const kept = new Map<string, KeptSchedule>();

  return function* (blocks, settings, typed = nothingRead, others = {}) {
    const found = findInputs(blocks, settings, others, readBook);
    yield 0;
    const layouts = found.chosen.map(({ block }) => scheduleLayout(block, settings.columns));
    const headings = headingsOf(layouts.flatMap((layout) => (layout.ok ? [layout.value] : [])));
    const compiled = compile(found.kitBook?.rows ?? starterKitBook, headings);
    const checkedItems = check(found.items ?? starterItems, currencyIn(settings));
    const showLength = writerFor(settings.lengths, settings.fraction);
    yield 0;

    const counted: Result<CountedSchedule, Finding>[] = [];
    for (const [index, { source, block }] of found.chosen.entries()) {
      const layout = layouts[index];
      if (layout === undefined) continue;
      if (!layout.ok) {
        counted.push(layout);
        continue;
      }
      const basis = { layout: layout.value, book: compiled.book, unit: settings.unit, showLength };
      const schedule = keptSchedule(kept.get(sourceKey(source)), block, basis);
      kept.set(sourceKey(source), schedule);
      const share = whenCounted / found.chosen.length;
      const steps = countSchedule(block, schedule.basis, schedule.parts);
      counted.push(ok(yield* between(share * index, share * (index + 1), steps)));
    }
    const keys = new Set(found.chosen.map(({ source }) => sourceKey(source)));
    for (const key of kept.keys()) if (!keys.has(key)) kept.delete(key);
    const schedules = counted.flatMap((schedule) => (schedule.ok ? [schedule.value] : []));
    yield whenCounted;
    const taken = joinTakeOffs(schedules.flatMap((schedule) => schedule.taken));
    yield whenCounted;
    const checked = schedules.map((schedule) => schedule.checked);
    const rules = { unit: settings.unit, showLength };
    const corrections = typed.input;
    const stopOverloaded = enteredLoads(found.rates, settings);
    const phases = { compiled, checkedItems, checked, taken, corrections, rules, stopOverloaded };
    const estimated = yield* between(whenCounted, 1, finishEstimate(phases));
    const readings = counted.map((schedule) =>
      schedule.ok ? ok(schedule.value.reading) : schedule,
    );
    return workbookTakeOff(gatherInputs(found, readings, others), typed, estimated);
  };
}

type KeptSchedule = {
  readonly basis: PartBasis;
  readonly layoutText: string;
  readonly parts: SchedulePart[];
};

/** What is kept of a schedule that is laid out and counted as before; else a new beginning. */
function keptSchedule(
  known: KeptSchedule | undefined,
  block: Block,
  basis: PartBasis,
): KeptSchedule {
  const layoutText = textOf(block, basis.layout);
  const isAsBefore =
    known?.layoutText === layoutText &&
    known.basis.book === basis.book &&
    known.basis.unit === basis.unit &&
    known.basis.showLength === basis.showLength;
  return isAsBefore ? known : { basis, layoutText, parts: [] };
}

/** Everything that the reading of a row depends on besides its cells. */
const textOf = ({ sheet, row, column }: Block, layout: ScheduleLayout): string =>
  JSON.stringify([sheet, row, column, layout, [...layout.otherNames]]);

const holdsBook = new WeakMap<Block, boolean>();

/** Whether there is any part of a kit book in the block; asked once of each. */
function holdsKitBook(block: Block): boolean {
  const holds = holdsBook.get(block) ?? kitBookParts(block).length > 0;
  holdsBook.set(block, holds);
  return holds;
}
