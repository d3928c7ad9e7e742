import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { progressWords } from "../../../addin/standalone/grid/progressWords.ts";

it("has words for all that the installed grid says while it calculates, since the grid has none", () => {
  const script = readFileSync("node_modules/@univerjs/sheets-formula/lib/es/index.js", "utf8");
  const keys = [...script.matchAll(/"sheets-formula\.progress\.([\w-]+)"/gu)].map(([, key]) => key ?? "");
  expect(keys.length).toBeGreaterThan(3);
  expect([...new Set(keys)].sort()).toEqual(Object.keys(progressWords["sheets-formula"].progress).sort());
});
