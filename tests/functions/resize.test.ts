import { describe, expect, it } from "vitest";
import { exampleChart } from "../../functions/exampleChart.ts";
import { flareFunction } from "../../functions/flare.ts";
import { resizeFunction } from "../../functions/resize.ts";

const resize = (...raw: readonly unknown[]) => {
  const table = resizeFunction.compute(raw);
  return Array.isArray(table) ? table : [];
};
const says = (rows: readonly (readonly unknown[])[], what: string) =>
  rows.find(([name]) => name === what)?.at(-1);

describe("RESIZE", () => {
  it("refuses one figure as base and target", () => {
    expect(() => resize(exampleChart, "Linnet", "linnet")).toThrow(
      /“Linnet” of the chart is both base and target/,
    );
  });

  it("says at its row which measure is missing, and of whom", () => {
    const chart = [
      ["Figure", "Bust", "Waist"],
      ["Wren", 100, ""],
      ["Rook", 110, 90],
    ];
    expect(says(resize(chart, "Wren", "Rook"), "Waist (mm)")).toBe(
      "Not known of Wren: left out. Measure it.",
    );
  });

  it("has no print setting beyond 50 to 200 %, and says so", () => {
    const chart = [
      ["Figure", "Bust", "Waist"],
      ["Wren", 100, 80],
      ["Rook", 230, 184],
    ];
    const rows = resize(chart, "Wren", "Rook");
    expect(says(rows, "One scale")).toBe("This is outside 50 to 200 %: draft anew.");
    expect(rows.some(([what]) => what === "Print setting")).toBe(false);
  });

  it("says what the whole percent costs at the longest measure", () => {
    const chart = [
      ["Figure", "Bust", "Waist"],
      ["Wren", 1000, 800],
      ["Rook", 1004, 803.2],
    ];
    expect(says(resize(chart, "Wren", "Rook"), "Print setting")).toBe(
      "The whole percent makes Bust 4 mm too small.",
    );
  });

  it("warns of what does not scale", () => {
    const remembered = resize(exampleChart, "Linnet", "Dunnock").filter(([what]) => what === "Remember");
    expect(remembered.map((row) => row.at(-1)).join(" ")).toMatch(/Snaps.*buttons.*Cloth/);
  });
});

describe("FLARE", () => {
  it("knows that a typed 3/4 may be a date by now", () => {
    expect(flareFunction.compute([80, "3/4"])).toBeCloseTo(16.977, 3);
    expect(() => flareFunction.compute([80, 46115])).toThrow(/“46115” is not a part of a circle.*date/);
  });

  it("refuses an allowance that leaves nothing", () => {
    expect(() => flareFunction.compute([80, 1, 13])).toThrow(
      /“13” is as wide as the radius of the seam line, 12.732/,
    );
  });

  it("is blank for a blank waist", () => {
    expect(flareFunction.compute([null])).toBe("");
  });
});
