import { describe, expect, it } from "vitest";
import { InputError } from "../../addin/measures/inputError.ts";
import { comparedColumns, toleranceOfUnknownMeasure } from "../../addin/similarity/columns.ts";
import { chartOf } from "./chartOf.ts";

const headings = [
  "height",
  "bustGirth",
  "waistGirth",
  "underBustGirth",
  "armLength",
  "thighGirth",
  "headGirth",
  "headHeight",
  "handGirth",
  "footLength",
  "Wing span",
];
const chart = chartOf(headings, {
  Wren: headings.map((_, c) => 100 + c),
  Tern: headings.map((_, c) => 90 + c),
});
const keys = (...args: Parameters<typeof comparedColumns>) =>
  comparedColumns(...args).map(({ column }) => column.key);

describe("comparedColumns", () => {
  it("compares the body by what decides the fit on torso, arms and legs", () => {
    expect(keys(chart)).toEqual(["bustGirth", "waistGirth", "armLength", "thighGirth"]);
  });

  it.each([
    ["torso", ["bustGirth", "waistGirth"]],
    ["arms", ["armLength"]],
    ["legs", ["thighGirth"]],
    ["head", ["headGirth", "headHeight"]],
    ["hands", ["handGirth"]],
    ["feet", ["footLength"]],
  ] as const)("keeps the %s apart", (zone, expected) => {
    expect(keys(chart, { zone })).toEqual(expected);
  });

  it("takes every measure for “all”, height and unknown ones too", () => {
    expect(comparedColumns(chart, { zone: "all" })).toHaveLength(headings.length);
  });

  it("takes a measure that the dictionary does not know into any zone when a tolerance names it", () => {
    const tolerances = new Map([
      ["wing span", { floorMm: 5, percent: 0 }],
      ["height", { floorMm: 5, percent: 0 }],
    ]);
    expect(keys(chart, { zone: "arms", tolerances })).toEqual(["armLength", "wing span"]);
    expect(comparedColumns(chart, { zone: "arms", tolerances })[1]?.tolerance.floorMm).toBe(5);
  });

  it("takes the dictionary’s tolerance, the user’s where there is one, and a stated one for unknown measures", () => {
    const tolerances = new Map([["waistGirth", { floorMm: 7, percent: 1 }]]);
    const toleranceBy = new Map(
      comparedColumns(chart, { zone: "all", tolerances }).map(({ column, tolerance }) => [
        column.key,
        tolerance,
      ]),
    );
    expect(toleranceBy.get("waistGirth")).toEqual({ floorMm: 7, percent: 1 });
    expect(toleranceBy.get("bustGirth")).toEqual(chart.measures[1]?.measure?.tolerance);
    expect(toleranceBy.get("wing span")).toEqual(toleranceOfUnknownMeasure);
  });

  it("cannot do without bust, waist and hip where the chart has them", () => {
    const required = comparedColumns(chart, { zone: "all" }).filter((column) => column.required);
    expect(required.map(({ column }) => column.key)).toEqual(["bustGirth", "waistGirth"]);
  });

  it("leaves out a column without readings", () => {
    const empty = chartOf(["bustGirth", "waistGirth"], { Wren: [80, Number.NaN], Tern: [81, Number.NaN] });
    expect(keys(empty)).toEqual(["bustGirth"]);
  });

  it("says what is missing when nothing can be compared", () => {
    const heads = chartOf(["headGirth"], { Wren: [100] });
    expect(() => comparedColumns(heads)).toThrow(
      new InputError(
        "The chart has no readings that decide the fit on torso, arms or legs. Its measures are “headGirth”. Add a measure, or choose another part of the body.",
      ),
    );
  });

  it("refuses a tolerance of 0", () => {
    const tolerances = new Map([["waistGirth", { floorMm: 0, percent: 0 }]]);
    expect(() => comparedColumns(chart, { tolerances })).toThrow("“waistGirth” is 0");
  });
});
