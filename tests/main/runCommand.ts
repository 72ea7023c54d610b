/** Commands as a person runs them: real processes, real files, exit statuses. */
import { spawnSync, type SpawnSyncReturns } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll } from "@jest/globals";
import { buildSync } from "esbuild";

type Environment = Readonly<Record<string, string>>;

/**
 * Runs a command of `src/main/commandLine`, which is bundled once for a file of tests: it starts in
 * a sixth of the time that compiling it anew each time takes. Its packages are found from `out`, and
 * what it loads late stays apart.
 */
export function commandOf(
  name: string,
): (words: readonly string[], environment?: Environment) => SpawnSyncReturns<string> {
  let folder = "";
  const bundle = (): string => join(folder, `${name}.mjs`);
  beforeAll(() => {
    mkdirSync("out", { recursive: true });
    folder = mkdtempSync(join("out", "commands-"));
    buildSync({
      entryPoints: [join("src", "main", "commandLine", `${name}.ts`)],
      outdir: folder,
      outExtension: { ".js": ".mjs" },
      bundle: true,
      splitting: true,
      format: "esm",
      platform: "node",
      target: "node20",
      packages: "external",
      sourcemap: "inline",
      logLevel: "error",
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return (words, environment = {}) =>
    spawnSync(process.execPath, ["--enable-source-maps", bundle(), ...words], {
      encoding: "utf8",
      env: { ...process.env, ...environment },
    });
}
