/** The gate on newer members of the Excel API: what it catches, and what it lets pass. */
import path from "node:path";
import { beforeAll, describe, expect, test } from "@jest/globals";
import ts from "typescript";
import { apiFaults, apiUses } from "../../.ci/apiUses";

const floor = new Map([["ExcelApi", "1.9"]]);

/** Each is the body of a function that gets `sheet` and `context`. */
const bad: readonly [what: string, body: string, member: string][] = [
  ["a call", `sheet.getRange("A1").getSpillingToRangeOrNullObject();`, "getSpillingToRange"],
  ["a property", `return sheet.notes;`, "Worksheet.notes"],
  ["a name in load", `sheet.getRange("A1").load("values, hasSpill");`, "Range.hasSpill"],
  [
    "a nested name in load",
    `context.workbook.worksheets.load("items/customProperties");`,
    "customProperties",
  ],
  [
    "a list of names in load",
    `sheet.getRange("A1").load(["values", "hasSpill"]);`,
    "Range.hasSpill",
  ],
  ["a property taken apart", `const { notes } = sheet; return notes;`, "Worksheet.notes"],
  [
    "a part of set()",
    `sheet.pivotTables.getItem("P").layout.set({ fillEmptyCells: true });`,
    "fillEmptyCells",
  ],
  [
    "a question for too little",
    `if (has("1.12")) sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "the wrong branch",
    `if (has("1.13")) return; sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "an else",
    `if (has("1.13")) { return; } else { sheet.tables.getItem("T").resize("A1"); }`,
    "Table.resize",
  ],
  [
    "either of two questions",
    `if (has("1.13") || sheet.name === "") sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "an exit that need not happen",
    `if (!has("1.13") && sheet.name === "") return; sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "a question for another set",
    `if (Office.context.requirements.isSetSupported("WordApi", "1.13")) sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "an answer that can change",
    `let can = has("1.13"); can = true; if (can) sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  [
    "a function that asks and then does not care",
    `if (maybe("1.13")) sheet.tables.getItem("T").resize("A1");`,
    "Table.resize",
  ],
  ["load of a name that is not there", `sheet.load("nmae");`, "no member “nmae”"],
  ["load of something unknown", `sheet.load(sheet.id);`, "can't be checked"],
];

const good: readonly [what: string, body: string][] = [
  [
    "members of the floor",
    `sheet.pageLayout.orientation = "Landscape"; sheet.load("name,tables/items/name");`,
  ],
  [
    "a direct question",
    `if (Office.context.requirements.isSetSupported("ExcelApi", "1.13")) sheet.tables.getItem("T").resize("A1");`,
  ],
  ["a question of ours", `if (has("1.13")) sheet.tables.getItem("T").resize("A1");`],
  ["a question without a parameter", `if (canResize()) sheet.tables.getItem("T").resize("A1");`],
  ["a later version", `if (has("1.18")) sheet.tables.getItem("T").resize("A1");`],
  [
    "a question and more",
    `if (sheet.name === "" && has("1.13")) { sheet.tables.getItem("T").resize("A1"); }`,
  ],
  ["an early return", `if (!has("1.13")) { return; } sheet.tables.getItem("T").resize("A1");`],
  [
    "an early throw among others",
    `if (sheet.name === "" || !has("1.13")) throw new Error("too old"); for (const x of [1]) { sheet.tables.getItem("T").resize(String(x)); }`,
  ],
  ["an else of a no", `if (!has("1.13")) return; else sheet.tables.getItem("T").resize("A1");`],
  ["a condition", `return has("1.13") ? sheet.tables.getItem("T").resize("A1") : null;`],
  ["and", `return has("1.13") && sheet.tables.getItem("T").resize("A1");`],
  ["or after a no", `return !has("1.13") || sheet.tables.getItem("T").resize("A1");`],
  ["a constant", `const can = has("1.13"); if (can) sheet.tables.getItem("T").resize("A1");`],
  [
    "a function inside",
    `if (has("1.13")) [1].forEach(() => { sheet.tables.getItem("T").resize("A1"); });`,
  ],
  ["other objects' load", `const other = { load: (name: string) => name }; other.load("nmae");`],
];

const head = `
  const has = (version: string): boolean =>
    Office.context.requirements.isSetSupported("ExcelApi", version);
  function canResize(): boolean {
    return Office.context.requirements.isSetSupported("ExcelApi", "1.13");
  }
  const maybe = (version: string): boolean =>
    Office.context.requirements.isSetSupported("ExcelApi", version) || version !== "";
`;

let found: ReadonlyMap<string, readonly string[]>;

/** All samples as one program, since reading the types takes seconds. */
beforeAll(() => {
  const samples = new Map(
    [...bad, ...good].map(([, body], index) => [
      path.resolve(`sample${index}.ts`),
      `export {};${head}\nexport function sample(sheet: Excel.Worksheet, context: Excel.RequestContext): unknown {\n${body}\nreturn [context, has, canResize, maybe];\n}`,
    ]),
  );
  const options: ts.CompilerOptions = {
    types: ["office-js"],
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    target: ts.ScriptTarget.ES2022,
  };
  const host = ts.createCompilerHost(options);
  const program = ts.createProgram([...samples.keys()], options, {
    ...host,
    fileExists: (name) => samples.has(name) || host.fileExists(name),
    getSourceFile: (name, target, ...more) => {
      const text = samples.get(name);
      return text === undefined
        ? host.getSourceFile(name, target, ...more)
        : ts.createSourceFile(name, text, target, true);
    },
  });
  found = new Map(
    Array.from(samples.keys(), (name) => {
      const file = program.getSourceFile(name);
      const files = file === undefined ? [] : [file];
      return [path.basename(name), apiFaults(apiUses(program, files), floor)];
    }),
  );
}, 120_000);

const faultsOf = (index: number): string => (found.get(`sample${index}.ts`) ?? ["none"]).join("\n");

describe("the gate catches", () => {
  test.each(bad.map(([what, , member], index) => ({ what, member, index })))(
    "$what",
    ({ member, index }) => {
      expect(faultsOf(index)).toContain(member);
    },
  );
});

describe("the gate lets pass", () => {
  test.each(good.map(([what], index) => ({ what, index: index + bad.length })))(
    "$what",
    ({ index }) => {
      expect(faultsOf(index)).toBe("");
    },
  );
});
