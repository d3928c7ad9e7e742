import js from "@eslint/js";
import { createTypeScriptImportResolver } from "eslint-import-resolver-typescript";
import importX from "eslint-plugin-import-x";
import officeAddins from "eslint-plugin-office-addins";
import reactHooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";

const engine = ["measures", "chart", "fit", "grading", "similarity", "checking", "publish"];

/** What each folder may import from, beside itself. The arrows of DEVELOPERS.md, "Direction of dependencies". */
const mayImport = {
  "addin/measures": [],
  "addin/chart": ["addin/measures"],
  "addin/fit": ["addin/measures", "addin/chart"],
  "addin/grading": ["addin/measures", "addin/chart"],
  "addin/similarity": ["addin/measures", "addin/chart", "addin/checking"],
  "addin/checking": ["addin/measures", "addin/chart"],
  "addin/publish": ["addin/measures", "addin/chart", "addin/fit", "addin/similarity", "addin/checking"],
  "addin/workbook": ["addin/measures", "addin/chart"],
  "addin/demo": ["addin/measures", "addin/chart", "addin/workbook"],
  functions: engine.map((folder) => `addin/${folder}`),
  taskpane: [...engine.map((folder) => `addin/${folder}`), "addin/workbook", "addin/demo", "functions"],
};

const folders = [...Object.keys(mayImport), "addin/standalone", "manifest", "tests"];

const zones = Object.entries(mayImport).flatMap(([target, allowed]) =>
  folders
    .filter((from) => from !== target && !allowed.includes(from))
    .map((from) => ({
      target: `./${target}`,
      from: `./${from}`,
      message: `${target} may import only from itself${allowed.length ? ` and ${allowed.join(", ")}` : ""}.`,
    })),
);

const hostPackages = ["react", "react-dom", "@fluentui/*", "@univerjs/*", "@microsoft/*", "idb", "hucre"];
const hostGlobals = [
  "window",
  "document",
  "navigator",
  "localStorage",
  "indexedDB",
  "fetch",
  "Office",
  "Excel",
  "CustomFunctions",
];

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "coverage/", ".cache/"] },
  js.configs.recommended,
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  {
    plugins: { "import-x": importX },
    settings: { "import-x/resolver-next": [createTypeScriptImportResolver({ project: "tsconfig.json" })] },
    rules: {
      "import-x/no-restricted-paths": ["error", { zones }],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-non-null-assertion": "off",
      eqeqeq: ["error", "always"],
      "no-restricted-syntax": [
        "error",
        {
          selector: "Program > VariableDeclaration[kind='let']",
          message: "No mutable state at module level.",
        },
      ],
    },
  },
  {
    files: engine.map((folder) => `addin/${folder}/**`).concat("functions/*.ts"),
    ignores: ["functions/excel.ts"],
    rules: {
      "no-restricted-imports": ["error", { patterns: hostPackages }],
      "no-restricted-globals": ["error", ...hostGlobals],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "Pass a seed." },
        { object: "Date", property: "now", message: "The engine has no clock." },
      ],
    },
  },
  {
    files: ["taskpane/**"],
    rules: {
      "no-restricted-imports": ["error", { patterns: ["@univerjs/*", "hucre"] }],
      "no-restricted-globals": ["error", "Excel"],
    },
  },
  {
    files: ["**/*.tsx", "taskpane/**"],
    plugins: { "react-hooks": reactHooks },
    rules: reactHooks.configs.recommended.rules,
  },
  {
    files: ["addin/workbook/excel/**", "functions/excel.ts"],
    plugins: { "office-addins": officeAddins },
    rules: officeAddins.configs.recommended.rules ?? {},
  },
  {
    files: ["**/*.mjs", "*.js"],
    languageOptions: {
      globals: {
        process: "readonly",
        console: "readonly",
        URL: "readonly",
        setTimeout: "readonly",
        fetch: "readonly",
      },
    },
  },
);
