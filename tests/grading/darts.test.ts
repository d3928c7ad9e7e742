import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dartAngle, dartLeg, planDarts, widestDartMm } from "../../addin/grading/darts.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("darts", () => {
  it("are none for girths that differ by the last digit only, at any scale", () => {
    expect(planDarts(50.00000000000001, 50, { darts: 4 }).darts).toBe(0);
    expect(planDarts(50.00000000000001 / 3, 50 / 3, { darts: 4, scale: 3 }).darts).toBe(0);
  });

  it("with the seams take in the whole difference of bust or hip and waist", () => {
    fc.assert(
      fc.property(
        mm(50, 1400),
        mm(50, 1400),
        fc.integer({ min: 1, max: 8 }),
        mm(0, 1),
        (wider, waist, darts, seamShare) => {
          const plan = planDarts(wider, waist, { darts, seamShare });
          expect(plan.atSeamsMm + darts * plan.asGivenMm).toBeCloseTo(Math.max(0, wider - waist), 8);
          expect(plan.atSeamsMm + plan.darts * plan.intakeMm).toBeCloseTo(Math.max(0, wider - waist), 8);
        },
      ),
    );
  });

  it("are as many as keep each within the largest sensible intake, at any scale", () => {
    fc.assert(
      fc.property(mm(50, 1400), mm(50, 1400), fc.constantFrom(1, 3, 4, 6, 12), (wider, waist, scale) => {
        const full = planDarts(wider, waist, { darts: 4 });
        const small = planDarts(wider / scale, waist / scale, { darts: 4, scale });
        expect(small.darts).toBe(full.darts);
        expect(small.intakeMm * scale).toBeCloseTo(full.intakeMm, 8);
        expect(full.intakeMm).toBeLessThanOrEqual(widestDartMm + 1e-6);
      }),
    );
  });

  it("are spread over the darts of the block, and over more where they would be too wide", () => {
    // Hip 960, waist 720: half of 240 at the seams, 120 over four darts.
    expect(planDarts(960, 720, { darts: 4 })).toEqual({
      ...{ differenceMm: 240, atSeamsMm: 120, darts: 4, intakeMm: 30, asGivenMm: 30, largestMm: 32 },
    });
    expect(planDarts(160, 120, { darts: 2, scale: 6 })).toMatchObject({
      darts: 4,
      intakeMm: 5,
      asGivenMm: 10,
    });
    expect(planDarts(700, 720, { darts: 4 })).toMatchObject({ differenceMm: 0, darts: 0, intakeMm: 0 });
  });

  it("geometry: the 3-4-5 triangle, and angles of known triangles", () => {
    expect(dartLeg(6, 4)).toBe(5);
    expect(dartAngle(2, 1)).toBeCloseTo(90, 12);
    expect(dartAngle(2, Math.sqrt(3))).toBeCloseTo(60, 12);
  });

  it("geometry: a print at another scale keeps the angle, and scales the legs", () => {
    fc.assert(
      fc.property(mm(1, 60), mm(10, 200), mm(0.5, 2), (intake, depth, factor) => {
        expect(dartAngle(intake * factor, depth * factor)).toBeCloseTo(dartAngle(intake, depth), 9);
        expect(dartLeg(intake * factor, depth * factor)).toBeCloseTo(dartLeg(intake, depth) * factor, 9);
      }),
    );
  });
});
