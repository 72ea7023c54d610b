/** Takes off and writes again, and looks whether all that was typed is still there. */
import { readRecord } from "../../../src/app/corrections/correctionRecord";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { writeTakeOff } from "../../../src/app/writing/writeSheets";
import { rowKey } from "../../../src/core/corrections/rowName";
import type { WrittenSheet } from "../../../src/workbook/workbook";
import { clearSomewhere, typeSomewhere } from "./edits";
import { sheetRows, tokenIn } from "./hardwareSheets";
import { kitBook, pick, type Chance, type World } from "./world";

/** What was found wrong; nothing where all is well, or the host refused. */
export async function takeOffAgain(world: World, chance: Chance): Promise<readonly string[]> {
  const { desk, settings, items } = world;
  desk.failAt(chance(8) === 0 ? 1 + chance(14) : null);
  const read = takeOffWorkbook(desk.workbook, settings, { items, kitBook });
  const takeOff = await read.catch(() => null);
  if (takeOff?.ok !== true) {
    desk.failAt(null);
    world.log.push("reading refused");
    return [];
  }
  // A person goes on typing while the sheets are drawn.
  const before = { live: new Set(world.live), gone: new Set(world.gone) };
  const isMoving = sheetRows(desk).some(
    ({ name, cell }) => name.kind === "move" && cell("correction") !== null,
  );
  const isLate = !isMoving && chance(5) === 0;
  for (let count = 0; count < (isLate ? 3 : 0); count += 1) {
    pick([typeSomewhere, clearSomewhere], chance)?.(world, chance);
  }
  const written = await writeTakeOff(desk.workbook, takeOff.value, settings);
  desk.failAt(null);
  world.log.push(written.ok ? `written${isLate ? ", late" : ""}` : "writing refused");
  if (!written.ok) {
    world.isTidy = false;
    return [];
  }
  const { record } = await readRecord(desk.workbook);
  const onRecord = new Set(record.corrections.map(({ typed }) => typed.reason));
  const wrong = [
    ...missing(world, before, written.value, onRecord),
    ...(world.isTidy && !isLate ? keptInVain(written.value) : []),
  ];

  // Whoever looks the kept sheets through throws them away: nothing may depend on them.
  for (const { name, mark } of desk.sheets()) {
    if (mark === null && name !== "Schedule") desk.remove(name);
  }
  world.recorded = onRecord;
  world.fresh = new Set(hardwareAmong(written.value).map(({ mark }) => mark?.subject ?? ""));
  world.keys = new Map(record.corrections.map(({ name, typed }) => [typed.reason, rowKey(name)]));
  world.isTidy = !isLate;
  return wrong;
}

const hardwareAmong = (sheets: readonly WrittenSheet[]): readonly WrittenSheet[] =>
  sheets.filter(({ mark }) => mark?.kind === "hardware");

const keptInVain = (sheets: readonly WrittenSheet[]): readonly string[] =>
  hardwareAmong(sheets).flatMap(({ name, keptAs }) =>
    keptAs === null ? [] : [`${name} was kept`],
  );

function missing(
  { desk, live }: World,
  before: { readonly live: ReadonlySet<string>; readonly gone: ReadonlySet<string> },
  written: readonly WrittenSheet[],
  onRecord: ReadonlySet<string>,
): readonly string[] {
  const names = new Set(written.map(({ name }) => name));
  const rows = sheetRows(desk);
  const anywhere = new Set(rows.map(tokenIn));
  const shown = new Set(rows.filter(({ sheet }) => names.has(sheet)).map(tokenIn));
  const lost = [...live].flatMap((token) => {
    // What was typed late on a sheet that is not written again stands there until the next time.
    const isThere = onRecord.has(token) || (!before.live.has(token) && anywhere.has(token));
    if (!isThere) return [`${token} is lost`];
    return before.live.has(token) && !shown.has(token) ? [`${token} stands on no sheet`] : [];
  });
  const back = [...before.gone].filter((token) => onRecord.has(token));
  return [...lost, ...back.map((token) => `${token} came back`)];
}
