import { describe, expect, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readTolerances, toleranceOf } from "../../addin/chart/tolerances.ts";
import { measureById } from "../../addin/measures/dictionary.ts";

const chart = readChart([
  ["Figure", "Bust (in)", "Hip (cm)", "Waist", "Tail"],
  ["Ada", 5, 9, 60, 20],
]);
const headings = ["Measure", "Tolerance"];
const read = (...rows: Cell[][]) => readTolerances([headings, ...rows], chart);

describe("readTolerances", () => {
  it("takes a number in the unit of the measure’s column", () => {
    expect([...read(["Bust", 0.25], ["Hip", 0.2], ["waist girth", 2], ["tail", 3])]).toEqual([
      ["bustGirth", { floorMm: 6.35, percent: 0 }],
      ["hipGirth", { floorMm: 2, percent: 0 }],
      ["waistGirth", { floorMm: 2, percent: 0 }],
      ["tail", { floorMm: 3, percent: 0 }],
    ]);
  });

  it.each([
    ["1/8", { floorMm: 3.175, percent: 0 }],
    ["2 mm", { floorMm: 2, percent: 0 }],
    ["± 2 mm", { floorMm: 2, percent: 0 }],
    ["3%", { floorMm: 0, percent: 3 }],
    ["2,5 %", { floorMm: 0, percent: 2.5 }],
    ["2 mm or 3%", { floorMm: 2, percent: 3 }],
    ["3% or 2 mm", { floorMm: 2, percent: 3 }],
  ])("reads the text %j", (text, tolerance) => {
    expect(read(["Bust", text]).get("bustGirth")).toEqual(tolerance);
  });

  it("takes a unit from its own heading, any order of columns, and leaves garment columns alone", () => {
    const table = readTolerances(
      [
        ["Coat", "Tolerance (mm)", "Measure"],
        [9, 2, "Bust"],
      ],
      chart,
    );
    expect([...table]).toEqual([["bustGirth", { floorMm: 2, percent: 0 }]]);
  });

  it("reads a percent format, and refuses a number that may be a percentage where no format is known", () => {
    const percent = readTolerances([headings, ["Bust", 0.07]], chart, [
      ["", ""],
      ["", "0%"],
    ]);
    expect(percent.get("bustGirth")).toEqual({ floorMm: 0, percent: 7 });
    const length = readTolerances([headings, ["Bust", 0.03]], chart, [
      ["", ""],
      ["", "0.00"],
    ]);
    expect(length.get("bustGirth")?.floorMm).toBeCloseTo(0.762, 9);
    expect(read(["Bust", 0.0625]).get("bustGirth")).toEqual({ floorMm: 1.5875, percent: 0 });
    expect(() => read(["Bust", 0.03])).toThrow("Row 2 of the tolerances, Bust: “0.03” can be 3% or 0.03 in");
    expect(() => read(["Waist", 0.05])).toThrow("Type “5%” or “0.05 mm” as text");
  });

  it("passes over blank rows, blank tolerances and measures that this chart does not have", () => {
    expect([...read(["Bust", undefined], [undefined, undefined], ["Neck", 2], ["Hip", 0.2])]).toEqual([
      ["hipGirth", { floorMm: 2, percent: 0 }],
    ]);
  });

  it.each<[string, Cell[][], string]>([
    ["a zero", [["Bust", 0]], "Row 2 of the tolerances, Bust: “0” is not above 0"],
    ["a zero percent", [["Bust", "0%"]], "“0%” is not above 0"],
    [
      "a negative number",
      [
        ["Hip", 1],
        ["Bust", -1],
      ],
      "Row 3 of the tolerances, Bust: “-1” is not above 0",
    ],
    ["a negative text", [["Bust", "-1 mm"]], "“-1 mm” is neither"],
    ["words", [["Bust", "tight"]], "“tight” is neither a length nor a percentage"],
    ["an error cell", [["Bust", { error: "#REF!" }]], "“#REF!” is an error"],
    ["all of the reading", [["Bust", "100%"]], "“100%” is 100 % or more"],
    ["two lengths", [["Bust", "1 mm or 2 mm"]], "two of a kind"],
    [
      "an unknown measure",
      [["Wiast", 1]],
      "names “Wiast”, which is neither in the chart nor in the dictionary. Did you mean “Waist”",
    ],
    ["a tolerance without a measure", [[undefined, 1]], "has a tolerance but no measure"],
    [
      "a measure twice",
      [
        ["Bust", 1],
        ["Chest", 2],
      ],
      "in row 2 and in row 3",
    ],
  ])("refuses %s", (_, rows, message) => {
    expect(() => read(...rows)).toThrow(message);
  });

  it("names the headings it needs and those it found", () => {
    expect(() =>
      readTolerances(
        [
          ["Part", "Amount"],
          ["Bust", 1],
        ],
        chart,
      ),
    ).toThrow("need the headings Measure and Tolerance in their first row; found “Part”, “Amount”.");
    expect(() => readTolerances([], chart)).toThrow("found none");
  });
});

describe("toleranceOf", () => {
  const [bust, , , tail] = chart.measures;
  if (!bust || !tail) throw new Error("the chart lacks its columns");

  it("comes from the table, else from the dictionary", () => {
    expect(toleranceOf(bust, read(["Bust", "4%"]))).toEqual({ floorMm: 0, percent: 4 });
    expect(toleranceOf(bust, read(["Hip", 1]))).toEqual(measureById("bustGirth")?.tolerance);
    expect(toleranceOf(bust)).toEqual(measureById("bustGirth")?.tolerance);
  });

  it("is not known for an unknown measure that the table does not name", () => {
    expect(toleranceOf(tail)).toBeUndefined();
    expect(toleranceOf(tail, read(["Tail", 2]))).toEqual({ floorMm: 2, percent: 0 });
  });
});
