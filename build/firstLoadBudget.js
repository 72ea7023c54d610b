/**
 * Fails the build when a page needs more at first load than it may, or needs what belongs to
 * another page. Sizes are gzipped, as a web server sends them.
 */
import { gzipSync } from "node:zlib";

export class FirstLoadBudget {
  /**
   * @param {Record<string, number>} budgets Bytes at most, by name of the entry.
   * @param {RegExp} forbidden Modules that no entry may load at first.
   * @param {boolean} enforced Without it sizes are only told.
   */
  constructor(budgets, forbidden, enforced) {
    this.budgets = budgets;
    this.forbidden = forbidden;
    this.enforced = enforced;
  }

  apply(compiler) {
    const { Compilation, WebpackError } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("FirstLoadBudget", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "FirstLoadBudget", stage }, () => {
        const faults = Object.entries(this.budgets).flatMap(([name, budget]) =>
          this.measure(compilation, name, budget),
        );
        if (!this.enforced) return;
        compilation.errors.push(...faults.map((fault) => new WebpackError(fault)));
      });
    });
  }

  /** What is wrong with the entry `name`; its size is told in any case. */
  measure(compilation, name, budget) {
    const entry = compilation.entrypoints.get(name);
    if (entry === undefined) return [`There is no entry ${name} to measure.`];
    const files = entry.getFiles().filter((file) => /\.(js|css)$/.test(file));
    const size = files.reduce((sum, file) => sum + zippedSize(compilation, file), 0);
    const modules = firstModules(compilation, entry);
    const told = `${name}: ${kilobytes(size)} at first load, of ${kilobytes(budget)} allowed`;
    compilation.getLogger("FirstLoadBudget").info(told);
    const stray = modules.find((module) => this.forbidden.test(module.nameForCondition?.() ?? ""));
    return [
      ...(size > budget ? [`${told}. The largest: ${largest(compilation, modules)}`] : []),
      ...(stray ? [`${name} must not load ${stray.nameForCondition()} at first.`] : []),
    ];
  }
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

const zippedSize = (compilation, file) =>
  gzipSync(compilation.getAsset(file)?.source.buffer() ?? "").length;

/** Every module of an entry's first chunks, those joined into one told apart. */
const firstModules = (compilation, entry) =>
  entry.chunks
    .flatMap((chunk) => [...compilation.chunkGraph.getChunkModulesIterable(chunk)])
    .flatMap((module) => module.modules ?? [module]);

const largest = (compilation, modules) =>
  modules
    .sort((one, other) => other.size() - one.size())
    .slice(0, 8)
    .map((module) => `${module.readableIdentifier(compilation.requestShortener)} ${module.size()}`)
    .join("; ");
