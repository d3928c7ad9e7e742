import { describe, expect, it } from "vitest";
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

describe("a chart of which too little is left without what stands out", () => {
  it("says nothing of proportions that are not known", () => {
    const chart = [
      ["Figure", "Height", "Elbow girth (right)", "Bust girth (in)", "Height (left)", "Waist (in)"],
      ["Linnet", 230, 169, 9.291338582677167, 199, null],
      ["Dunnock", 193, 152, 6.8700787401574805, 165, null],
      ["Teal", 151, 126, 6, null, 3.3267716535433074],
      ["Siskin", null, 251, 11.240157480314961, 285, 7],
      ["Wren", null, 286, 13.818897637795276, 352, 9],
      ["Rook", 281, null, 10.137795275590552, 206, 6.397637795275591],
    ];
    const result = flagsFunction.compute([chart]);
    expect(JSON.stringify(result)).not.toMatch(/NaN|null/);
  });
});
