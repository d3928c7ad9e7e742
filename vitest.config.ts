import { defineConfig } from "vitest/config";

/** What is pure: its tests share one set of modules in each worker, which halves their time. */
const engine = [
  "bench",
  "chart",
  "checking",
  "demo",
  "fit",
  "functions",
  "grading",
  "measures",
  "publish",
  "reference",
  "similarity",
];
const engineTests = engine.map((folder) => `tests/${folder}/**/*.test.ts`);

/** Long, since a test must not fail for the machine being busy: `npm test` lets these give way to the browser’s. */
const times = { testTimeout: 240_000, hookTimeout: 240_000 };

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "engine",
          include: engineTests,
          isolate: false,
          sequence: { groupOrder: 0 },
          ...times,
        },
      },
      {
        // The grid’s packages import this one as a module; Node would find its CommonJS file instead.
        resolve: { alias: { "opentype.js": "opentype.js/dist/opentype.mjs" } },
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**", ...engineTests],
          sequence: { groupOrder: 1 },
          ...times,
          server: { deps: { inline: [/@univerjs\//] } },
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/setup.ts"],
          ...times,
          // While one page waits, another is at work.
          maxWorkers: 2,
          // After the unit tests: the browser needs the processor.
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
