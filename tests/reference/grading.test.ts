import { describe, expect, it } from "vitest";
import { gradeFunction } from "../../functions/grade.ts";

type Row = readonly unknown[];
const grade = (chart: readonly Row[], base: string, target: string, pieces: string): readonly Row[] => {
  const table = gradeFunction.compute([chart, base, target, pieces]);
  return Array.isArray(table) ? table : [];
};
const across = (rows: readonly Row[], piece: string, point: string) =>
  Number(rows.find((row) => row[0] === piece && row[1] === point)?.[2]);
const along = (rows: readonly Row[], piece: string, point: string) =>
  Number(rows.find((row) => row[0] === piece && row[1] === point)?.[3]);

/** Bust of misses sizes 00 to 20, in inches: ASTM D5585-11e1, from its catalogue page (spot values). */
describe("ASTM D5585, uneven bust steps", () => {
  const chart = [
    ["Size", "Bust (in)"],
    ...[
      ["00", 31.125], ["0", 31.75], ["2", 33], ["4", 34.125], ["6", 35.25], ["8", 36.25],
      ["10", 37.25], ["12", 38.75], ["14", 40.375], ["16", 42.125], ["18", 44], ["20", 46],
    ], // prettier-ignore
  ];
  const sizes = chart.slice(1).map(([size]) => String(size));

  it("a quarter of 5/8, 1 1/4, 1 1/8 … 2 in on each half piece", () => {
    const quarters = sizes
      .slice(1)
      .map((to, i) => across(grade(chart, sizes[i] ?? "", to, "Bodice"), "Bodice back", "Underarm"));
    // 5/8, 1 1/4, 1 1/8, 1 1/8, 1, 1, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2, each by four
    expect(quarters).toEqual([
      0.15625, 0.3125, 0.28125, 0.28125, 0.25, 0.25, 0.375, 0.40625, 0.4375, 0.46875, 0.5,
    ]);
  });
});

/**
 * Misses sizes 6 to 20 in inches: the table “Misses Sizing” of sewingscholar.blogspot.com, “Women's and Men's Pattern Sizing”,
 * 28 February 2011.
 */
describe("misses chart, size by size from 6 to 20", () => {
  const chart = [
    ["Size", "Bust (in)", "Waist (in)", "Hip (in)", "Back waist length (in)"],
    ...[
      ["6", 30.5, 23, 32.5, 15.5], ["8", 31.5, 24, 33.5, 15.75], ["10", 32.5, 25, 34.5, 16], ["12", 34, 26.5, 36, 16.25],
      ["14", 36, 28, 38, 16.5], ["16", 38, 30, 40, 16.75], ["18", 40, 32, 42, 17], ["20", 42, 34, 44, 17.25],
    ], // prettier-ignore
  ];
  const sizes = chart.slice(1).map(([size]) => String(size));
  const steps = sizes.slice(1).map((to, i) => grade(chart, sizes[i] ?? "", to, "Bodice, Fitted skirt"));
  const added = (piece: string, point: string, way: typeof across) =>
    steps.reduce((sum, rows) => sum + way(rows, piece, point), 0);

  it.each([
    ["bust 30 1/2 to 42", "Bodice", "Underarm", 30.5, 42],
    ["waist 23 to 34", "Bodice", "Waist at side", 23, 34],
    ["waist of the skirt 23 to 34", "Skirt", "Waist at side", 23, 34],
    ["hip 32 1/2 to 44", "Skirt", "Hip at side", 32.5, 44],
  ])("%s, over both halves of front and back", (_, garment, point, from, to) => {
    const girth = 2 * added(`${garment} front`, point, across) + 2 * added(`${garment} back`, point, across);
    expect(from + girth).toBeCloseTo(to, 10);
  });

  it("back waist length 15 1/2 to 17 1/4, at the neck of the back", () => {
    expect(15.5 + added("Bodice back", "Neck at centre", along)).toBeCloseTo(17.25, 10);
  });
});
