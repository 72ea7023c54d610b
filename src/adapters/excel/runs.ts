/** Groups cells that are alike into rectangles, so that one request of Excel's sets many at once. */
import { cellName } from "../../core/base/cell";
import type { Area } from "./bands";

/**
 * The rectangles of each key, in the order in which keys first come. Cells side by side and below
 * each other with equal keys are one rectangle where they form one; `null` is no cell.
 */
export function runsByKey<Key>(
  rows: readonly (readonly (Key | null)[])[],
): ReadonlyMap<Key, readonly Area[]> {
  const found = new Map<Key, Area[]>();
  /** Rectangles that end in the row above, by their columns: whose they are and which. */
  let open = new Map<string, { readonly key: Key; readonly index: number }>();
  for (const [row, cells] of rows.entries()) {
    const next: typeof open = new Map();
    for (const { key, column, columns } of segments(cells)) {
      const areas = found.get(key) ?? [];
      found.set(key, areas);
      const place = `${column},${columns}`;
      const above = open.get(place);
      const area = above?.key === key ? areas[above.index] : undefined;
      if (above !== undefined && area !== undefined) {
        areas[above.index] = { ...area, rows: area.rows + 1 };
        next.set(place, above);
      } else {
        next.set(place, { key, index: areas.push({ row, column, rows: 1, columns }) - 1 });
      }
    }
    open = next;
  }
  return found;
}

function* segments<Key>(
  cells: readonly (Key | null)[],
): Generator<{ readonly key: Key; readonly column: number; readonly columns: number }> {
  let start = 0;
  while (start < cells.length) {
    const key = cells[start] ?? null;
    let end = start + 1;
    while (end < cells.length && cells[end] === key) end++;
    if (key !== null) yield { key, column: start, columns: end - start };
    start = end;
  }
}

/** `B2:D9`; a single cell is `B2`. */
export function addressOf({ row, column, rows, columns }: Area): string {
  const first = cellName({ row, column });
  if (rows === 1 && columns === 1) return first;
  return `${first}:${cellName({ row: row + rows - 1, column: column + columns - 1 })}`;
}

/** Excel takes lists of addresses up to 8,192 characters. */
const longestList = 8000;

/** The addresses of all areas, in as few lists as Excel takes. */
export function addressLists(areas: readonly Area[]): readonly string[] {
  const lists: string[] = [];
  let list = "";
  for (const address of areas.map(addressOf)) {
    if (list !== "" && list.length + address.length + 1 > longestList) {
      lists.push(list);
      list = "";
    }
    list = list === "" ? address : `${list},${address}`;
  }
  return list === "" ? lists : [...lists, list];
}
