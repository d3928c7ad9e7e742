import { describe, expect, it } from "vitest";
import { stepsFunction } from "../../functions/steps.ts";

/**
 * Bust and neck base of misses sizes 00 to 20, in inches: ASTM D5585-11e1, from its catalogue page (spot values).
 */
const astm = [
  ["Size", "Bust (in)", "Neck base (in)"],
  ["00", "31 1/8", "13 1/4"],
  ["0", "31 3/4", "13 1/2"],
  ["2", "33", "13 3/4"],
  ["4", "34 1/8", "14"],
  ["6", "35 1/4", "14 1/4"],
  ["8", "36 1/4", "14 5/8"],
  ["10", "37 1/4", "14 7/8"],
  ["12", "38 3/4", "15 1/8"],
  ["14", "40 3/8", "15 1/2"],
  ["16", "42 1/8", "15 3/4"],
  ["18", "44", "16"],
  ["20", "46", "16 3/8"],
];

describe("steps of a published size chart", () => {
  const table = stepsFunction.compute([astm]);
  const rows = Array.isArray(table) ? table.slice(1) : [];

  it("bust, ASTM D5585-11e1: 5/8, 1 1/4, 1 1/8, 1 1/8, 1, 1, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2 in", () => {
    expect(rows.map((row) => row[2])).toEqual([0.625, 1.25, 1.125, 1.125, 1, 1, 1.5, 1.625, 1.75, 1.875, 2]);
  });

  it("neck base, ASTM D5585-11e1", () => {
    expect(rows.map((row) => row[3])).toEqual([
      0.25, 0.25, 0.25, 0.25, 0.375, 0.25, 0.25, 0.375, 0.25, 0.25, 0.375,
    ]);
  });
});

/**
 * Misses sizes 6 to 20 in inches: the table “Misses Sizing” of sewingscholar.blogspot.com, “Women's and Men's Pattern Sizing”,
 * 28 February 2011.
 */
const industry = [
  ["Size", "Bust (in)", "Waist (in)", "Hip (in)", "Back waist length (in)"],
  ["6", 30.5, 23, 32.5, 15.5],
  ["8", 31.5, 24, 33.5, 15.75],
  ["10", 32.5, 25, 34.5, 16],
  ["12", 34, 26.5, 36, 16.25],
  ["14", 36, 28, 38, 16.5],
  ["16", 38, 30, 40, 16.75],
  ["18", 40, 32, 42, 17],
  ["20", 42, 34, 44, 17.25],
];

describe("steps of the misses chart", () => {
  const table = stepsFunction.compute([industry]);
  const rows = Array.isArray(table) ? table.slice(1) : [];

  it.each([
    ["bust", 2, [1, 1, 1.5, 2, 2, 2, 2]],
    ["waist", 3, [1, 1, 1.5, 1.5, 2, 2, 2]],
    ["hip", 4, [1, 1, 1.5, 2, 2, 2, 2]],
    ["back waist length", 5, [0.25, 0.25, 0.25, 0.25, 0.25, 0.25, 0.25]],
  ])("%s", (_, at, published) => {
    expect(rows.map((row) => row[at])).toEqual(published);
  });
});
