/**
 * The rooms of src/ and who may import whom. An arrow may skip floors and never points up.
 * Type-only imports count too.
 */
const floors = [
  "base",
  "(lengths|money|measures)",
  "(formulas|fasteners)",
  "(kitbook|openings)",
  "takeoff",
  "corrections",
  "(bags|elevation)",
  "purchasing",
  "pricing",
  "bookcheck",
  "estimate",
  "revisions",
];

/** No room of the core imports a room of a floor above its own. */
const coreRules = floors.slice(0, -1).map((floor, index) => ({
  name: `core-floor-${index}`,
  comment: "A room of the core imports only rooms below it.",
  severity: "error",
  from: { path: `^src/core/${floor}/` },
  to: {
    path: `^src/core/(${floors
      .slice(index + 1)
      .map((room) => room.replace(/[()]/g, ""))
      .join("|")})/`,
  },
}));

const never = (name, comment, from, to) => ({
  name,
  comment,
  severity: "error",
  from: { path: from },
  to: { path: to },
});

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...coreRules,
    never("core-is-pure", "The core knows no host.", "^src/core/", "^src/(?!core/)"),
    never("core-needs-no-package", "The core stands on its own.", "^src/core/", "node_modules"),
    never(
      "port-needs-base-only",
      "The port is types over core/base.",
      "^src/workbook/",
      "^src/(?!workbook/|core/base/)",
    ),
    never(
      "sheets-are-pure",
      "A drawing is made from the core.",
      "^src/sheets/",
      "^src/(?!sheets/|core/|workbook/)|node_modules",
    ),
    never(
      "tables-are-pure",
      "One codec for every host.",
      "^src/tables/",
      "^src/(?!tables/|core/|workbook/)|node_modules",
    ),
    never(
      "adapters-know-the-port",
      "An adapter knows the port and what cells hold.",
      "^src/adapters/",
      "^src/(?!adapters/|workbook/|core/base/|core/purchasing/)",
    ),
    {
      name: "adapters-stay-apart",
      comment: "An adapter never imports another adapter.",
      severity: "error",
      from: { path: "^src/adapters/([^/]+)/" },
      to: { path: "^src/adapters/", pathNot: "^src/adapters/$1/" },
    },
    never(
      "app-is-hostless",
      "Use cases speak to the port.",
      "^src/app/",
      "^src/(adapters|pane|functions|main)/",
    ),
    never(
      "functions-use-the-app",
      "Worksheet functions know no host.",
      "^src/functions/",
      "^src/(adapters|pane|main)/",
    ),
    never(
      "pane-uses-the-app",
      "The pane knows no host.",
      "^src/pane/",
      "^src/(adapters|functions|main)/",
    ),
    never("main-is-the-top", "Nobody imports an entry.", "^src/(?!main/)", "^src/main/"),
    never("source-never-imports-tests", "Tests look at the source.", "^src/", "^tests/"),
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "no-orphans",
      severity: "error",
      from: { orphan: true, path: "^src/", pathNot: "\\.d\\.ts$" },
      to: {},
    },
    { name: "no-unresolved", severity: "error", from: {}, to: { couldNotResolve: true } },
    {
      name: "no-dev-package-in-source",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/main/(commandLine|excelSetUp)/" },
      to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"] },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "browser", "default"],
    },
  },
};
