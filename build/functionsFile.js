/**
 * Writes `functions.json`, which tells Excel of the worksheet functions, from the typed table in
 * src/functions, so that the two can never differ.
 */
import { buildSync } from "esbuild";

const fileName = "functions.json";

/** The text of the file: the table is bundled and asked, as any other module is. */
export async function functionsJson() {
  const { outputFiles } = buildSync({
    entryPoints: ["src/functions/metadata.ts"],
    bundle: true,
    format: "esm",
    platform: "node",
    write: false,
    logLevel: "silent",
  });
  const code = Buffer.from(outputFiles[0].contents).toString("base64");
  const { functionMetadata } = await import(`data:text/javascript;base64,${code}`);
  return `${JSON.stringify(functionMetadata(), null, 2)}\n`;
}

/** Emits the file with each build. */
export class FunctionsFile {
  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("FunctionsFile", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: "FunctionsFile", stage }, async () => {
        compilation.emitAsset(fileName, new sources.RawSource(await functionsJson()));
      });
    });
  }
}
