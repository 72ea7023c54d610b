/** Builds a page of one file under a budget, and prints what the build finds wrong, as JSON. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import webpack from "webpack";
import { FirstLoadBudget } from "../../build/firstLoadBudget.js";

const [most, forbidden, enforced] = process.argv.slice(2);
const folder = mkdtempSync(path.join(tmpdir(), "budget-"));
const write = (name, text) => writeFileSync(path.join(folder, name), text);

write(
  "page.js",
  `import "./first.js"; import(/* webpackChunkName: "soon" */ "./soon.js"); import("./late.js");`,
);
write("first.js", `globalThis.first = "first";`);
write("soon.js", `globalThis.soon = ${JSON.stringify(noise(1))};`);
write("late.js", `globalThis.late = ${JSON.stringify(noise(2))};`);

/** Text that hardly packs, the same at each call. */
function noise(seed) {
  let state = seed;
  const next = () => (state = (state * 48271) % 0x7fffffff);
  return Array.from({ length: 6000 }, () => String.fromCharCode(33 + (next() % 90))).join("");
}

webpack(
  {
    mode: "production",
    context: folder,
    entry: { page: "./page.js" },
    output: { path: path.join(folder, "built") },
    performance: { hints: false },
    plugins: [
      new FirstLoadBudget(
        { page: { most: Number(most), then: ["soon"] } },
        new RegExp(forbidden),
        enforced === "enforced",
      ),
    ],
  },
  (fault, stats) => {
    rmSync(folder, { recursive: true, force: true });
    if (fault) throw fault;
    console.log(
      JSON.stringify(stats.toJson({ all: false, errors: true }).errors.map((each) => each.message)),
    );
  },
);
