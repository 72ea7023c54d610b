/** Cells as nobody should type them, for the tests of everything that reads one. */
import type { CellValue } from "../../src/core/base/cell";

const pieces = [
  ...Array.from("0123456789"),
  ...Array.from("0123456789"),
  ...Array.from("'\"-/ .,+()$€%=@\\\t\n"),
  ...Array.from("′″’”–—⁄½⅞¼×٣７\u00A0\u200B\u202E\uFEFF\uD800😀"),
  ...[
    "''",
    " 1/2",
    " ft",
    " in",
    "mm",
    " cm",
    " m",
    "7'-0",
    "84",
    "1,234",
    "x",
    " by ",
    "e5",
    "1e308",
  ],
  ...[
    "USD",
    "$",
    " each",
    "NaN",
    "Infinity",
    "__proto__",
    "constructor",
    "{found}",
    "$&",
    "=1+1",
    "Jul",
  ],
];

const others: readonly CellValue[] = [
  null,
  true,
  false,
  0,
  -0,
  NaN,
  Infinity,
  -Infinity,
  Number.MAX_VALUE,
  Number.MIN_VALUE,
  Number.MAX_SAFE_INTEGER,
  { kind: "error", error: "#DIV/0!" },
  { kind: "date", serial: 46_209 },
  { kind: "date", serial: -1e15 },
  { kind: "date", serial: NaN },
];

/** `count` cells, always the same ones for a seed. */
export function* hostileCells(count: number, seed: number): Generator<CellValue> {
  let state = seed >>> 0;
  // A linear congruential generator (Numerical Recipes' constants): the high bits are random enough.
  const below = (most: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * most);
  };
  for (let made = 0; made < count; made += 1) {
    const kind = below(10);
    if (kind === 0) yield others[below(others.length)] ?? null;
    else if (kind === 1) yield (below(2 ** 31) - 2 ** 30) / 2 ** below(31);
    else {
      let text = "";
      for (let left = below(kind < 6 ? 4 : 14) + 1; left > 0; left -= 1) {
        text += pieces[below(pieces.length)] ?? "";
      }
      yield text;
    }
  }
}
