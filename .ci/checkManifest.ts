/**
 * Checks manifest.xml without the network: against Microsoft's published schemas where a folder with
 * them is beside the project (or where MANIFEST_XSD points), and by rules of our own always.
 *
 *   tsx .ci/checkManifest.ts                  manifest.xml, with the files of this project
 *   tsx .ci/checkManifest.ts dist/manifest.xml dist
 */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { functionMetadata } from "../src/functions/metadata";
import { namespace } from "../src/functions/worksheetFunction";
import { manifestFaults } from "./manifestRules";
import { schemaFaults } from "./manifestSchema";

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), "..");
const [file = path.join(root, "manifest.xml"), served = root] = process.argv.slice(2);
const schemas = process.env["MANIFEST_XSD"] ?? path.join(root, "../shared/manifest-xsd");

const xml = readFileSync(file, "utf8");
const faults = manifestFaults(xml, {
  read: (name) => {
    const at = path.join(served, name);
    return existsSync(at) ? readFileSync(at) : null;
  },
  isBuilt: served !== root,
  namespace,
  functionIds: functionMetadata().functions.map(({ id }) => id),
  commands: commandsIn(readFileSync(path.join(root, "src/main/excel/ribbon.ts"), "utf8")),
});
const hasSchemas = existsSync(schemas);
if (hasSchemas) faults.push(...(await schemaFaults(xml, schemas)));

for (const fault of faults) console.error(`manifest: ${fault}`);
console.log(
  faults.length > 0
    ? `manifest: ${faults.length} faults`
    : `manifest: all holds${hasSchemas ? ", by schema too" : " (no schemas here: checked by our own rules only)"}`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

/** The ids that the ribbon's code answers to. */
function commandsIn(source: string): readonly string[] {
  return Array.from(source.matchAll(/actions\.associate\("([^"]+)"/g), ([, id = ""]) => id);
}
