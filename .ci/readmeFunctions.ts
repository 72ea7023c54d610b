/**
 * Keeps the table of worksheet functions in README.md the one that the typed table makes.
 *
 *     npx tsx .ci/readmeFunctions.ts          fails where they differ
 *     npx tsx .ci/readmeFunctions.ts --write  writes it
 */
import { readFileSync, writeFileSync } from "node:fs";
import { functionsMarkdown } from "../src/functions/metadata";

const path = "README.md";
const start = "<!-- functions -->\n";
const end = "<!-- /functions -->";
const text = readFileSync(path, "utf8");
const from = text.indexOf(start) + start.length;
const wanted = `${text.slice(0, from)}${functionsMarkdown()}\n${text.slice(text.indexOf(end))}`;

if (process.argv.includes("--write")) {
  writeFileSync(path, wanted);
} else if (text !== wanted) {
  console.error("README.md: the functions are not those of src/functions; run with --write.");
  process.exitCode = 1;
}
