/**
 * Fails the build when a page needs more at first load than it may, or needs what belongs to
 * another page. Sizes are gzipped, as a web server sends them.
 */
import { gzipSync } from "node:zlib";
import { chunkModules } from "./chunkModules.js";

export class FirstLoadBudget {
  /**
   * @param {Record<string, { most: number, then: string[] }>} pages By name of the entry: how many
   *   bytes at most, and which named chunks the page asks for before a person sees anything.
   * @param {RegExp} forbidden Modules that no page may load at first.
   * @param {boolean} enforced Without it sizes are only told.
   */
  constructor(pages, forbidden, enforced) {
    this.pages = pages;
    this.forbidden = forbidden;
    this.enforced = enforced;
  }

  apply(compiler) {
    const { Compilation, WebpackError } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("FirstLoadBudget", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "FirstLoadBudget", stage }, () => {
        const faults = Object.entries(this.pages).flatMap(([name, page]) =>
          this.measure(compilation, name, page),
        );
        if (!this.enforced) return;
        compilation.errors.push(...faults.map((fault) => new WebpackError(fault)));
      });
    });
  }

  /** What is wrong with the entry `name`; its size is told in any case. */
  measure(compilation, name, { most, then }) {
    const groups = [name, ...then].flatMap((each) => compilation.namedChunkGroups.get(each) ?? []);
    if (!compilation.entrypoints.has(name)) return [`There is no entry ${name} to measure.`];
    const files = new Set(groups.flatMap((group) => group.getFiles()));
    const size = [...files]
      .filter((file) => /\.(js|css)$/.test(file))
      .reduce((sum, file) => sum + zippedSize(compilation, file), 0);
    const modules = chunkModules(compilation, new Set(groups.flatMap((group) => group.chunks)));
    const told = `${name}: ${kilobytes(size)} at first load, of ${kilobytes(most)} allowed`;
    compilation.getLogger("FirstLoadBudget").info(told);
    const stray = modules.find((module) => this.forbidden.test(module.nameForCondition?.() ?? ""));
    return [
      ...(size > most ? [`${told}. The largest: ${largest(compilation, modules)}`] : []),
      ...(stray ? [`${name} must not load ${stray.nameForCondition()} at first.`] : []),
    ];
  }
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

const zippedSize = (compilation, file) =>
  gzipSync(compilation.getAsset(file)?.source.buffer() ?? "").length;

const largest = (compilation, modules) =>
  modules
    .sort((one, other) => other.size() - one.size())
    .slice(0, 8)
    .map((module) => `${module.readableIdentifier(compilation.requestShortener)} ${module.size()}`)
    .join("; ");
