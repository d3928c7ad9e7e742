import { expect, it } from "vitest";
import type { flagKinds } from "../../addin/checking/checkChart.ts";
import { figureHeadings, demoRows } from "../../addin/demo/figuresTable.ts";
import { flagsFunction } from "../../functions/flags.ts";

const columns = { figure: 0, measure: 1, reading: 2, flag: 3 };
const chart = [figureHeadings, ...demoRows().map((row) => row.map(({ value }) => value))];
const result = flagsFunction.compute([chart]);
const flags = Array.isArray(result) ? result.slice(1) : [];
const ofKind = (kind: (typeof flagKinds)[number]) => flags.find((row) => row[columns.flag] === kind) ?? [];

it("leaves the reading blank where a flag is about a whole row or column", () => {
  expect(ofKind("whole row in a wrong unit")[columns.reading]).toBe("");
  expect(ofKind("whole column in a wrong unit")[columns.reading]).toBe("");
  expect(ofKind("one name, two rows")[columns.reading]).toBe("");
});

it("shows the error of a cell as a text that is no error itself", () => {
  expect(ofKind("error in the cell")[columns.reading]).toBe("“#N/A”");
  for (const row of flags) expect(String(row[columns.reading])).not.toMatch(/^#/);
});

it("shows other readings as they are", () => {
  expect(ofKind("wrong unit")[columns.reading]).toBeTypeOf("number");
});
