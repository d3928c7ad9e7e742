import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { readGarmentTolerances, readTolerances } from "../../addin/chart/tolerances.ts";
import { columnsOfPart } from "../../addin/similarity/columns.ts";

const chart = readChart([
  ["Figure", "Bust", "Waist", "Hip", "Head girth"],
  ["Wren", 135, 100, 140, 160],
  ["Robin", 136, 101, 142, 166],
]);
const cells = [
  ["Measure", "Tolerance", "Loose clothes", "Head", "Boots"],
  ["Bust", 3, 12, "", ""],
  ["Hip", 3, 15, "", ""],
  ["Head girth", 2, "", 9, ""],
  ["Calf", 2, "", "", 4],
];
const given = { tolerances: readTolerances(cells, chart), garments: readGarmentTolerances(cells, chart) };
const read = (part: string, by = given) =>
  columnsOfPart(chart, part, by).map(({ column, tolerance }) => [column.heading, tolerance.floorMm]);

describe("columnsOfPart", () => {
  it("compares a part of the body by the tolerances, or by the usual ones", () => {
    expect(read("torso")).toEqual([
      ["Bust", 3],
      ["Waist", expect.any(Number)],
      ["Hip", 3],
    ]);
    expect(columnsOfPart(chart, "torso").map(({ column }) => column.heading)).toEqual([
      "Bust",
      "Waist",
      "Hip",
    ]);
  });

  it("compares a class of garments by its own column and by nothing else, whatever the case", () => {
    expect(read(" loose CLOTHES")).toEqual([
      ["Bust", 12],
      ["Hip", 15],
    ]);
  });

  it("takes a name that is both for the part of the body", () => {
    expect(read("head")).toEqual([["Head girth", 2]]);
  });

  it("says what can be named when a name is neither", () => {
    expect(() => read("Lose clothes")).toThrow(
      "“Lose clothes” is not known here. Did you mean “Loose clothes”?",
    );
    expect(() => read("capes")).toThrow(
      /Write body, torso, .* all, or a class of the tolerances: “Loose clothes”, “Head” and 1 more\./,
    );
    expect(() => columnsOfPart(chart, "capes")).toThrow(
      /The tolerances have no column for a class of garments/,
    );
  });

  it("says that the chart has none of the measures of a class", () => {
    expect(() => read("Boots")).toThrow(/none of the measures that “Boots” has a tolerance for/);
  });
});
