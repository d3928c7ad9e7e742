import { defineConfig } from "vitest/config";

/** What leaves no trace: these tests share one set of modules in each worker, which saves a third of their time. */
const sharedFolders = [
  "bench",
  "chart",
  "checking",
  "demo",
  "fit",
  "functions",
  "grading",
  "manifest",
  "measures",
  "publish",
  "reference",
  "similarity",
  "taskpane",
  "workbook",
];
/** These put modules of their own in the place of others. */
const alone = ["tests/taskpane/shell/book.test.ts", "tests/taskpane/import/onePass.test.ts"];

/** Long, since a test must not fail for the machine being busy: `npm test` lets these give way to the browser’s. */
const times = { testTimeout: 240_000, hookTimeout: 240_000 };

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "engine",
          include: sharedFolders.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`),
          exclude: alone,
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
          include: [
            "tests/*.test.ts",
            `tests/!(browser|${sharedFolders.join("|")})/**/*.test.{ts,tsx}`,
            ...alone,
          ],
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
          // A page that is slow to show something is waited for: one second, as usual, is short on a busy machine.
          expect: { poll: { timeout: 30_000 } },
          // While one page waits, another is at work.
          maxWorkers: 2,
          // After the unit tests: the browser needs the processor.
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
