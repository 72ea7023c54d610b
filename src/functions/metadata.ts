/** The functions as Excel's registration file wants them: made from the table, never by hand. */
import { functionTable } from "./functionTable";
import { openingArguments } from "./openingArguments";
import { namespace, type WorksheetFunction } from "./worksheetFunction";

/** The file `functions.json` that the manifest names. Its shape is Excel's own (custom functions metadata). */
export const functionMetadata = () => ({
  functions: functionTable.map((row) => ({
    id: row.name,
    name: row.name,
    description: row.says,
    parameters: row.arguments.map((argument) => ({
      name: argument.name,
      description: argument.says,
      type: "any",
      dimensionality: argument.takes === "cells" ? "matrix" : "scalar",
      ...(argument.optional ? { optional: true } : {}),
    })),
    result: {
      type: "any",
      dimensionality: row.answers === "rows" ? "matrix" : "scalar",
    },
  })),
});

/** `CRIB.COUNT(item, opening…)`: the arguments that tell of an opening are the same for all. */
export function signature(row: WorksheetFunction): string {
  const isOpening = row.arguments
    .slice(-openingArguments.length)
    .every((argument, index) => argument === openingArguments[index]);
  const own = isOpening ? row.arguments.slice(0, -openingArguments.length) : row.arguments;
  const names = own.map(({ name, optional }) => (optional ? `[${name}]` : name));
  return `${namespace}.${row.name}(${[...names, ...(isOpening ? ["opening…"] : [])].join(", ")})`;
}

/** The table of functions for README, in Markdown. */
export const functionsMarkdown = (): string =>
  [
    "| function | answers | example |",
    "|---|---|---|",
    ...functionTable.map(
      (row) =>
        `| \`${signature(row)}\` | ${row.says.replaceAll("|", "\\|")} | \`${row.example.replaceAll("|", "\\|")}\` |`,
    ),
  ].join("\n");
