/** The manifest's own rules: the manifest that is there keeps them, and each that is broken is told. */
import { execFile } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { describe, expect, test } from "@jest/globals";
import { manifestFaults, type Around } from "../../.ci/manifestRules";
import { schemaFaults } from "../../.ci/manifestSchema";
import { readXml } from "../../.ci/manifestXml";
import { functionMetadata } from "../../src/functions/metadata";

const root = path.join(__dirname, "../..");
const manifest = readFileSync(path.join(root, "manifest.xml"), "utf8");
const schemas = process.env["MANIFEST_XSD"] ?? path.join(root, "../shared/manifest-xsd");

const around: Around = {
  read: (name) => {
    const file = path.join(root, name);
    return existsSync(file) ? readFileSync(file) : null;
  },
  isBuilt: false,
  namespace: "CRIB",
  functionIds: functionMetadata().functions.map(({ id }) => id),
  commands: ["takeOffActiveSheet"],
};

test("the manifest keeps every rule", () => {
  expect(manifestFaults(manifest, around)).toEqual([]);
});

const breaks: [what: string, from: string | RegExp, to: string, fault: RegExp][] = [
  ["an id that is no GUID", /<Id>.*<\/Id>/, "<Id>cribsheet</Id>", /not a GUID/],
  ["a version of three numbers", "1.0.0.0", "1.0.0", /not four numbers/],
  ["a description that is too long", /hardware, cost/, "x".repeat(250), /1 to 250/],
  ["a requirement left out", /<Set Name="SharedRuntime"[^>]*>/, "", /SharedRuntime/],
  ["an id that leads nowhere", 'resid="TakeOff.Tip"', 'resid="TakeOff.Tipp"', /nothing is called/],
  ["a resource that nobody uses", 'resid="TakeOff.Tip"', 'resid="OpenPane.Tip"', /never used/],
  ["a long short string", '"Take off this sheet"', `"${"x".repeat(126)}"`, /more than 125/],
  [
    "an address without a lock",
    /https:(\/\/localhost:3000\/functions.json)/,
    "http:$1",
    /no https/,
  ],
  [
    "another page for the functions",
    /(<Page>\s*<SourceLocation resid=")Pane.Url/,
    "$1Functions.Script.Url",
    /functions' page/,
  ],
  [
    "another page for the commands",
    '<FunctionFile resid="Pane.Url"',
    '<FunctionFile resid="GetStarted.Url"',
    /FunctionFile is/,
  ],
  [
    "another page for the pane",
    /(<\/TaskpaneId>\s*<SourceLocation resid=")Pane.Url/,
    "$1GetStarted.Url",
    /a button shows/,
  ],
  ["no page of support", /<SupportUrl[^>]*>/, "", /“” is no https/],
  ["a short-lived runtime", 'lifetime="long"', 'lifetime="short"', /long lifetime/],
  ["a pane without an id", "<TaskpaneId>CribsheetPane</TaskpaneId>", "", /without a TaskpaneId/],
  [
    "a second pane",
    /(<Action xsi:type="ShowTaskpane">[^]*?)(CribsheetPane)([^]*?<\/Action>)/,
    "$1$2$3$1Other$3",
    /different panes/,
  ],
  [
    "a pane that opens with the document",
    "CribsheetPane",
    "Office.AutoShowTaskpaneWithDocument",
    /one of Office's own/,
  ],
  ["another namespace", '"CRIB"', '"CRIBS"', /the functions say/],
  ["a command that nobody answers to", ">takeOffActiveSheet<", ">takeOffAll<", /no code answers/],
  ["two controls of one id", 'id="Cribsheet.TakeOff"', 'id="Cribsheet.OpenPane"', /have one id/],
  ["an icon of another size", "assets/icon-16.png", "assets/icon-20.png", /20 by 20/],
  ["an icon that is not there", "assets/icon-80.png", "assets/icon-99.png", /no PNG/],
  [
    "an icon without a size that it needs",
    /<bt:Image size="32" resid="Icon.32"\/>/,
    "",
    /lacks the size 32/,
  ],
  [
    "an address on another server",
    "localhost:3000/functions.json",
    "example.com/functions.json",
    /is not below/,
  ],
];
test.each(breaks)("tells of %s", (_, from, to, fault) => {
  const broken = manifest.replace(from, to);
  expect(broken).not.toBe(manifest);
  expect(manifestFaults(broken, around).join("\n")).toMatch(fault);
});

test.each(["A1", "AB", "has space", "1st"])("tells of a function called %s", (id) => {
  const faults = manifestFaults(manifest, { ...around, functionIds: ["COUNT", id] });
  expect(faults).toEqual([`“${id}” can't be the id of a function`]);
});

test("tells of built files that are missing", () => {
  const faults = manifestFaults(manifest, { ...around, isBuilt: true });
  expect(faults).toContain("“Pane.Url” is no file that is served");
});

const whereSchemas = existsSync(schemas) ? describe : describe.skip;
whereSchemas("by schema", () => {
  test("the manifest is good", async () => {
    expect(await schemaFaults(manifest, schemas)).toEqual([]);
  });

  test.each([
    ["an element in the wrong place", "<AllFormFactors>", "<AllFormFactors><Group/>"],
    ["a permission that does not exist", "ReadWriteDocument", "ReadWriteWorkbook"],
    ["a missing host", /<Hosts>\s*<Host Name="Workbook"\/>\s*<\/Hosts>/, "<Hosts/>"],
  ])("%s is bad", async (_, from, to) => {
    expect(await schemaFaults(manifest.replace(from, to), schemas)).not.toEqual([]);
  });
});

/** What the build makes of manifest.xml. It runs as the build does: in Node, as it is. */
async function hosted(options: object): Promise<string> {
  const script = `
    import { readFileSync } from "node:fs";
    const { hostedManifest } = await import("./build/manifest.js");
    const manifest = readFileSync("manifest.xml", "utf8");
    process.stdout.write(await hostedManifest(manifest, ${JSON.stringify(options)}));`;
  const given = ["--input-type=module", "--eval", script];
  const { stdout } = await promisify(execFile)(process.execPath, given, { cwd: root });
  return stdout;
}

describe("the manifest for another server", () => {
  test("without an address stays as it is", async () => {
    expect(await hosted({})).toBe(manifest);
  });

  test.each(["https://intranet.example/cribsheet", "https://intranet.example/cribsheet/"])(
    "for %s names that server and no other",
    async (url) => {
      const placed = await hosted({ url });
      expect(placed).not.toContain("localhost");
      expect(placed).toContain('"https://intranet.example/cribsheet/taskpane.html"');
      expect(placed).toContain("<AppDomain>https://intranet.example</AppDomain>");
      expect(manifestFaults(placed, around)).toEqual([]);
    },
  );

  test("with an id has that id, and is still good", async () => {
    const id = "0b6f2c2e-5c7d-4a8e-9f10-2a3b4c5d6e7f";
    const placed = await hosted({ id });
    expect(readXml(placed).children[0]).toMatchObject({ name: "Id", text: id });
    expect(manifestFaults(placed, around)).toEqual([]);
  });

  test.each([
    [{ url: "http://intranet.example/" }, /https addresses only/],
    [{ id: "mine" }, /is a GUID/],
  ])("refuses %j", async (given, words) => {
    await expect(hosted(given)).rejects.toThrow(words);
  });
});
