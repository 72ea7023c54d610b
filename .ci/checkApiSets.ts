/**
 * Fails when the code uses a member of the Excel API that is newer than manifest.xml promises and
 * does not ask for it first.
 *
 *   tsx .ci/checkApiSets.ts          tells the faults and the newest member used
 *   tsx .ci/checkApiSets.ts --list   tells every member used
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { later, type Sets } from "./apiGuards";
import { apiFaults, apiUses } from "./apiUses";
import { readXml, type XmlNode } from "./manifestXml";

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), "..");
const floor = promisedSets(readXml(readFileSync(path.join(root, "manifest.xml"), "utf8")));

const configFile = path.join(root, "tsconfig.json");
const { config } = ts.readConfigFile(configFile, (name) => ts.sys.readFile(name)) as {
  config: unknown;
};
const { fileNames, options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
const inSource = (name: string): boolean =>
  !path.relative(path.join(root, "src"), name).startsWith("..");
const program = ts.createProgram(fileNames.filter(inSource), options);
const files = program.getSourceFiles().filter(({ fileName }) => inSource(fileName));

const found = apiUses(program, files);
const faults = apiFaults(found, floor);
const relative = (text: string): string => text.replaceAll(`${root}${path.sep}`, "");
for (const fault of faults) console.error(`Excel API: ${relative(fault)}`);
const [newest] = [...found.uses].sort((one, other) => later(other.version, one.version));
const members = new Map(found.uses.map((use) => [use.member, `${use.set} ${use.version}`]));
if (process.argv.includes("--list")) {
  for (const [member, set] of [...members].sort()) console.log(`${set.padEnd(28)}${member}`);
}
const promised = [...floor].map((set) => set.join(" ")).join(", ");
console.log(
  faults.length > 0
    ? `Excel API: ${faults.length} faults`
    : `Excel API: ${members.size} members used, the newest ${newest?.member ?? "none"} of ${newest?.set ?? ""} ${newest?.version ?? ""}; all within what the manifest promises (${promised}) or asked for first`,
);
process.exitCode = faults.length > 0 || found.uses.length === 0 ? 1 : 0;

/** The sets of the manifest's requirements. */
function promisedSets(manifest: XmlNode): Sets {
  const requirements = manifest.children.find(({ name }) => name === "Requirements");
  const sets = requirements?.children.find(({ name }) => name === "Sets");
  const standard = sets?.attributes["DefaultMinVersion"] ?? "1.1";
  return new Map(
    sets?.children.map(({ attributes }) => [
      attributes["Name"] ?? "",
      attributes["MinVersion"] ?? standard,
    ]),
  );
}
