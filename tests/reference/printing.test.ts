import { describe, expect, it } from "vitest";
import { printedAllowance } from "../../addin/grading/allowance.ts";
import { flareFunction } from "../../functions/flare.ts";
import { resizeFunction } from "../../functions/resize.ts";

describe("a block at 75 %", () => {
  /** The arithmetic of quilters, as found on a quilting forum, worked out again: 2.5 × 8.5 in with 1/4 in seams. */
  it("is cut 2 × 6.5 in, not 1.875 × 6.375 in", () => {
    const { printed, toAdd } = printedAllowance(0.25, 0.75);
    expect({ printed, toAdd }).toEqual({ printed: 0.1875, toAdd: 0.0625 });
    const onPaper = [2.5, 8.5].map((side) => side * 0.75);
    expect(onPaper).toEqual([1.875, 6.375]);
    expect(onPaper.map((side) => side + 2 * toAdd)).toEqual([2, 6.5]);
  });

  it("RESIZE says the same of the allowance", () => {
    const chart = [
      ["Block", "Bust (in)", "Back waist (in)"],
      ["Whole", 8, 2],
      ["Three quarters", 6, 1.5],
    ];
    const table = resizeFunction.compute([chart, "Whole", "Three quarters", null, 0.25]);
    const rows = Array.isArray(table) ? table : [];
    expect(rows.find(([what]) => what === "One scale")?.[3]).toBe(75);
    expect(rows.find(([what]) => what === "Seam allowance")?.slice(1, 6)).toEqual([
      0.25, 0.25, 75, 0.1875, 0.0625,
    ]);
    expect(rows.find(([what]) => what === "Test square")?.slice(1, 5)).toEqual([2, "", 75, 1.5]);
  });
});

/** Geometry: circumference / (2π · part), to three decimals. */
describe("circle skirts", () => {
  it.each([
    [80, [12.732, 16.977, 25.465, 50.93]],
    [26, [4.138, 5.517, 8.276, 16.552]],
  ])("waist %d as a full, three-quarter, half and quarter circle", (waist, radii) => {
    const found = [1, 0.75, 0.5, 0.25].map((part) => Number(flareFunction.compute([waist, part])));
    expect(found.map((radius) => Math.round(radius * 1000) / 1000)).toEqual(radii);
  });
});
