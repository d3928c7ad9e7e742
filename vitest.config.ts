import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        // The grid’s packages import this one as a module; Node would find its CommonJS file instead.
        resolve: { alias: { "opentype.js": "opentype.js/dist/opentype.mjs" } },
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**"],
          sequence: { groupOrder: 0 },
          server: { deps: { inline: [/@univerjs\//] } },
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/setup.ts"],
          testTimeout: 120_000,
          hookTimeout: 240_000,
          fileParallelism: false,
          // Alone, after the unit tests: the browser needs the processor.
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
