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
/** @type {import("jest").Config} */
const shared = {
  testEnvironment: "node",
  roots: ["<rootDir>/tests"],
  setupFiles: ["<rootDir>/tests/laws.cjs", "<rootDir>/tests/withoutStyles.cjs"],
  transform: { "^.+\\.tsx?$": swc, "/node_modules/.+\\.m?js$": swc },
  transformIgnorePatterns: [`/node_modules/(?!(.*/)?(${esModulePackages.join("|")})/)`],
};
module.exports = {
  testTimeout: 60000,
  // Every core: the browser's tests wait more than they work.
  maxWorkers: "100%",
  projects: [
    {
      ...shared,
      displayName: "node",
      testMatch: ["**/*.test.ts", "**/*.test.tsx"],
      testPathIgnorePatterns: ["/node_modules/", "/tests/browser/"],
    },
    {
      ...shared,
      displayName: "browser",
      testMatch: ["<rootDir>/tests/browser/**/*.test.ts"],
      globalSetup: "<rootDir>/tests/browser/globalSetup.cjs",
    },
  ],
};
