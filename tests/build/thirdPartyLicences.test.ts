import { execFileSync } from "node:child_process";
import path from "node:path";
import { describe, expect, test } from "@jest/globals";

type Built = { readonly text: string; readonly errors: readonly string[] };

/** Builds `files` (text by path), of which `page.js` is where the build begins. */
function build(files: Readonly<Record<string, string>>): Built {
  const script = path.join(__dirname, "licencesBuild.mjs");
  const told = execFileSync(process.execPath, [script, JSON.stringify(files)], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  });
  return JSON.parse(told) as Built;
}

const aPackage = (name: string, more: object, code = "globalThis.used = 1;") => ({
  [`node_modules/${name}/package.json`]: JSON.stringify({ name, version: "1.2.3", ...more }),
  [`node_modules/${name}/index.js`]: code,
});

describe("the licences of what is built", () => {
  test("names each package whose code is in it, with its licence in full", () => {
    const { text, errors } = build({
      "page.js": `import "outer"; import "@scope/named"; import("late");`,
      ...aPackage("outer", { license: "MIT" }, `import "inner";`),
      "node_modules/outer/LICENSE": "Permission of Outer.",
      "node_modules/outer/node_modules/inner/package.json": JSON.stringify({
        name: "inner",
        version: "4.5.6",
        license: "ISC",
      }),
      "node_modules/outer/node_modules/inner/index.js": "globalThis.inner = 1;",
      "node_modules/outer/node_modules/inner/licence.md": "Permission of Inner.",
      ...aPackage("@scope/named", { license: "BSD-3-Clause" }),
      "node_modules/@scope/named/COPYING": "Permission of Named.",
      "node_modules/@scope/named/NOTICE": "Notice of Named.",
      ...aPackage("late", { license: "MIT" }),
      "node_modules/late/LICENSE.txt": "Permission of Late.",
      ...aPackage("unused", { license: "MIT" }),
      "node_modules/unused/LICENSE": "Permission of Unused.",
    });
    expect(errors).toEqual([]);
    for (const words of [
      "outer 1.2.3\nLicence: MIT\n\nPermission of Outer.",
      "inner 4.5.6\nLicence: ISC\n\nPermission of Inner.",
      "@scope/named 1.2.3\nLicence: BSD-3-Clause\n\nPermission of Named.\n\nNotice of Named.",
      "late 1.2.3\nLicence: MIT\n\nPermission of Late.",
      "webpack 5.",
    ]) {
      expect(text).toContain(words);
    }
    expect(text).not.toContain("unused");
  });

  test("a package that carries no copy gets the standard text, with its author", () => {
    const { text } = build({
      "page.js": `import "bare";`,
      ...aPackage("bare", { license: "MIT", author: { name: "Ada Example" } }),
    });
    expect(text).toMatch(/bare 1\.2\.3\nLicence: MIT\n\nCopyright \(c\) Ada Example\n\nPermission/);
  });

  test.each([
    ["none that is known here", { license: "CPAL-1.0" }],
    ["none at all", {}],
  ])("the build fails on a package with %s", (_, more) => {
    const { errors } = build({ "page.js": `import "odd";`, ...aPackage("odd", more) });
    expect(errors).toEqual([expect.stringMatching(/^odd 1\.2\.3 .* no licence to tell/)]);
  });
});
