/**
 * The licences of every package that can end up in what is served: the dependencies of package.json
 * and all they need. Exit status 1 where one is not on the list of permissive licences, or where the
 * build (in dist, if there is one) tells of a package that is not among them.
 */
import { existsSync, readFileSync } from "node:fs";

/** SPDX names. None of these asks that what uses the package be published. */
const permissive = new Set([
  "0BSD",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC0-1.0",
  "ISC",
  "MIT",
  "MIT-0",
  "Python-2.0",
  "Unlicense",
]);

/** Packages that name no licence in package.json and carry one as a file; read by a person. */
const readByHand: Readonly<Record<string, string>> = {
  // The interface of a service that nothing here provides: it sends nothing.
  "node_modules/@univerjs/telemetry": "Apache-2.0",
};

type LockedPackage = {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
};

const lock = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
  readonly packages: Readonly<Record<string, LockedPackage>>;
};

/** Whether a licence text such as `(MIT OR GPL-2.0)` leaves a permissive choice. */
function isPermissive(licence: string): boolean {
  const choices = licence.replace(/[()]/g, "").split(/ OR /i);
  return choices.some((choice) =>
    choice.split(/ AND /i).every((name) => permissive.has(name.trim())),
  );
}

const shipped = Object.entries(lock.packages).filter(
  ([path, found]) =>
    path !== "" && found.dev !== true && found.devOptional !== true && found.optional !== true,
);
const counts = new Map<string, number>();
const refused: string[] = [];
for (const [path, { license = licenceOnDisk(path), version = "" }] of shipped) {
  counts.set(license, (counts.get(license) ?? 0) + 1);
  if (!isPermissive(license))
    refused.push(`${path.replace(/^.*node_modules\//, "")} ${version}: ${license}`);
}

/** Some packages keep their licence only in their own package.json. */
function licenceOnDisk(path: string): string {
  const known = readByHand[path];
  if (known !== undefined) return known;
  const text = readFileSync(`${path}/package.json`, "utf8");
  const { license, licenses } = JSON.parse(text) as {
    readonly license?: string | { readonly type: string };
    readonly licenses?: readonly { readonly type: string }[];
  };
  if (typeof license === "string") return license;
  return license?.type ?? licenses?.map(({ type }) => type).join(" OR ") ?? "none named";
}

const summary = [...counts]
  .sort(([, a], [, b]) => b - a)
  .map(([name, count]) => `${name} ${count}`);
console.log(`Licences of ${shipped.length} packages that ship: ${summary.join(", ")}`);
for (const line of refused) console.log(`Not permissive: ${line}`);

/** Its own small part runs in what it bundles. */
const bundler = "webpack";
const built = "dist/third-party-licences.txt";
const told = existsSync(built)
  ? [...readFileSync(built, "utf8").matchAll(/^(\S+) (\S+)\nLicence: /gm)]
  : [];
const known = new Set(
  shipped.map(([path, { version }]) => `${path.replace(/^.*node_modules\//, "")} ${version ?? ""}`),
);
const strays = told
  .filter(([, name, version]) => name !== bundler && !known.has(`${name ?? ""} ${version ?? ""}`))
  .map(([, name, version]) => `${name ?? ""} ${version ?? ""}`);
if (told.length === 0) console.log(`No ${built} to check: it comes with the build.`);
else console.log(`${told.length} packages have code in dist, each with its licence in ${built}.`);
for (const line of strays) console.log(`Built in, but no dependency of what ships: ${line}`);
process.exitCode = refused.length + strays.length > 0 ? 1 : 0;
