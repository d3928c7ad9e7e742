import { describe, expect, it } from "vitest";
import { dartsFunction } from "../../functions/darts.ts";

const darts = (...raw: readonly unknown[]) => {
  const table = dartsFunction.compute(raw);
  return Array.isArray(table) ? table : [];
};
const amountOf = (rows: readonly (readonly unknown[])[], what: string) =>
  rows.find(([name]) => name === what)?.[1];
const saysOf = (rows: readonly (readonly unknown[])[], what: string) =>
  rows.find(([name]) => name === what)?.at(-1);

describe("DARTS", () => {
  it("needs none where the waist is as wide", () => {
    const rows = darts(120, 130);
    expect(amountOf(rows, "Darts")).toBe(0);
    expect(saysOf(rows, "Difference")).toMatch(/no darts are needed/);
  });

  it("asks for more darts in pairs where they would be too wide at the scale", () => {
    // Half of 50 over two darts are 12.5 mm each; at 1:6 a dart is at most 5.33 mm wide: five would do, so six.
    const rows = darts(170, 120, 2, 6);
    expect(amountOf(rows, "Darts")).toBe(6);
    expect(saysOf(rows, "Darts")).toBe(
      "2 darts would be 12.5 mm wide each, too wide to press flat. Sew 6, or take more in at the seams.",
    );
    expect(saysOf(darts(170, 120, 2, 1), "Darts")).toBe("");
  });

  it("is one plan: what the darts and the seams take in is the difference, in every row", () => {
    for (const given of [1, 2, 3, 4, 8]) {
      const rows = darts(170, 120, given, 6);
      const [count, each, seams] = ["Darts", "Each dart", "At the seams"].map((what) =>
        Number(amountOf(rows, what)),
      );
      expect(count! * each! + seams!).toBeCloseTo(50, 9);
      expect(each).toBeLessThanOrEqual(Number(amountOf(rows, "Widest sensible dart")) + 1e-9);
    }
  });

  it("draws what is sewn: the narrower darts where more are needed", () => {
    const rows = darts(170, 120, 2, 6, 20);
    expect(amountOf(rows, "Each side of a dart")).toBeCloseTo(Math.hypot(25 / 6 / 2, 20), 9);
    expect(darts(170, 120).some(([what]) => what === "Angle at the point")).toBe(false);
  });

  it("takes inches, and answers in the unit asked for", () => {
    const rows = darts("38 in", "28 in", 4, 1, null, 0.5, "in");
    expect(amountOf(rows, "Difference")).toBe(10);
    expect(amountOf(rows, "Each dart")).toBe(1.25);
    expect(rows[1]?.[2]).toBe("in");
    expect(amountOf(darts(380, 280, 4, 1, null, "none"), "At the seams")).toBe(0);
  });

  it("is blank without readings, and refuses in words what cannot be", () => {
    expect(darts(null, 100)).toEqual([[""]]);
    expect(darts("-", 100)).toEqual([[""]]);
    expect(() => darts(140, 100, 4, 0.5)).toThrow(/scale: “0.5” is not the x of a scale 1:x/);
    expect(() => darts(140, 100, 4, 1, null, 50)).toThrow(/seam_share: “50” is more than the whole/);
    expect(() => darts(140, 100, 2.5)).toThrow(/darts: “2.5” is not a whole number/);
  });
});
