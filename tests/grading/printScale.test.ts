import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { printedAllowance } from "../../addin/grading/allowance.ts";
import { bestScale } from "../../addin/grading/bestScale.ts";
import { printScale } from "../../addin/grading/printScale.ts";
import { verdictWords } from "../../addin/grading/printWords.ts";
import { isPrintable, printPercent } from "../../addin/grading/printSetting.ts";

const headings = [
  "Figure",
  ...["Bust", "Waist", "Hip", "Back waist", "Waist to hip", "Arm length"].map((name) => `${name} (mm)`),
];
const scaleOf = (base: readonly number[], target: readonly (number | undefined)[]) =>
  printScale(0, 1, readChart([headings, ["Wren", ...base], ["Rook", ...target]]).measures);
const readings = fc.array(fc.double({ min: 20, max: 1200, noNaN: true }), { minLength: 6, maxLength: 6 });
const factors = fc.double({ min: 0.5, max: 2, noNaN: true });

describe("best print scale", () => {
  it("recovers the factor of a scaled copy", () => {
    fc.assert(
      fc.property(readings, factors, (base, factor) => {
        const scale = scaleOf(
          base,
          base.map((mm) => mm * factor),
        );
        expect(scale.factor / factor).toBeCloseTo(1, 12);
        expect(scale.two.across.factor / factor).toBeCloseTo(1, 12);
        expect(scale.two.along.factor / factor).toBeCloseTo(1, 12);
        expect(scale.verdict).toBe("one scale");
      }),
      { numRuns: 100 },
    );
  });

  it("leaves nothing over of a copy in whole percent", () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 50, max: 200 }), (base, percent) => {
        const { best } = scaleOf(
          base,
          base.map((mm) => (mm * percent) / 100),
        );
        expect(best.across.percent).toBe(percent);
        expect(best.measures.every(({ residualMm }) => residualMm === 0)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  it("there and back is the same size, and the scales of two steps multiply", () => {
    fc.assert(
      fc.property(readings, readings, readings, (a, b, c) => {
        expect(bestScale(a, b) * bestScale(b, a)).toBeCloseTo(1, 12);
        expect((bestScale(a, b) * bestScale(b, c)) / bestScale(a, c)).toBeCloseTo(1, 10);
      }),
    );
  });

  it("weighs a measure as often as it is said to count", () => {
    expect(bestScale([100, 80], [200, 80], [2, 1])).toBeCloseTo(
      bestScale([100, 100, 80], [200, 200, 80]),
      12,
    );
    expect(bestScale([100, 80, Number.NaN], [150, 120, 5])).toBeCloseTo(1.5, 12);
    expect(bestScale([Number.NaN], [1])).toBeNaN();
  });

  it("keeps girths and lengths apart where they grow differently", () => {
    const scale = scaleOf([200, 160, 220, 100, 50, 140], [240, 192, 264, 150, 75, 210]);
    expect(scale.two.across.factor).toBeCloseTo(1.2, 12);
    expect(scale.two.along.factor).toBeCloseTo(1.5, 12);
    expect(scale.best).toBe(scale.two);
    expect(scale.verdict).toBe("two scales");
  });

  it("says draft anew for another shape, naming the worst measure", () => {
    const scale = scaleOf([200, 160, 220, 100, 50, 140], [200, 160, 280, 100, 50, 140]);
    expect(scale.verdict).toBe("draft anew");
    expect(scale.best.worst?.column.heading).toBe("Hip");
  });

  it("leaves one measure to the hand where the others come right: a tenth of itself at most", () => {
    const base = [200, 160, 220, 100, 50, 140];
    const scale = scaleOf(base, [220, 176, 262, 110, 55, 154]);
    expect(scale.verdict).toBe("print and alter");
    expect(scale.best.across.percent).toBe(110);
    expect(scale.best.out.map(({ column, residualMm }) => [column.heading, residualMm])).toEqual([
      ["Hip", 20],
    ]);
    expect(verdictWords(scale)).toBe(
      "Print at 110 %, then let out Hip by 20 mm. The other 5 measures are within tolerance.",
    );
    // A tenth of the printed 242 mm.
    expect(scaleOf(base, [220, 176, 266, 110, 55, 154]).verdict).toBe("print and alter");
    expect(scaleOf(base, [220, 176, 267, 110, 55, 154]).verdict).toBe("draft anew");
  });

  it("says draft anew beyond 50 to 200 %", () => {
    const base = [200, 160, 220, 100, 50, 140];
    const by = (factor: number) =>
      scaleOf(
        base,
        base.map((mm) => mm * factor),
      ).verdict;
    expect([0.45, 0.5, 2, 2.2].map(by)).toEqual(["draft anew", "one scale", "one scale", "draft anew"]);
  });

  it("prints at 200 % what would ask for a little more, where that is within tolerance", () => {
    const base = [200, 160, 220, 100, 50, 140];
    const { best, verdict } = scaleOf(
      base,
      base.map((mm) => mm * 2.01),
    );
    expect([verdict, best.across.percent]).toEqual(["one scale", 200]);
  });

  it("leaves a measure out that is missing on one side", () => {
    const scale = scaleOf([200, 160, 220, 100, 50, 140], [220, undefined, 242, 110, 55, 154]);
    expect(scale.factor).toBeCloseTo(1.1, 12);
    expect(scale.one.measures[1]?.residualMm).toBeNaN();
  });
});

describe("print settings", () => {
  it("are whole percent, and others only where no whole one keeps what the scale keeps", () => {
    const least = (from: number, to: number) => [{ least: from, most: to }];
    expect(printPercent(0.754)).toBe(75);
    expect(printPercent(0.754, least(0.752, 0.77))).toBe(76);
    expect(printPercent(0.754, least(0.752, 0.757))).toBe(75.4);
    expect(printPercent(0.75441, least(0.75437, 0.75444))).toBe(75.44);
    expect(printPercent(0.754, least(0.9, 1))).toBe(75);
    expect(isPrintable(0.4)).toBe(false);
  });

  it("a cut piece that gets its allowance back is allowance off, scaled, allowance on", () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 900, noNaN: true }), factors, (cut, factor) => {
        const { printed, toAdd } = printedAllowance(6, factor);
        expect(printed + toAdd).toBeCloseTo(6, 12);
        expect(cut * factor + 2 * toAdd).toBeCloseTo((cut - 2 * 6) * factor + 2 * 6, 8);
      }),
    );
  });
});
