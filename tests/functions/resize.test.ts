import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exampleChart } from "../../functions/exampleChart.ts";
import { flareFunction } from "../../functions/flare.ts";
import { gradeFunction } from "../../functions/grade.ts";
import { resizeFunction } from "../../functions/resize.ts";
import { stepsFunction } from "../../functions/steps.ts";

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
    expect(says(rows, "Verdict")).toBe("Draft anew. The best scale, 230 %, is outside 50 to 200 %.");
    expect(says(rows, "One scale")).toBe("This is outside 50 to 200 %: draft anew.");
    expect(rows.some(([what]) => what === "Print setting")).toBe(false);
  });

  it("prints at a whole percent, and says at every measure what that leaves", () => {
    const chart = [
      ["Figure", "Bust", "Waist"],
      ["Wren", 1000, 800],
      ["Rook", 1004, 803.2],
    ];
    const rows = resize(chart, "Wren", "Rook");
    expect(rows.find(([what]) => what === "Print setting")?.[3]).toBe(100);
    expect(rows.find(([what]) => what === "Bust (mm)")?.slice(4, 6)).toEqual([1000, 4]);
  });

  it("takes decimals where no whole percent keeps every measure within tolerance, and says so", () => {
    const chart = [
      ["Figure", "Bust", "Waist"],
      ["Wren", 1000, 800],
      ["Rook", 1004, 803.2],
    ];
    const tolerances = [
      ["Measure", "Tolerance"],
      ["Bust", 1],
      ["Waist", 1],
    ];
    const rows = resize(chart, "Wren", "Rook", null, null, tolerances);
    expect(rows.find(([what]) => what === "Print setting")?.[3]).toBe(100.4);
    expect(says(rows, "Print setting")).toBe("No whole percent keeps as many measures within tolerance.");
    expect(says(rows, "Verdict")).toBe("Print at 100.4 %. Nothing is left over.");
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
    expect(says(strict, "Verdict")).toBe(
      "Print at 100 %, then let out Hip by 4 mm. The other 3 measures are within tolerance.",
    );
    expect(strict.some(([what]) => what === "Wing span (mm)")).toBe(true);
    const loose = resize(chart, "Wren", "Rook", null, null, tolerances(4));
    expect(says(loose, "Verdict")).toMatch(/^Print at 10\d %\. At worst /);
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
    expect(says(rows, "Verdict")).toMatch(/^Print at 110 % in width and 130 % in height\./);
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

  it("judges a garment by the measures that move it, as GRADE and STEPS do", () => {
    // A bodice has no inside leg and no hip.
    const chart = [
      ["Figure", "Bust", "Waist", "Hip", "Back waist", "Inside leg"],
      ["Wren", 200, 160, 220, 100, 180],
      ["Rook", 220, 176, 290, 110, 280],
    ];
    const bodice = "Print at 110 %. Nothing is left over.";
    const rows = resize(chart, "Wren", "Rook", "Bodice");
    expect(says(rows, "Verdict")).toBe(bodice);
    expect(rows.map(([what]) => what)).not.toContain("Hip (mm)");
    const grade = gradeFunction.compute([chart, "Wren", "Rook", "Bodice"]);
    expect(Array.isArray(grade) && says(grade, "All pieces")).toBe(bodice);
    const steps = stepsFunction.compute([chart, "Bodice", "yes"]);
    expect(Array.isArray(steps) && steps[1]?.at(-1)).toBe(bodice);
    expect(says(resize(chart, "Wren", "Rook"), "Verdict")).not.toBe(bodice);
    expect(() => resize(chart, "Wren", "Rook", "Hat band")).toThrow(/no measure that moves “Hat band”/);
    expect(() => resize(chart, "Wren", "Rook", "Bodise")).toThrow(/“Bodise”/);
  });

  it("recovers the factor of a scaled copy exactly, and leaves nothing over", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 20, max: 1200 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 50, max: 200 }),
        (readings, percent) => {
          const rows = resize(
            [
              ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Back waist (mm)"],
              ["Wren", ...readings],
              ["Copy", ...readings.map((mm) => (mm * percent) / 100)],
            ],
            "Wren",
            "Copy",
          );
          for (const what of ["One scale", "Girths and widths", "Lengths", "Print setting"]) {
            expect(rows.find(([name]) => name === what)?.[3]).toBe(percent);
          }
          expect(rows.slice(5, 9).map((row) => row[5])).toEqual([0, 0, 0, 0]);
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
