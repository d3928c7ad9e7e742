import { describe, expect, it } from "vitest";
import { printedAllowance } from "../../addin/grading/allowance.ts";
import { dartsFunction } from "../../functions/darts.ts";
import { flareFunction } from "../../functions/flare.ts";
import { resizeFunction } from "../../functions/resize.ts";
import { figureScaleFunction } from "../../functions/figureScale.ts";

describe("a block at 75 %", () => {
  /** By hand: 2.5 × 8.5 in with 1/4 in seams is 2 × 8 net, 1.5 × 6 at 75 %, and 2 × 6.5 with the same seams again. */
  it("is cut 2 × 6.5 in, not 1.875 × 6.375 in", () => {
    const { printed, toAdd } = printedAllowance(0.25, 0.75);
    expect({ printed, toAdd }).toEqual({ printed: 0.1875, toAdd: 0.0625 });
    // On paper it is 1.875 × 6.375 in, each too small by what the two seams have lost.
    expect([1.875, 6.375].map((side) => side + 2 * toAdd)).toEqual([2, 6.5]);
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

/** Geometry: Pythagoras’ triangles, and halves of regular polygons. */
describe("darts", () => {
  it.each([
    ["3-4-5", 6, 4, 5],
    ["5-12-13", 10, 12, 13],
    ["8-15-17", 16, 15, 17],
  ])("the sides of a dart are the long side of the triangle %s", (_, intake, depth, side) => {
    // One dart takes the whole difference in.
    expect(dart(intake, depth).side).toBeCloseTo(side, 12);
  });

  it.each([
    ["square, cut across", 2, 1, 90],
    ["hexagon", 2, Math.sqrt(3), 60],
    ["twelve-sided polygon", 2, 2 + Math.sqrt(3), 30],
  ])("the angle at the point is that of a %s", (_, intake, depth, degrees) => {
    expect(dart(intake, depth).angle).toBeCloseTo(degrees, 9);
  });

  function dart(intake: number, depth: number) {
    const table = dartsFunction.compute([100 + intake, 100, 1, 1, depth, "none"]);
    const rows = Array.isArray(table) ? table : [];
    const amountOf = (what: string) => Number(rows.find(([name]) => name === what)?.[1]);
    return { side: amountOf("Each side of a dart"), angle: amountOf("Angle at the point") };
  }
});

/** A foot is twelve inches (international yard and pound agreement, 1959): 1 in, 2 in, 3 in to the foot are 1:12, 1:6, 1:4. */
describe("scales named by inches to the foot", () => {
  it.each([
    ["1 in", 12],
    ["2 in", 6],
    ["3 in", 4],
  ])("%s to the foot is 1:%d", (inches, scale) => {
    expect(Number(figureScaleFunction.compute([inches, "12 in"]))).toBeCloseTo(scale, 12);
  });
});
