/** What a person did to the sheet of stock movements: rows added, changed, taken out. */
import { cellText, isBlank, readDate, type Block, type TypedCell } from "../../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { isPieces } from "../../core/base/units";
import type { LengthUnit } from "../../core/lengths/length";
import { numberOf, readSize, textOf } from "../../core/purchasing/offers/offerCells";
import {
  addMovements,
  countChange,
  movementKinds,
  type MovementKind,
  type StockMovement,
} from "../../core/purchasing/books/stockMovements";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import { readMovementRows, type MovementColumn } from "../../tables/movementTable";
import type { CarriedCell } from "../../workbook/drawing";
import type { BookRecord } from "./orderBookRecord";

export const handMovementFindings = {
  "movement-headings-gone": {
    level: "stop",
    says: "The headings of {found} are gone, so rows that were added to it cannot be read.",
    todo: "Put them back, or delete the sheet if nothing was added to it: it is written anew.",
  },
  "movement-row-changed": {
    level: "warn",
    says: "Stock movement {row} says {found} where {was} was written ({column}).",
    todo: "Rows are never changed: what was written stands. Mend a mistake with a new row.",
  },
  "movement-row-gone": {
    level: "warn",
    says: "Stock movements {found} were taken off the sheet.",
    todo: "They stand on record and are written again. Mend a mistake with a new row.",
  },
  "movement-row-unreadable": {
    level: "stop",
    says: "A row that was added to the stock movements cannot be read: {found}.",
    todo: "Mend the row or clear it; until then nothing is written to the order book.",
  },
} as const satisfies FindingTable;

export type ReadMovements = {
  /** The rows on record with those that were added. */
  readonly changed: readonly StockMovement[];
  readonly carried: readonly CarriedCell[];
  readonly findings: readonly Finding[];
};

type Row = Readonly<Partial<Record<MovementColumn, TypedCell>>>;
type Rules = { readonly unit: LengthUnit; readonly today: number };

/** `today` is the day of added rows that name none. */
export function readMovements(
  block: Block,
  { books }: BookRecord,
  sizeText: SizeText,
  rules: Rules,
): ReadMovements {
  const rows = readMovementRows(block);
  if (rows === null) {
    const place = { sheet: block.sheet, row: 0, column: 0 };
    const details = { place, found: block.sheet };
    const gone = makeFinding(handMovementFindings, "movement-headings-gone", details);
    return { changed: books.movements, carried: [], findings: [gone] };
  }
  const known = new Map(books.movements.map((movement) => [movement.number, movement]));
  const seen = new Set<number>();
  const findings: Finding[] = [];
  const carried: CarriedCell[] = [];
  let changed = books.movements;
  for (const row of rows) {
    const movement = known.get(numberOf(row.number) ?? NaN);
    if (movement !== undefined && !seen.has(movement.number)) {
      seen.add(movement.number);
      findings.push(...changesOf(row, movement, sizeText));
      continue;
    }
    const added =
      movement === undefined
        ? withRow(changed, row, rules)
        : err(`row ${movement.number} is there twice; clear its number if the second is new`);
    if (added.ok) {
      changed = added.value;
      carried.push(...cellsOf(row));
    } else {
      const place = row.item?.place ?? null;
      const details = { place, found: added.error };
      findings.push(makeFinding(handMovementFindings, "movement-row-unreadable", details));
    }
  }
  const gone = books.movements.flatMap(({ number }) => (seen.has(number) ? [] : [number]));
  if (gone.length > 0) {
    const details = { found: gone.join(", ") };
    findings.push(makeFinding(handMovementFindings, "movement-row-gone", details));
  }
  return { changed, carried, findings };
}

const cellsOf = (row: Row): readonly CarriedCell[] =>
  Object.values(row).flatMap(({ value, place }) =>
    place === null || isBlank(value) ? [] : [{ row: place.row, column: place.column, value }],
  );

const columnWords: Readonly<Record<MovementColumn, string>> = {
  number: "Row",
  day: "Day",
  item: "Item",
  size: "Size",
  kind: "What",
  change: "Change",
  balance: "On hand after",
  job: "Job",
  order: "Order",
  who: "Who",
  note: "Note",
};

function changesOf(row: Row, movement: StockMovement, sizeText: SizeText): readonly Finding[] {
  const written: Readonly<Record<Exclude<MovementColumn, "number">, string>> = {
    day: String(movement.day),
    item: movement.item,
    size: sizeText(movement),
    kind: movement.kind,
    change: String(movement.change),
    balance: String(movement.balance),
    job: movement.job ?? "",
    order: movement.order ?? "",
    who: movement.who,
    note: movement.note,
  };
  return (Object.keys(written) as (keyof typeof written)[]).flatMap((column) => {
    const cell = row[column];
    const was = written[column].trim();
    const found = column === "day" ? String(dayOf(cell) ?? textOf(cell)) : textOf(cell);
    if (found === was) return [];
    const values = { row: movement.number, was: was || "nothing", column: columnWords[column] };
    const details = { place: cell?.place ?? null, found: textOf(cell) || "nothing", values };
    return [makeFinding(handMovementFindings, "movement-row-changed", details)];
  });
}

const dayOf = (cell: TypedCell | undefined): number | null => {
  const value = cell?.value ?? null;
  return typeof value === "number" ? value : readDate(value);
};

/** Kinds of what leaves the shelf. */
const leaving: readonly MovementKind[] = ["used", "taken"];

/** Error: why the row cannot be one. */
function withRow(
  rows: readonly StockMovement[],
  row: Row,
  { unit, today }: Rules,
): Result<readonly StockMovement[], string> {
  const item = textOf(row.item);
  if (item === "") return err("it names no item");
  const size = readSize(row.size, unit, () => undefined);
  if (size === null) return err(`${textOf(row.size)} is no size`);
  const isDated = row.day !== undefined && !isBlank(row.day.value);
  const day = isDated ? dayOf(row.day) : today;
  if (day === null || !(day >= 0)) return err(`${textOf(row.day)} is no date`);
  const word = textOf(row.kind).toLowerCase();
  const kind = word === "" ? "counted" : movementKinds.find((each) => each === word);
  if (kind === undefined) return err(`“${cellText(row.kind?.value ?? null)}” is none of its words`);
  const change = numberOf(row.change);
  const balance = numberOf(row.balance);
  const by = { day: Math.floor(day), who: textOf(row.who), note: textOf(row.note) };
  const about = { job: textOf(row.job) || null, order: textOf(row.order) || null };
  if (change === null) {
    if (balance === null) return err("it says neither what changed nor what was counted");
    if (!isPieces(balance)) return err(`${textOf(row.balance)} is no number of pieces`);
    return ok(
      addMovements(rows, [{ ...countChange(rows, { item, size }, balance, by), ...about }]),
    );
  }
  if (!Number.isSafeInteger(change) || change === 0) {
    return err(`${textOf(row.change)} is no number of pieces that came or went`);
  }
  const signed = leaving.includes(kind) ? -Math.abs(change) : change;
  const added = addMovements(rows, [{ item, size, kind, change: signed, ...about, ...by }]);
  const after = added.at(-1)?.balance;
  return balance === null || balance === after
    ? ok(added)
    : err(`${textOf(row.balance)} on hand after it is not what the rows come to (${after ?? 0})`);
}
