import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fileNameOf } from "../../../taskpane/drawing/fileName.ts";
import { scaleBar } from "../../../taskpane/drawing/scaleBar.ts";
import { spread } from "../../../taskpane/drawing/spread.ts";
import { plainColour } from "../../../taskpane/drawing/svgText.ts";
import { roundLengthAbove, roundLengthBelow } from "../../../taskpane/drawing/ticks.ts";

describe("round lengths", () => {
  test("are 1, 2 and 5 of a metric unit, and halves and doubles of an inch", () => {
    expect([30, 50, 51, 0.3].map((mm) => roundLengthAbove(mm, "mm"))).toEqual([50, 50, 100, 0.5]);
    expect([30, 50, 19, 0.3].map((mm) => roundLengthBelow(mm, "mm"))).toEqual([20, 50, 10, 0.2]);
    expect(roundLengthBelow(49, "cm")).toBe(20);
    expect(roundLengthAbove(49, "cm")).toBe(50);
    expect(roundLengthBelow(30, "in")).toBe(25.4);
    expect(roundLengthAbove(30, "in")).toBe(50.8);
    expect(roundLengthBelow(10, "in")).toBeCloseTo(25.4 / 4, 12);
  });

  test("a length that is round stays, above and below", () => {
    for (const [unit, mm] of [
      ["mm", 20],
      ["cm", 500],
      ["in", 12.7],
    ] as const) {
      expect(roundLengthAbove(mm, unit)).toBeCloseTo(mm, 10);
      expect(roundLengthBelow(mm, unit)).toBeCloseTo(mm, 10);
    }
  });
});

describe("the scale bar", () => {
  test("is the longest round length that has room, at the scale of the drawing", () => {
    expect(scaleBar(2, "cm", 90)).toEqual({ mm: 20, length: 40, words: "2 cm" });
    expect(scaleBar(0.5, "mm", 60)).toEqual({ mm: 100, length: 50, words: "100 mm" });
    const inches = scaleBar(2, "in", 110);
    expect(inches.words).toBe('2"');
    expect(inches.length).toBeCloseTo(101.6, 10);
  });
});

describe("files of drawings", () => {
  test("have names that any system takes", () => {
    expect(fileNameOf("Grade", "Linnet", "Teal (tall)/2")).toBe("grade-linnet-teal-tall-2");
    expect(fileNameOf("Zoë: ½")).toBe("zoe-1-2");
    expect(fileNameOf("…")).toBe("drawing");
  });

  test("have colours that every program knows", () => {
    expect(plainColour("rgb(31, 95, 168)")).toBe("#1F5FA8");
    expect(plainColour("none")).toBe("none");
    expect(plainColour("rgba(0, 0, 0, 0.5)")).toBe("rgba(0, 0, 0, 0.5)");
  });
});

describe("labels that would cover one another", () => {
  test("move apart, each as little as may be", () => {
    expect(spread([10, 11, 40], 4)).toEqual([8.5, 12.5, 40]);
    expect(spread([], 4)).toEqual([]);
  });

  // Isotonic regression keeps the mean (Barlow et al. 1972, Statistical Inference under Order Restrictions; from memory).
  test("keep their order, their distance and their mean", () => {
    const rising = fc
      .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 12 })
      .map((ys) => ys.sort((a, b) => a - b));
    fc.assert(
      fc.property(rising, fc.double({ min: 0, max: 20, noNaN: true }), (wanted, gap) => {
        const placed = spread(wanted, gap);
        const sum = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
        return (
          Math.abs(sum(placed) - sum(wanted)) < 1e-6 &&
          placed.slice(1).every((y, i) => y - placed[i]! >= gap - 1e-9)
        );
      }),
    );
  });
});
