/** @type {import("jest").Config} */
const swc = [
  "@swc/jest",
  {
    jsc: {
      parser: { syntax: "typescript", tsx: true },
      transform: { react: { runtime: "automatic" } },
      target: "es2022",
    },
    module: { type: "commonjs" },
    sourceMaps: "inline",
  },
];
/** Packages that publish ES modules only, and so are compiled for the tests. */
const esModulePackages = [
  "strip-bom",
  "uuid",
  "hucre",
  "@ironcalc",
  // What the embedded grid stands on.
  "lodash-es",
  "nanoid",
  "numfmt",
  "rbush",
  "quickselect",
  "kdbush",
  "franc-min",
  "trigram-utils",
  "n-gram",
  "collapse-white-space",
  "cjk-regex",
  "regexp-util",
  "unicode-regex",
];
module.exports = {
  testEnvironment: "node",
  roots: ["<rootDir>/tests"],
  testMatch: ["**/*.test.ts", "**/*.test.tsx"],
  transform: { "^.+\\.tsx?$": swc, "/node_modules/.+\\.m?js$": swc },
  transformIgnorePatterns: [`/node_modules/(?!(.*/)?(${esModulePackages.join("|")})/)`],
  testTimeout: 30000,
};
