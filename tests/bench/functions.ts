/**
 * How fast worksheet functions answer, as ratios within one run: `npm run bench`. Nothing here is a
 * test. 10,000 calls as a sheet of 1,000 openings makes them, ten about each; the peers are the same
 * calls with nothing kept between them, and 10,000 cells of a plain formula that counts one item for
 * the same openings, in a general spreadsheet engine from npm (@ironcalc/wasm).
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { initSync, Model } from "@ironcalc/wasm";
import { memoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { readInputs } from "../../src/app/reading/inputs";
import { openingCounter, type OpeningCounter } from "../../src/app/openings/oneOpening";
import { defaultSettings } from "../../src/app/settings";
import { functionTable } from "../../src/functions/functionTable";
import type { FunctionAnswer, FunctionInput } from "../../src/functions/worksheetFunction";
import { blankSheet, workbookOf } from "../../src/workbook/blankSheet";

const openings = 1_000;
const items = [
  "HN 1/4",
  "CB 1/4 x 1-1/4",
  "FW 1/4",
  "LW 1/4",
  "TROLLEY",
  "STRIKE",
  "STILE",
  "SPACER",
];
/** Those about items, then two that take the opening alone. */
const calls = openings * (items.length + 2);

type Door = { readonly width: number; readonly height: number; readonly tailPost: boolean };

/** Each of another width, so that no two are alike. */
const doors: readonly Door[] = Array.from({ length: openings }, (_, index) => ({
  width: 36 + index / 16,
  height: 84,
  tailPost: index % 3 > 0,
}));

/** What a workbook without a kit book of its own is counted by: the starter's. */
const inputs = await readInputs(
  memoryWorkbook(workbookOf("", [blankSheet("Sheet1")])),
  defaultSettings,
);

function freshCounter(): OpeningCounter {
  if (!inputs.ok) throw new Error(inputs.error.message);
  return openingCounter(inputs.value, defaultSettings);
}

function ask(
  counter: OpeningCounter,
  name: string,
  given: readonly FunctionInput[],
): FunctionAnswer {
  const row = functionTable.find((each) => each.name === name);
  if (row === undefined) throw new Error(`No function ${name}.`);
  const answer = row.run(
    row.arguments.map((_, index) => given[index] ?? null),
    counter,
  );
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.value;
}

/** Asks all of it; returns the sum of the nuts, to compare. */
function askAll(counter: OpeningCounter): number {
  let nuts = 0;
  for (const { width, height, tailPost } of doors) {
    const door = ["sliding door", width, height, height, tailPost, "concrete"];
    for (const item of items) {
      const answer = ask(counter, "COUNT", [item, ...door]);
      if (item === "HN 1/4") nuts += Number(answer);
    }
    ask(counter, "COST", door);
    ask(counter, "WEIGHT", door);
  }
  return nuts;
}

/** A counter that remembers no opening: each one differs in a field that no rule reads. */
function forgetful(): OpeningCounter {
  const counter = freshCounter();
  let asked = 0;
  return {
    ...counter,
    count: ({ fields, others }) =>
      counter.count({ fields, others: { ...others, asked: (asked += 1) } }),
  };
}

/** The same nuts by a formula that a person would write, in ten cells for each opening. */
function askSpreadsheet(): number {
  const model = new Model("bench", "en", "UTC", "en");
  const columns = calls / openings;
  model.pauseEvaluation();
  doors.forEach(({ width, height, tailPost }, index) => {
    const row = index + 1;
    [width, height, tailPost].forEach((value, at) =>
      model.setUserInput(0, row, at + 1, String(value).toUpperCase()),
    );
    for (let at = 0; at < columns; at += 1) {
      model.setUserInput(0, row, 4 + at, `=IF(A${row}<=60,7,13)+2*IF(C${row},3,2)`);
    }
  });
  model.resumeEvaluation();
  model.evaluate();
  let nuts = 0;
  for (let row = 1; row <= openings; row += 1) {
    nuts += Number(model.getFormattedCellValue(0, row, 4));
  }
  model.free();
  return nuts;
}

/** CPU time in milliseconds of this process, the least of several runs. */
function best(times: number, run: () => unknown): number {
  let least = Infinity;
  for (let time = 0; time < times; time += 1) {
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

initSync({
  module: readFileSync(createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm")),
});
const [byFunctions, bySpreadsheet] = [askAll(freshCounter()), askSpreadsheet()];
if (byFunctions !== bySpreadsheet) {
  throw new Error(`Not the same nuts: ${byFunctions} by functions, ${bySpreadsheet} by formulas.`);
}
const kept = best(5, () => askAll(freshCounter()));
const again = freshCounter();
askAll(again);
const repeated = best(5, () => askAll(again));
const forgotten = best(3, () => askAll(forgetful()));
const formulas = best(3, askSpreadsheet);

const figure = (value: number): string => value.toFixed(value < 10 ? 2 : 0);
console.log(
  `Worksheet functions: ${calls} calls about ${openings} openings; CPU time, best of several`,
);
console.log(
  `  answers kept by opening   ${figure(kept)} ms the first time, ${figure(repeated)} ms again`,
);
console.log(`  nothing kept              ${figure(forgotten / kept)} times as long`);
console.log(
  `  a plain formula in each cell of a spreadsheet engine: ${figure(formulas / kept)} times as long`,
);
