/** Checks a manifest against the schemas of add-in manifests, in this process. */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { validateXML } from "xmllint-wasm";

const mainSchema = "OfficeAppManifestV1_1.xsd";

/** What the schemas in `folder` have against the manifest. */
export async function schemaFaults(xml: string, folder: string): Promise<readonly string[]> {
  const schema = (fileName: string): { fileName: string; contents: string } => ({
    fileName,
    contents: readFileSync(path.join(folder, fileName), "utf8"),
  });
  const others = readdirSync(folder).filter((name) => name.endsWith(".xsd") && name !== mainSchema);
  const { errors } = await validateXML({
    xml: [{ fileName: "manifest.xml", contents: xml }],
    schema: [schema(mainSchema)],
    preload: others.map(schema),
  });
  return errors.map(({ message, loc }) => `line ${loc?.lineNumber ?? "?"}: ${message}`);
}
