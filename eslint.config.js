import js from "@eslint/js";
import globals from "globals";
import hooks from "eslint-plugin-react-hooks";
import a11y from "eslint-plugin-jsx-a11y";
import typescript from "typescript-eslint";

export default typescript.config(
  { ignores: ["dist/", "out/", "node_modules/", "coverage/"] },
  js.configs.recommended,
  {
    files: ["**/*.ts", "**/*.tsx"],
    extends: [typescript.configs.strictTypeChecked, typescript.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      // The code base says `type`, one word for every shape.
      "@typescript-eslint/consistent-type-definitions": ["error", "type"],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: false },
      ],
      "@typescript-eslint/no-confusing-void-expression": ["error", { ignoreArrowShorthand: true }],
      "no-eval": "error",
      "no-new-func": "error",
      "no-console": "error",
      eqeqeq: ["error", "always"],
    },
  },
  {
    files: ["**/*.tsx"],
    plugins: { "react-hooks": hooks, "jsx-a11y": a11y },
    rules: { ...hooks.configs.recommended.rules, ...a11y.flatConfigs.recommended.rules },
  },
  {
    // A command line speaks through the console; so do scripts and benches.
    files: ["src/main/**", ".ci/**", "tests/**"],
    rules: { "no-console": "off" },
  },
  {
    files: ["src/core/**"],
    languageOptions: { globals: {} },
    rules: {
      // The core has no clock, no randomness and no host.
      "no-restricted-globals": [
        "error",
        "window",
        "document",
        "fetch",
        "process",
        "setTimeout",
        "setInterval",
        "console",
        "Date",
        "performance",
        "Office",
        "Excel",
      ],
      "no-restricted-properties": ["error", { object: "Math", property: "random" }],
    },
  },
  {
    files: ["**/*.js", "**/*.cjs", "**/*.mjs"],
    languageOptions: { globals: { ...globals.node } },
  },
);
