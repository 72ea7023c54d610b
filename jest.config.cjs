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
module.exports = {
  testEnvironment: "node",
  roots: ["<rootDir>/tests"],
  testMatch: ["**/*.test.ts", "**/*.test.tsx"],
  transform: { "^.+\\.tsx?$": swc, "/node_modules/.+\\.m?js$": swc },
  // Some packages publish ES modules only.
  transformIgnorePatterns: ["/node_modules/(?!(.*/)?(strip-bom|uuid|hucre|@ironcalc)/)"],
  testTimeout: 30000,
};
