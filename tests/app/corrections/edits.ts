/** What a person does to hardware sheets and to the schedule, by chance. */
import { rowKey } from "../../../src/core/corrections/rowName";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import {
  hardwareSubjects,
  reasonsOn,
  rowCount,
  sheetRows,
  tokenIn,
  typeInRow,
  type SheetRow,
} from "./hardwareSheets";
import {
  disclaim,
  leave,
  newToken,
  pick,
  sayAgain,
  widths,
  type Chance,
  type World,
} from "./world";

export type Edit = (world: World, chance: Chance) => void;

/** A row by chance, of those for which `isWanted`. */
const aRow = (
  { desk }: World,
  chance: Chance,
  isWanted: (row: SheetRow) => boolean = () => true,
): SheetRow | undefined => pick(sheetRows(desk).filter(isWanted), chance);

const aSheet = ({ desk }: World, chance: Chance): string | undefined =>
  pick([...hardwareSubjects(desk).keys()], chance);

const isTyped = ({ name }: SheetRow): boolean => name.kind !== "move";

export const typeSomewhere: Edit = (world, chance) => {
  const row = aRow(world, chance, isTyped);
  if (row === undefined) return;
  leave(world, row);
  const token = newToken(world);
  world.log.push(`${token} typed on ${row.sheet} row ${row.row + 1}: ${rowKey(row.name)}`);
  const corrections = [
    `+${chance(9)}`,
    `-${chance(3)}`,
    `=${chance(30)}`,
    chance(30),
    -1,
    "many",
    "+1.5",
  ];
  const correction = pick(corrections, chance) ?? null;
  const item = pick(["HOOK", "HN 1/4", "STRIKE"], chance) ?? null;
  typeInRow(
    world.desk,
    row,
    row.name.kind === "line"
      ? { correction, reason: token, by: "AB" }
      : { item, quantity: 1 + chance(9), reason: token },
  );
};

export const clearSomewhere: Edit = (world, chance) => {
  const row = aRow(world, chance, (each) => tokenIn(each) !== null);
  if (row === undefined) return;
  leave(world, row);
  world.log.push(`cleared ${row.sheet} row ${row.row + 1}: ${String(tokenIn(row))}`);
  const isAdded = row.name.kind === "added";
  typeInRow(world.desk, row, {
    correction: null,
    reason: null,
    by: null,
    spares: null,
    ...(isAdded ? { item: null, size: null, quantity: null } : {}),
  });
};

const typeSpares: Edit = (world, chance) => {
  const row = aRow(world, chance, ({ name }) => name.kind === "line" && name.copy === 1);
  if (row === undefined) return;
  sayAgain(world, row);
  typeInRow(world.desk, row, { spares: chance(20) });
};

const answer: Edit = (world, chance) => {
  const row = aRow(world, chance, (each) => !isTyped(each));
  if (row === undefined) return;
  world.log.push(`answered ${rowKey(row.name)}`);
  typeInRow(world.desk, row, { correction: pick(["yes", "Y", "no", "ask"], chance) ?? null });
};

/** The first row below the headings. */
const below = 6;
const countTo = (count: number): number[] => Array.from({ length: count }, (_, row) => row);

/** Rows are put in another order, below the headings or with them. */
const sortRows: Edit = (world, chance) => {
  const sheet = aSheet(world, chance);
  if (sheet === undefined) return;
  const from = chance(4) === 0 ? 0 : below;
  world.log.push(`sorted ${sheet} from row ${from + 1}`);
  const order = countTo(rowCount(world.desk, sheet));
  for (let index = order.length - 1; index > from; index -= 1) {
    const other = from + chance(index - from + 1);
    [order[index], order[other]] = [order[other] ?? 0, order[index] ?? 0];
  }
  world.desk.rearrange(sheet, order);
};

const insertRow: Edit = (world, chance) => {
  const sheet = aSheet(world, chance);
  if (sheet === undefined) return;
  const rows = countTo(rowCount(world.desk, sheet));
  const row = Math.min(rows.length, below + chance(rows.length));
  world.desk.rearrange(sheet, [...rows.slice(0, row), null, ...rows.slice(row)]);
  if (chance(2) === 0) return;
  const token = newToken(world);
  world.log.push(`${token} put in on ${sheet} row ${row + 1}`);
  const column = pick(["quantity", "counted", "correction"] as const, chance) ?? "quantity";
  typeInRow(world.desk, { sheet, row }, { item: "CLIP", reason: token, [column]: 2 });
};

const copyRow: Edit = (world, chance) => {
  const row = aRow(world, chance);
  if (row === undefined) return;
  world.log.push(`copied ${row.sheet} row ${row.row + 1}`);
  sayAgain(world, row);
  const rows = countTo(rowCount(world.desk, row.sheet));
  world.desk.rearrange(row.sheet, [...rows.slice(0, row.row), row.row, ...rows.slice(row.row)]);
};

const deleteRow: Edit = (world, chance) => {
  const row = aRow(world, chance);
  if (row === undefined) return;
  world.log.push(`deleted ${row.sheet} row ${row.row + 1}: ${String(tokenIn(row))}`);
  disclaim(world, [tokenIn(row) ?? ""]);
  const rows = countTo(rowCount(world.desk, row.sheet));
  world.desk.rearrange(row.sheet, rows.toSpliced(row.row, 1));
};

const deleteSheet: Edit = (world, chance) => {
  const sheet = aSheet(world, chance);
  if (sheet === undefined) return;
  world.log.push(`deleted ${sheet}`);
  disclaim(world, reasonsOn(world.desk, sheet));
  world.desk.remove(sheet);
};

const renameSheet: Edit = (world, chance) => {
  const sheet = aSheet(world, chance);
  if (sheet !== undefined) {
    world.desk.rename(sheet, `Renamed ${world.tokens} ${chance(1_000_000)}`);
  }
};

const loseName: Edit = (world, chance) => {
  const row = aRow(world, chance, isTyped);
  if (row === undefined) return;
  world.log.push(`lost the name of ${row.sheet} row ${row.row + 1}: ${rowKey(row.name)}`);
  // As with a row that is deleted its old content comes back; what it holds now counts too.
  disclaim(world, []);
  sayAgain(world, row);
  typeInRow(world.desk, row, { line: null });
};

const scheduleColumn = ({ desk }: World, column: number): readonly unknown[] =>
  (desk.sheets().find(({ name }) => name === "Schedule")?.rows ?? []).map(
    (cells) => cells[column]?.value ?? null,
  );

const renameJob: Edit = (world, chance) => {
  const jobs = scheduleColumn(world, 0);
  const job = pick(jobs.slice(1), chance);
  const name = pick(["Crib", "Cage", "Crib two", "Cage north", "Yard"], chance) ?? "Crib";
  world.log.push(`job ${String(job)} is now ${name}`);
  for (const [row, other] of jobs.entries()) {
    if (row > 0 && other === job) world.desk.type({ sheet: "Schedule", row, column: 0 }, name);
  }
};

const changeOpening: Edit = (world, chance) => {
  const row = 1 + chance(3);
  world.desk.type({ sheet: "Schedule", row, column: 4 }, pick(widths, chance) ?? null);
  world.desk.type({ sheet: "Schedule", row, column: 2 }, 1 + chance(3));
};

const changeSpares: Edit = (world, chance) => {
  const sparesPercent = { value: chance(12), place: null };
  world.items = starterItems.map((item) => ({ ...item, sparesPercent }));
};

const changeLayout: Edit = (world) => {
  world.settings = { ...world.settings, sheetPerJob: !world.settings.sheetPerJob };
};

const reopen: Edit = (world) => {
  world.desk = world.desk.reopened();
};

/** Typing where a person is asked to type. */
const asked = [typeSomewhere, typeSomewhere, typeSomewhere, clearSomewhere, typeSpares, answer];
const others = [
  sortRows,
  insertRow,
  copyRow,
  deleteRow,
  deleteSheet,
  renameSheet,
  loseName,
  renameJob,
  changeOpening,
  changeSpares,
  changeLayout,
  reopen,
];

/** One edit by chance. */
export function edit(world: World, chance: Chance): void {
  if (chance(3) > 0) {
    pick(asked, chance)?.(world, chance);
    return;
  }
  const other = pick(others, chance);
  if (other !== reopen) world.isTidy = false;
  other?.(world, chance);
}
