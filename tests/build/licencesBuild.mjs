/** Builds a page out of small packages, and prints its file of licences and what the build finds wrong. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import webpack from "webpack";
import { licencesFile, ThirdPartyLicences } from "../../build/thirdPartyLicences.js";

const folder = mkdtempSync(path.join(tmpdir(), "licences-"));
const write = (name, text) => {
  mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
  writeFileSync(path.join(folder, name), text);
};
const files = JSON.parse(process.argv[2]);
for (const [name, text] of Object.entries(files)) write(name, text);

webpack(
  {
    mode: "production",
    context: folder,
    entry: { page: "./page.js" },
    output: { path: path.join(folder, "built") },
    performance: { hints: false },
    plugins: [new ThirdPartyLicences()],
  },
  (fault, stats) => {
    if (fault) throw fault;
    const { errors } = stats.toJson({ all: false, errors: true });
    const text =
      errors.length > 0 ? "" : readFileSync(path.join(folder, "built", licencesFile), "utf8");
    rmSync(folder, { recursive: true, force: true });
    console.log(JSON.stringify({ text, errors: errors.map(({ message }) => message) }));
  },
);
