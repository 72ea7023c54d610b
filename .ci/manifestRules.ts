/** What a schema cannot say about the manifest of an add-in with a shared runtime. */
import { readXml, type XmlNode } from "./manifestXml";

/** What the manifest has to agree with. */
export type Around = {
  /** A file that is served, by its path behind the address; `null` where there is none. */
  readonly read: (name: string) => Uint8Array | null;
  /** Whether the files are the built ones, so that every address has to be one of them. */
  readonly isBuilt: boolean;
  /** The namespace of the worksheet functions, and their ids. */
  readonly namespace: string;
  readonly functionIds: readonly string[];
  /** The ribbon's commands that the code answers to. */
  readonly commands: readonly string[];
};

/** Everything that is wrong, each in one line. */
export function manifestFaults(xml: string, around: Around): string[] {
  const root = readXml(xml);
  const faults: string[] = [];
  const expect = (holds: boolean, fault: string): void => {
    if (!holds) faults.push(fault);
  };
  checkHead(root, expect);
  const resources = checkResources(root, expect);
  checkRuntime(root, expect);
  checkFunctions(root, resources, around, expect);
  checkCommands(root, around, expect);
  checkFiles(root, resources, around, expect);
  return faults;
}

type Expect = (holds: boolean, fault: string) => void;
type Resources = ReadonlyMap<string, { readonly kind: string; readonly value: string }>;

const all = (node: XmlNode, name: string): readonly XmlNode[] => [
  ...(node.name === name ? [node] : []),
  ...node.children.flatMap((child) => all(child, name)),
];
const everyNode = (node: XmlNode): readonly XmlNode[] => [
  node,
  ...node.children.flatMap(everyNode),
];
const first = (node: XmlNode, name: string): XmlNode | undefined => all(node, name)[0];
const attribute = (node: XmlNode | undefined, name: string): string => node?.attributes[name] ?? "";

function checkHead(root: XmlNode, expect: Expect): void {
  const id = first(root, "Id")?.text ?? "";
  expect(
    /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i.test(id),
    `the id “${id}” is not a GUID`,
  );
  const version = first(root, "Version")?.text ?? "";
  expect(
    /^[1-9]\d{0,4}(\.\d{1,5}){3}$/.test(version),
    `the version “${version}” is not four numbers from 1.0.0.0 on`,
  );
  const lengths = [
    ["DisplayName", 125],
    ["Description", 250],
  ] as const;
  for (const [name, most] of lengths) {
    const value = attribute(first(root, name), "DefaultValue");
    expect(value !== "" && value.length <= most, `${name} has to have 1 to ${most} characters`);
  }
  expect((first(root, "ProviderName")?.text ?? "") !== "", "there is no ProviderName");
  const sets = new Set(all(root, "Set").map((set) => attribute(set, "Name")));
  for (const set of ["SharedRuntime", "ExcelApi", "CustomFunctionsRuntime"]) {
    expect(sets.has(set), `${set} is not among the requirements`);
  }
}

/** Longest text of each kind, and what an address must start with. */
const longest: Readonly<Record<string, number>> = { ShortStrings: 125, LongStrings: 250 };

function checkResources(root: XmlNode, expect: Expect): Resources {
  const resources = new Map<string, { kind: string; value: string }>();
  for (const group of first(root, "Resources")?.children ?? []) {
    for (const resource of group.children) {
      const id = attribute(resource, "id");
      expect(!resources.has(id), `there are two resources “${id}”`);
      expect(id.length <= 32, `the id “${id}” has more than 32 characters`);
      resources.set(id, { kind: group.name, value: attribute(resource, "DefaultValue") });
    }
  }
  const used = new Set(
    everyNode(root).flatMap((node) =>
      "resid" in node.attributes ? [attribute(node, "resid")] : [],
    ),
  );
  for (const id of used) expect(resources.has(id), `nothing is called “${id}”`);
  for (const [id, { kind, value }] of resources) {
    expect(used.has(id), `“${id}” is never used`);
    const most = longest[kind];
    if (most === undefined) {
      expect(/^https:\/\/[^/]+\/./.test(value), `“${id}” is no https address: ${value}`);
    } else {
      expect(value.length <= most, `“${id}” has more than ${most} characters`);
    }
  }
  // Microsoft's validator asks for a page of support, and so do places that publish add-ins.
  const addresses = ["IconUrl", "HighResolutionIconUrl", "SupportUrl"].map((name) =>
    attribute(first(root, name), "DefaultValue"),
  );
  const domains = all(root, "AppDomain").map(({ text }) => text);
  for (const address of [...addresses, ...domains]) {
    expect(address.startsWith("https://"), `“${address}” is no https address`);
  }
  return resources;
}

/** Pane, commands and functions run in one page, which lives as long as the workbook is open. */
function checkRuntime(root: XmlNode, expect: Expect): void {
  const host = all(root, "Host").find((node) => node.children.length > 0);
  expect(host?.children[0]?.name === "Runtimes", "Runtimes has to come first in its Host");
  const runtime = first(root, "Runtime");
  const page = attribute(runtime, "resid");
  expect(attribute(runtime, "lifetime") === "long", "the runtime has to have a long lifetime");
  const pageOf = (node: XmlNode): string => attribute(first(node, "SourceLocation"), "resid");
  for (const each of all(root, "Page")) {
    expect(pageOf(each) === page, `the functions' page is ${pageOf(each)} and not ${page}`);
  }
  for (const file of all(root, "FunctionFile")) {
    const resid = attribute(file, "resid");
    expect(resid === page, `FunctionFile is ${resid} and not ${page}`);
  }
  const shows = all(root, "Action").filter(
    (action) => attribute(action, "xsi:type") === "ShowTaskpane",
  );
  for (const action of shows) {
    expect(pageOf(action) === page, `a button shows ${pageOf(action)} and not ${page}`);
  }
  checkPaneIds(shows, expect);
}

/**
 * A shared runtime has one pane, and Microsoft's page on configuring it says that a pane without an
 * id counts as a different one. The id of opening with the document is not for a shared runtime.
 */
function checkPaneIds(shows: readonly XmlNode[], expect: Expect): void {
  const ids = shows.map((action) => all(action, "TaskpaneId")[0]?.text ?? "");
  expect(!ids.includes(""), "a button shows a pane without a TaskpaneId");
  expect(new Set(ids).size < 2, `buttons show different panes: ${ids.join(", ")}`);
  expect(!ids.some((id) => id.startsWith("Office.")), "a TaskpaneId is one of Office's own");
}

function checkFunctions(
  root: XmlNode,
  resources: Resources,
  { namespace, functionIds }: Around,
  expect: Expect,
): void {
  const told = resources.get(attribute(first(root, "Namespace"), "resid"))?.value ?? "";
  expect(told === namespace, `the namespace is “${told}”, and the functions say “${namespace}”`);
  expect(/^[A-Z][A-Z0-9._]{0,31}$/.test(told), `“${told}” can't be a namespace`);
  expect(functionIds.length > 0, "there are no worksheet functions");
  for (const id of functionIds) {
    const isWord = /^[A-Za-z][A-Za-z0-9_.]{2,254}$/.test(id);
    const couldBeCell = /^[A-Za-z]{1,3}\d+$/.test(id);
    expect(isWord && !couldBeCell, `“${id}” can't be the id of a function`);
  }
  const lower = functionIds.map((id) => id.toLowerCase());
  expect(new Set(lower).size === lower.length, "two functions have one id");
}

function checkCommands(root: XmlNode, { commands }: Around, expect: Expect): void {
  const named = all(root, "FunctionName").map(({ text }) => text);
  for (const name of named) expect(commands.includes(name), `no code answers to “${name}”`);
  for (const name of commands) expect(named.includes(name), `no button calls “${name}”`);
  const ids = [...all(root, "Group"), ...all(root, "Control")].map((node) => attribute(node, "id"));
  expect(new Set(ids).size === ids.length, "two groups or controls have one id");
}

/** Every address is a file that is served; icons have the size that they are named for. */
function checkFiles(
  root: XmlNode,
  resources: Resources,
  { read, isBuilt }: Around,
  expect: Expect,
): void {
  const base = new URL(
    ".",
    attribute(first(root, "SourceLocation"), "DefaultValue") || "https://x/",
  );
  const fileOf = (address: string): string | null =>
    address.startsWith(base.href) ? address.slice(base.href.length).replace(/[?#].*$/, "") : null;
  const icons = all(root, "Icon").flatMap((icon) => {
    const images = icon.children.map((image) => ({
      size: Number(attribute(image, "size")),
      address: resources.get(attribute(image, "resid"))?.value ?? "",
    }));
    for (const size of [16, 32, 80]) {
      expect(
        images.some((image) => image.size === size),
        `an icon lacks the size ${size}`,
      );
    }
    return images;
  });
  const own = [
    { size: 32, address: attribute(first(root, "IconUrl"), "DefaultValue") },
    { size: 64, address: attribute(first(root, "HighResolutionIconUrl"), "DefaultValue") },
  ];
  const seen = new Set<string>();
  for (const { size, address } of [...icons, ...own]) {
    const name = fileOf(address);
    if (seen.has(`${size} ${address}`)) continue;
    seen.add(`${size} ${address}`);
    expect(name !== null, `${address} is not below ${base.href}`);
    const file = name === null ? null : read(name);
    const found = file === null ? null : pngSize(file);
    expect(found !== null, `${address} is no PNG that is served`);
    if (found === null) continue;
    expect(
      found.width === size && found.height === size,
      `${address} has ${found.width} by ${found.height} pixels and not ${size}`,
    );
  }
  for (const [id, { kind, value }] of resources) {
    if (kind !== "Urls") continue;
    const name = fileOf(value);
    expect(name !== null, `“${id}” is not below ${base.href}`);
    const isServed = name !== null && (!isBuilt || read(name) !== null);
    expect(isServed, `“${id}” is no file that is served`);
  }
}

/** The size in a PNG's header (ISO/IEC 15948), or `null` for anything else. */
function pngSize(file: Uint8Array): { readonly width: number; readonly height: number } | null {
  const start = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (file.length < 24 || start.some((byte, index) => file[index] !== byte)) return null;
  const view = new DataView(file.buffer, file.byteOffset);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}
