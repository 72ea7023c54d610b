/**
 * Writes `third-party-licences.txt`: each package whose code is in what is built, found from the
 * modules themselves, with its licence in full. The bundles carry no comments of their own.
 */
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { chunkModules } from "./chunkModules.js";
import { apache, standardLicences } from "./standardLicences.js";

export const licencesFile = "third-party-licences.txt";

/** Packages that name no licence in package.json; their file was read by a person. */
const readByHand = {
  "@univerjs/telemetry": apache,
};

/** Emits the file with each build, and fails the build where a package has no licence to tell. */
export class ThirdPartyLicences {
  apply(compiler) {
    const { Compilation, WebpackError, sources } = compiler.webpack;
    compiler.hooks.thisCompilation.tap("ThirdPartyLicences", (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "ThirdPartyLicences", stage }, () => {
        const { text, faults } = licencesText(shippedFolders(compilation));
        compilation.errors.push(...faults.map((fault) => new WebpackError(fault)));
        compilation.emitAsset(licencesFile, new sources.RawSource(text));
      });
    });
  }
}

/** The folders of the packages that have a module in some chunk; the bundler's own run-time part too. */
function shippedFolders(compilation) {
  const folders = new Set();
  for (const module of chunkModules(compilation, compilation.chunks)) {
    const folder = packageFolder(module.nameForCondition?.() ?? "");
    if (folder !== null) folders.add(folder);
  }
  const webpack = createRequire(import.meta.url).resolve("webpack/package.json");
  return [...folders, path.dirname(webpack)];
}

/** The package that a file belongs to: the innermost one. */
function packageFolder(file) {
  const [, folder] = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(file) ?? [];
  return folder ?? null;
}

/** The text of the file, and what keeps it from being whole. */
export function licencesText(folders) {
  const packages = folders.map(packageAt).sort((one, other) => order(one.title, other.title));
  const apacheText = packages.find(({ licence, text }) => licence === apache && text !== "")?.text;
  const faults = [];
  const parts = packages.map(({ title, licence, holder, text }) => {
    const standard = licence === apache ? apacheText : standardLicences[licence]?.(holder);
    const told = text === "" ? standard : text;
    if (told === undefined) faults.push(`${title} (${licence}) carries no licence to tell.`);
    return `${title}\nLicence: ${licence}\n\n${told ?? ""}`;
  });
  const line = `\n\n${"-".repeat(80)}\n\n`;
  return { text: `${[heading, ...parts].join(line)}\n`, faults };
}

const heading =
  "Cribsheet is built on these packages, each under its own licence. Cribsheet's own is MIT.";

function packageAt(folder) {
  const { name, version, license, licenses, author } = JSON.parse(
    readFileSync(path.join(folder, "package.json"), "utf8"),
  );
  const named = license?.type ?? license ?? licenses?.map(({ type }) => type).join(" OR ");
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|copying|notice)([.-]|$)/i.test(file))
    .sort(order)
    .map((file) => readFileSync(path.join(folder, file), "utf8").replaceAll("\r\n", "\n").trim());
  return {
    title: `${name} ${version}`,
    licence: named ?? readByHand[name] ?? "none named",
    holder: author?.name ?? author ?? `the authors of ${name}`,
    text: texts.filter((text) => text !== "").join("\n\n"),
  };
}

const order = (one, other) => (one < other ? -1 : one > other ? 1 : 0);
