import fc from "fast-check";
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
    expect(remembered.map((row) => row.at(-1)).join(" ")).toMatch(/Snaps.*buttons.*Cloth.*Hems/);
  });

  it("goes by tolerances of the user’s own, and counts the measures that they add", () => {
    const chart = [
      ["Figure", "Bust", "Waist", "Hip", "Wing span"],
      ["Wren", 100, 80, 110, 300],
      ["Rook", 100, 80, 114, 300],
    ];
    const tolerances = (hip: number | string) => [
      ["Measure", "Tolerance (mm)"],
      ["Bust", 2],
      ["Waist", 2],
      ["Hip", hip],
      ["Wing span", 4],
    ];
    const strict = resize(chart, "Wren", "Rook", null, null, tolerances(1));
    expect(says(strict, "One scale")).toMatch(/^No print scale will do: Hip is 3 mm too small\./);
    expect(strict.some(([what]) => what === "Wing span (mm)")).toBe(true);
    const loose = resize(chart, "Wren", "Rook", null, null, tolerances(4));
    expect(says(loose, "One scale")).toMatch(/^One scale will do: at worst /);
    expect(() => resize(chart, "Wren", "Rook", null, null, tolerances("0 mm"))).toThrow(/Hip/);
  });

  it("tells allowance and test square for width and height where only two scales will do", () => {
    const chart = [
      ["Figure", "Bust", "Waist", "Hip", "Back waist", "Arm length"],
      ["Wren", 200, 160, 220, 100, 140],
      ["Heron", 220, 176, 242, 130, 182],
    ];
    const rows = resize(chart, "Wren", "Heron", null, 6);
    const valuesOf = (what: string) => rows.find(([name]) => name === what)?.slice(1, 6);
    expect(says(rows, "One scale")).toMatch(/Print girths and lengths at their own scales/);
    expect(valuesOf("Seam allowance, width")).toEqual([6, 6, 110, 6.6, -0.6]);
    expect(valuesOf("Seam allowance, height")).toEqual([6, 6, 130, 7.8, -1.8]);
    expect(valuesOf("Test square, width")).toEqual([50, "", 110, 55, ""]);
    expect(valuesOf("Test square, height")).toEqual([50, "", 130, 65, ""]);
    expect(valuesOf("Seam allowance")).toBeUndefined();
  });

  it("says it too where only girths or lengths are outside 50 to 200 %", () => {
    const chart = [
      ["Figure", "Bust", "Waist", "Back waist"],
      ["Wren", 100, 80, 100],
      ["Rook", 100, 80, 220],
    ];
    const rows = resize(chart, "Wren", "Rook");
    expect(says(rows, "Lengths")).toBe("This is outside 50 to 200 %: draft anew.");
    expect(rows.some(([what]) => what === "Print setting, height")).toBe(false);
  });

  it("does not tell a rounding that no tape shows", () => {
    const chart = [
      ["Figure", "Bust (in)", "Waist (in)"],
      ["Wren", 7, 5],
      ["Rook", 7.705, 5.5],
    ];
    expect(says(resize(chart, "Wren", "Rook"), "Print setting")).toBe("The whole percent is near enough.");
  });

  it("recovers the factor of a scaled copy exactly, and leaves nothing over", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 20, max: 1200 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 50, max: 200 }),
        (readings, percent) => {
          const rows = resize(
            [
              ["Figure", "Bust", "Waist", "Hip", "Back waist"],
              ["Wren", ...readings],
              ["Copy", ...readings.map((mm) => (mm * percent) / 100)],
            ],
            "Wren",
            "Copy",
          );
          for (const what of ["One scale", "Girths and widths", "Lengths", "Print setting"]) {
            expect(rows.find(([name]) => name === what)?.[3]).toBe(percent);
          }
          expect(rows.slice(4, 8).map((row) => row[5])).toEqual([0, 0, 0, 0]);
        },
      ),
      { numRuns: 60 },
    );
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
