import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bodyOutline } from "../../addin/similarity/outline/bodyOutline.ts";
import { ellipsePerimeter, halfWidthOfGirth } from "../../addin/similarity/outline/ellipse.ts";
import { chartOf } from "./chartOf.ts";

const missing = Number.NaN;

/** The length of many short chords. */
function chordPerimeter(a: number, b: number): number {
  const steps = 200_000;
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const [from, to] = [step, step + 1].map((at) => (2 * Math.PI * at) / steps);
    sum += Math.hypot(a * (Math.cos(to!) - Math.cos(from!)), b * (Math.sin(to!) - Math.sin(from!)));
  }
  return sum;
}

describe("ellipsePerimeter", () => {
  it("is that of a circle", () => {
    expect(ellipsePerimeter(1, 1)).toBe(2 * Math.PI);
    expect(ellipsePerimeter(0, 0)).toBe(0);
  });

  // 4a·E(e) with the complete elliptic integral of the second kind E(√0.75) = 1.211056028, by R 4.2.2:
  // integrate(function(t) sqrt(1 - 0.75 * sin(t)^2), 0, pi / 2)
  it("is that of the elliptic integral for half axes 2 and 1", () => {
    expect(ellipsePerimeter(2, 1)).toBeCloseTo(4 * 2 * 1.211056, 5);
  });

  it.each([0.5, 0.7, 0.75, 0.85, 1.25])("is the length of the curve for a depth of %d widths", (ratio) => {
    expect(ellipsePerimeter(1, ratio)).toBeCloseTo(chordPerimeter(1, ratio), 7);
  });

  it("is off by less than 0.05 % where the ellipse is a line", () => {
    expect(Math.abs(ellipsePerimeter(1, 0) / 4 - 1)).toBeLessThan(0.0005);
  });

  it("gives back the girth from half the width", () => {
    const half = halfWidthOfGirth(150, 0.7);
    expect(chordPerimeter(half, 0.7 * half)).toBeCloseTo(150, 5);
  });
});

const ids = [
  ...["height", "headHeight", "backWaistLength", "bodyRise", "insideLeg", "waistToHip", "kneeHeight"],
  ...["headGirth", "neckGirth", "shoulderWidth", "bustGirth", "waistGirth", "hipGirth", "thighGirth"],
  ...["kneeGirth", "ankleGirth", "footWidth"],
];
const wren = [410, 60, 92, 64, 188, 45, 112, 165, 70, 82, 185, 135, 195, 110, 90, 55, 22];
const chart = chartOf(ids, { Wren: wren, Lark: wren.map((mm) => mm * 1.1) });
const levelsOf = (of: Parameters<typeof bodyOutline>[0], figure = 0) =>
  new Map(bodyOutline(of, figure).levels.map((level) => [level.name, level]));

describe("bodyOutline", () => {
  it("stands on its soles and reaches its height, level above level", () => {
    const { levels, notes } = bodyOutline(chart, 0);
    expect(levels[0]).toMatchObject({ name: "Sole", heightMm: 0 });
    expect(levels.at(-1)).toMatchObject({ name: "Top of the head", heightMm: 410, halfWidthMm: 0 });
    const heights = levels.map(({ heightMm }) => heightMm);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    expect(notes).toEqual([]);
  });

  it("takes heights from the lengths that are known", () => {
    const levels = levelsOf(chart);
    const heights = ["Top of the leg", "Waist", "Hip", "Knee"].map((name) => levels.get(name)?.heightMm);
    expect(heights).toEqual([188, 188 + 64, 188 + 64 - 45, 112]);
    expect(levels.get("Waist")?.estimated).toBe(false);
    // No bust-point depth in this chart: the height is estimated, the width is not.
    expect(levels.get("Bust")).toMatchObject({ isHeightEstimated: true, isWidthEstimated: false });
    const byOutside = chartOf(["height", "outsideLeg", "waistToKnee", "waistGirth"], {
      Wren: [410, 250, 140, 135],
    });
    expect(levelsOf(byOutside).get("Waist")?.heightMm).toBe(250);
    expect(levelsOf(byOutside).get("Knee")?.heightMm).toBe(110);
  });

  it("has sections whose girth is the girth read, and widths as they are read", () => {
    const levels = levelsOf(chart);
    const hip = levels.get("Hip")!.halfWidthMm;
    expect(chordPerimeter(hip, 0.7 * hip)).toBeCloseTo(195, 5);
    expect(levels.get("Shoulder")?.halfWidthMm).toBe(41);
    const { halfWidthMm, innerMm } = levels.get("Sole")!;
    expect(halfWidthMm - innerMm).toBeCloseTo(22, 9);
  });

  it("draws legs that touch where they are widest", () => {
    const levels = levelsOf(chart);
    const thigh = levels.get("Top of the leg")!;
    expect(thigh.innerMm).toBe(0);
    expect(thigh.halfWidthMm).toBeCloseTo(110 / Math.PI, 3);
    const knee = levels.get("Knee")!;
    expect(knee.innerMm + knee.halfWidthMm).toBeCloseTo(thigh.halfWidthMm, 9);
  });

  it("is twice as large for a figure twice as large", () => {
    const twice = chartOf(ids, { Wren: wren.map((mm) => 2 * mm) });
    const large = levelsOf(twice);
    for (const [name, { heightMm, halfWidthMm }] of levelsOf(chartOf(ids, { Wren: wren }))) {
      expect(large.get(name)?.heightMm).toBeCloseTo(2 * heightMm, 9);
      expect(large.get(name)?.halfWidthMm).toBeCloseTo(2 * halfWidthMm, 9);
    }
  });

  it("draws the little that is known, marks the rest as estimated and says what is missing", () => {
    const little = chartOf(["height", "bustGirth", "waistGirth", "hipGirth"], { Wren: [410, 185, 135, 195] });
    const { levels, missing: lacking } = bodyOutline(little, 0);
    const of = new Map(levels.map((level) => [level.name, level]));
    expect(of.get("Hip")).toMatchObject({ isHeightEstimated: true, isWidthEstimated: false });
    expect(of.get("Knee")).toMatchObject({ estimated: true, isWidthEstimated: true });
    expect(lacking).toContain("Inside leg");
    expect(lacking).not.toContain("Height");
    // Seven and a half heads in the height: Extension Circular 306 (1943).
    expect(of.get("Head")!.heightMm).toBeGreaterThan(410 - 410 / 7.5);
    expect(of.get("Neck")!.heightMm).toBeLessThan(410 - 410 / 7.5);
  });

  it("does not stretch the body of a figure with a large head", () => {
    const ofHead = (head: number) =>
      levelsOf(chartOf(["height", "headHeight", "waistGirth"], { Wren: [410, head, 135] })).get("Waist")!
        .heightMm;
    expect(ofHead(110) / ofHead(55)).toBeCloseTo((410 - 110) / (410 - 55), 9);
  });

  it("takes what one figure lacks from the others, and marks it", () => {
    const without = chartOf(ids, {
      Wren: wren.map((mm, c) => (c === 12 ? missing : mm)),
      Lark: wren,
      Rook: wren,
    });
    const levels = levelsOf(without);
    expect(levels.get("Hip")?.isWidthEstimated).toBe(true);
    expect(levels.get("Hip")?.halfWidthMm).toBeCloseTo(halfWidthOfGirth(195, 0.7), 6);
    expect(bodyOutline(without, 0).missing).toContain("Hip girth");
  });

  it("says when lengths contradict one another, and when nothing can be drawn", () => {
    const wrong = chartOf(["height", "insideLeg", "kneeHeight", "waistGirth"], {
      Wren: [410, 188, 300, 135],
    });
    expect(bodyOutline(wrong, 0).notes).toEqual([
      "By the lengths of this figure “Top of the leg” would not lie above “Knee”: one of its lengths is wrong. Check them.",
    ]);
    const girthless = chartOf(["height"], { Wren: [410] });
    expect(bodyOutline(girthless, 0)).toMatchObject({
      levels: [],
      notes: ["The chart has no girths or widths of Wren, so that nothing can be drawn. Measure it first."],
    });
    const shapeless = chartOf(["waistGirth"], { Wren: [135] });
    expect(bodyOutline(shapeless, 0).notes[0]).toContain("no height or length of the body");
  });

  it("rises from level to level whatever the readings, and never has a length that is none", () => {
    const reading = fc.oneof(fc.double({ min: 0.5, max: 600, noNaN: true }), fc.constant(missing));
    fc.assert(
      fc.property(fc.array(fc.tuple(...ids.map(() => reading)), { minLength: 1, maxLength: 6 }), (rows) => {
        const any = chartOf(
          ids,
          rows.map((row, i) => [`F${String(i)}`, row] as const),
        );
        const { levels, notes } = bodyOutline(any, 0);
        if (levels.length === 0) expect(notes).toHaveLength(1);
        levels.forEach(({ heightMm, halfWidthMm, innerMm }, at) => {
          expect(heightMm).toBeGreaterThan(levels[at - 1]?.heightMm ?? -1);
          expect(innerMm).toBeGreaterThanOrEqual(0);
          expect(halfWidthMm).toBeGreaterThanOrEqual(innerMm);
          expect(Number.isFinite(heightMm + halfWidthMm)).toBe(true);
        });
      }),
    );
  });
});
