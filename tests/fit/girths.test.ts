import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearance } from "../../addin/fit/clearance.ts";
import { delta, percentOfBase } from "../../addin/fit/delta.ts";
import { ease } from "../../addin/fit/ease.ts";
import { girthOverLayers } from "../../addin/fit/girthOverLayers.ts";

const girth = fc.double({ min: 10, max: 2000, noNaN: true });
const thickness = fc.double({ min: 0, max: 10, noNaN: true });

describe("girthOverLayers", () => {
  it("adds nothing for no cloth and for no layers", () => {
    expect(girthOverLayers(80, 0)).toBe(80);
    expect(girthOverLayers(80, 0.5, 0)).toBe(80);
  });

  it("n layers are one layer n times as thick", () => {
    fc.assert(
      fc.property(girth, thickness, fc.integer({ min: 0, max: 6 }), (bare, t, n) => {
        expect(girthOverLayers(bare, t, n)).toBeCloseTo(girthOverLayers(bare, n * t), 9);
      }),
    );
  });
});

describe("ease", () => {
  it("is what is left of the garment over the body and the cloth under it", () => {
    expect(ease(88, 80)).toBe(8);
    expect(ease(76, 80)).toBe(-4);
    fc.assert(
      fc.property(girth, girth, thickness, (garment, body, t) => {
        expect(ease(garment, body, t) + girthOverLayers(body, t)).toBeCloseTo(garment, 9);
      }),
    );
  });

  it("a stretch of 25 % allows a garment 20 % smaller than the body", () => {
    // The garment that reaches the body when it is stretched all the way: G (1 + s) = b.
    const body = 80;
    const garment = body / 1.25;
    expect(ease(garment, body) / body).toBeCloseTo(-0.2, 12);
    expect(clearance(garment, body, { stretch: 0.25, stretchShare: 1 })).toBeCloseTo(0, 12);
  });
});

describe("clearance", () => {
  it("is opening less obstacle where nothing stretches and nothing is thick", () => {
    expect(clearance(120, 112)).toBe(8);
    expect(clearance(100, 112)).toBe(-12);
  });

  it("uses half of the stretch, or the share that is given", () => {
    expect(clearance(100, 112, { stretch: 0.3 })).toBeCloseTo(3, 12);
    expect(clearance(100, 112, { stretch: 0.3, stretchShare: 1 })).toBeCloseTo(18, 12);
    expect(clearance(100, 112, { stretch: 0.3, stretchShare: 0 })).toBe(-12);
  });

  it("shrinks by 2π for each mm of thickness", () => {
    expect(clearance(120, 112, { thickness: 1 })).toBeCloseTo(8 - 2 * Math.PI, 12);
  });
});

describe("delta", () => {
  it("is target less base, and a percent of the base", () => {
    expect(delta(100, 104.5)).toBe(4.5);
    expect(percentOfBase(80, 84)).toBe(5);
    expect(percentOfBase(84, 80)).toBeCloseTo(-4.7619, 4);
  });

  it("is not known where a reading is missing, nor in percent of nothing", () => {
    expect(delta(Number.NaN, 1)).toBeNaN();
    expect(percentOfBase(80, Number.NaN)).toBeNaN();
    expect(percentOfBase(0, 80)).toBeNaN();
  });
});
