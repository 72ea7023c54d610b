/**
 * How fast a take-off is, as ratios within one run: `npm run bench`. Nothing here is a test.
 *
 * The peers count the same sliding doors by the same rules: a loop written by hand (no reasons, no
 * findings, no kit book), a general rules engine from npm (json-rules-engine), and a general
 * spreadsheet engine from npm (@ironcalc/wasm) with the kit book's formulas in its cells. The slow
 * peers count fewer openings; all figures are per opening.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { initSync, Model } from "@ironcalc/wasm";
import { Engine } from "json-rules-engine";
import { compileKitBook } from "../../src/core/kitbook/compileKitBook";
import { openingTypeNamed, type KitBook, type OpeningType } from "../../src/core/kitbook/kitBook";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { numberStyle, writeLength } from "../../src/core/lengths/writeLength";
import type { Opening } from "../../src/core/openings/opening";
import { pieces } from "../../src/core/base/units";
import { takeOff } from "../../src/core/takeoff/takeOff";

const { book } = compileKitBook(starterKitBook, []);
const slidingDoor = openingTypeNamed(book, "sliding door");
if (slidingDoor === undefined) throw new Error("The starter has no sliding door.");

type Door = {
  readonly width: number;
  readonly height: number;
  readonly post_height: number;
  readonly tail_post: boolean;
  readonly tail_run: number;
  readonly floor: string;
};

const widths = [48, 60, 66, 72, 78, 96, 120, 168];
const posts = [
  [84, 84],
  [84, 96],
  [96, 96],
  [96, 120],
  [120, 144],
] as const;

const doors = (count: number): readonly Door[] =>
  Array.from({ length: count }, (_, index) => {
    const [height, post_height] = posts[index % posts.length] ?? [84, 84];
    const width = widths[index % widths.length] ?? 48;
    return {
      width,
      height,
      post_height,
      tail_post: index % 3 > 0,
      tail_run: 2 * width,
      floor: "concrete",
    };
  });

const openingsOf = (given: readonly Door[]): readonly Opening[] =>
  given.map((door, index) => ({
    place: { sheet: "Bench", row: index + 1, column: 0 },
    job: "Bench",
    mark: `B-${index}`,
    quantity: pieces(1),
    type: "Sliding door",
    fields: { ...door, job: "Bench", mark: `B-${index}`, quantity: 1, type: "Sliding door" },
    places: {},
  }));

/** What a person would write for this one type of door, if rules never changed. */
function countByHand(given: readonly Door[]): Map<string, number> {
  const lines = new Map<string, number>();
  const add = (item: string, quantity: number): void => {
    lines.set(item, (lines.get(item) ?? 0) + quantity);
  };
  for (const { width, height, post_height, tail_post, floor } of given) {
    const panels = width <= 60 ? 1 : 2;
    const hangers = tail_post ? 3 : 2;
    const sets = panels === 1 ? 0 : height <= 96 ? 3 : 4;
    const track = 2 * width;
    const sections = width <= 72 ? 1 : width > 96 ? 2 : Math.ceil(track / 192);
    add(`JAMB (${height})`, 1);
    add("CB 1/4 x 1-1/4", 2);
    add("HN 1/4", 2);
    add("STRIKE", 1);
    add("CB 1/4 x 1/2", 2);
    add("LW 1/4", 2);
    add("HN 1/4", 2);
    add(`PLATE ${post_height / 12}-${height / 12}`, hangers);
    add("HB 1/4 x 3/4", 2 * hangers);
    add("FW 1/4", 2 * hangers);
    add("LW 1/4", 2 * hangers);
    add("HN 1/4", 2 * hangers);
    add("CLAMP TRACK", hangers);
    add("CB 5/16 x 1", hangers);
    add("HN 5/16", hangers);
    add(`TRACK (${track / sections})`, sections);
    add(`PANEL (${width / panels} x ${height})`, panels);
    if (panels > 1) {
      add("CLAMP PANEL", 2 * sets);
      add("CB 1/4 x 1-1/4", 2 * sets);
      add("FN 1/4", 2 * sets);
      add(`SPLICE (${width})`, 1);
      add("CB 1/4 x 1-1/4", panels);
      add("FW 1/4", panels);
      add("HN 1/4", panels);
      add(`ANGLE (${width})`, 1);
      add("CB 1/4 x 1-1/4", 4);
      add("HN 1/4", 4);
    }
    add(`STILE (${height})`, 1);
    add("HB 1/4 x 1-3/4", 3);
    add("HN 1/4", 3);
    add("SPACER", 4);
    add("TROLLEY", 2);
    add("HN 1/2", 2);
    add("CB 1/2 x 1-1/4", 1);
    add("FW 1/2", 1);
    add("HN 1/2", 1);
    add("GUIDE (12)", 1);
    add("BRACKET", 2);
    add("CB 5/16 x 1", 2);
    add("FN 5/16", 2);
    if (floor === "concrete") add("FA 1/4", 2);
  }
  return lines;
}

const show = (length: Parameters<typeof writeLength>[0]): string =>
  writeLength(length, numberStyle);

/** The book without its limits: it counts, and has nothing to say about an opening. */
const withoutLimits: KitBook = {
  ...book,
  types: book.types.map((type) => ({ ...type, limits: [] })),
};

function countByBook(openings: readonly Opening[], by = book): Map<string, number> {
  const [job] = takeOff(by, openings, show).jobs;
  return new Map(
    (job?.lines ?? []).map(({ item, size, quantity }) => [
      size.length === 0 ? item : `${item} (${size.join(" x ")})`,
      quantity,
    ]),
  );
}

/** The same counts as rules of a general rules engine: one rule per condition, facts as needed. */
async function countByRules(given: readonly Door[]): Promise<number> {
  const engine = new Engine();
  engine.addFact("panels", async (_, almanac) =>
    (await almanac.factValue<number>("width")) <= 60 ? 1 : 2,
  );
  engine.addFact("hangers", async (_, almanac) =>
    (await almanac.factValue<boolean>("tail_post")) ? 3 : 2,
  );
  engine.addFact("sets", async (_, almanac) =>
    (await almanac.factValue<number>("panels")) === 1
      ? 0
      : (await almanac.factValue<number>("height")) <= 96
        ? 3
        : 4,
  );
  engine.addFact("track", async (_, almanac) => 2 * (await almanac.factValue<number>("width")));
  engine.addFact("sections", async (_, almanac) => {
    const width = await almanac.factValue<number>("width");
    if (width <= 72) return 1;
    return width > 96 ? 2 : Math.ceil((await almanac.factValue<number>("track")) / 192);
  });
  for (const [index, { quantity, when }] of (slidingDoor?.parts ?? []).entries()) {
    // Each part is a rule: whether it is needed, and how many, as the kit book's row asks it.
    engine.addFact(`quantity-${index}`, async (_, almanac) => {
      const [name] = ["hangers", "sets", "panels", "sections"].filter((each) =>
        quantity.text.includes(each),
      );
      return name === undefined ? 2 : 2 * (await almanac.factValue<number>(name));
    });
    engine.addRule({
      conditions: {
        all: [
          { fact: "width", operator: "greaterThanInclusive", value: 24 },
          ...(when === null ? [] : [{ fact: "panels", operator: "greaterThan", value: 1 }]),
          { fact: `quantity-${index}`, operator: "greaterThan", value: 0 },
        ],
      },
      event: { type: `part-${index}` },
    });
  }
  let events = 0;
  for (const door of given) events += (await engine.run(door)).events.length;
  return events;
}

/** The kit book's own formulas in the cells of a spreadsheet engine, one row per opening. */
function countBySpreadsheet(given: readonly Door[], type: OpeningType): number {
  const model = new Model("bench", "en", "UTC", "en");
  const column = (index: number): string =>
    index < 26
      ? String.fromCharCode(65 + index)
      : column(Math.floor(index / 26) - 1) + column(index % 26);
  const inputs = ["width", "height", "post_height", "tail_post", "tail_run", "floor"] as const;
  const place = new Map<string, string>(inputs.map((name, index) => [name, column(index)]));
  const sizes = type.sizes.filter((size) => !/CHART|floor_anchor/.test(size.formula.text));
  sizes.forEach((size, index) => place.set(size.name, column(inputs.length + index)));
  const parts = type.parts.flatMap(({ quantity, when }) =>
    when === null
      ? [quantity.text]
      : when.text.includes("floor_anchor")
        ? [quantity.text]
        : [`IF(${when.text}, ${quantity.text}, 0)`],
  );
  const translated = (text: string, row: number): string =>
    `=${text
      .replace(/^=/, "")
      .replace(/(\d+)'/g, (_, feet: string) => String(Number(feet) * 12))
      .replace(/(\d+)"(?!")/g, "$1")
      .replace(/\b[a-z_]+\b(?!\()/g, (name) =>
        place.has(name) ? `${place.get(name) ?? ""}${row}` : name,
      )}`;
  model.pauseEvaluation();
  given.forEach((door, index) => {
    const row = index + 1;
    inputs.forEach((name, at) =>
      model.setUserInput(0, row, at + 1, String(door[name]).toUpperCase()),
    );
    sizes.forEach((size, at) =>
      model.setUserInput(0, row, inputs.length + at + 1, translated(size.formula.text, row)),
    );
    parts.forEach((text, at) =>
      model.setUserInput(0, row, inputs.length + sizes.length + at + 1, translated(text, row)),
    );
  });
  model.resumeEvaluation();
  model.evaluate();
  const last = model.getFormattedCellValue(
    0,
    given.length,
    inputs.length + sizes.length + parts.length,
  );
  model.free();
  return Number(last);
}

/** CPU time of this process, so that other programs on the machine do not count. */
async function cpu(run: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

async function best(times: number, run: () => unknown): Promise<number> {
  let least = Infinity;
  for (let time = 0; time < times; time += 1) least = Math.min(least, await cpu(run));
  return least;
}

const sorted = (lines: ReadonlyMap<string, number>): string =>
  JSON.stringify([...lines].sort(([a], [b]) => (a < b ? -1 : 1)));

const many = 10_000;
const given = doors(many);
const openings = openingsOf(given);
if (sorted(countByHand(given)) !== sorted(countByBook(openings))) {
  throw new Error("The loop written by hand and the kit book do not count the same.");
}
const byHand = await best(9, () => countByHand(given));
const byBook = await best(9, () => countByBook(openings));
const byBookSilent = await best(9, () => countByBook(openings, withoutLimits));

const few = 400;
initSync({
  module: readFileSync(createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm")),
});
const byRules = (await best(2, () => countByRules(doors(few)))) / few;
const bySpreadsheet = (await best(2, () => countBySpreadsheet(doors(few), slidingDoor))) / few;
const perOpening = byBook / many;

const figure = (value: number): string => value.toFixed(value < 10 ? 2 : 0);
console.log(
  `Take-off of ${many} openings, ${slidingDoor.parts.length} parts each; CPU time, best of several`,
);
console.log(`  by a loop by hand        ${figure(byHand)} ms`);
console.log(
  `  by the kit book, silent  ${figure(byBookSilent)} ms with every reason: ${figure(byBookSilent / byHand)} times the loop (aim: at most 5)`,
);
console.log(
  `  by the kit book          ${figure(byBook)} ms with every reason and finding: ${figure(byBook / byHand)} times the loop, which finds nothing`,
);
console.log(
  `  by json-rules-engine     ${figure(byRules / perOpening)} times as long as the kit book (aim: at least 100)`,
);
console.log(
  `  by a spreadsheet engine  ${figure(bySpreadsheet / perOpening)} times as long as the kit book (aim: at least 100)`,
);

console.log("Cost against size (linear is a ratio near 1)");
for (const count of [1_000, 10_000, 100_000]) {
  const sized = openingsOf(doors(count));
  const time = await best(count > 50_000 ? 2 : 5, () => countByBook(sized));
  console.log(
    `  ${String(count).padStart(7)} openings: ${figure(time)} ms, ${figure(time / count / perOpening)} of the cost per opening at ${many}`,
  );
}
