import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { completeJoins } from "../../addin/similarity/completeJoins.ts";
import type { Condensed } from "../../addin/similarity/condensed.ts";
import type { Join } from "../../addin/similarity/nearestNeighbourChain.ts";
import { nearestNeighbourChain } from "../../addin/similarity/nearestNeighbourChain.ts";
import { plainGroups } from "../../addin/similarity/plainGroups.ts";
import { vectorGroups } from "../../addin/similarity/vectorGroups.ts";
import { seeded } from "./condensedOf.ts";

/** From a few items on; usually fewer are left to the plain loops. */
const fewest = 2;

function copyOf({ size, values }: Condensed): Condensed {
  return { size, values: values.slice() };
}

function plainJoins(distances: Condensed, mostSearches?: number): readonly Join[] {
  const copy = copyOf(distances);
  return completeJoins(copy, plainGroups(copy), mostSearches);
}

function vectorJoins(distances: Condensed, mostSearches?: number): readonly Join[] {
  const far = vectorGroups(distances, { fewest });
  if (!far) throw new Error("There are no vector instructions here.");
  return completeJoins(distances, far, mostSearches);
}

/** Seeded distances of which some are equal, some not known and some infinite. */
function mixedDistances(size: number, seed: number): Condensed {
  const random = seeded(seed);
  const distance = () => {
    const kind = random();
    if (kind < 0.02) return Number.NaN;
    if (kind < 0.03) return Infinity;
    return kind < 0.5 ? Math.floor(50 * random()) : 50 * random();
  };
  return { size, values: Float64Array.from({ length: (size * (size - 1)) / 2 }, distance) };
}

const whole = fc.integer({ min: 0, max: 5 });
const anyDistance = fc.constantFrom<fc.Arbitrary<number>>(
  fc.double({ min: 0, max: 100, noNaN: true }).map((distance) => distance + 0),
  whole,
  fc.oneof({ weight: 8, arbitrary: whole }, fc.constantFrom(Number.NaN, Infinity)),
  fc.constant(3),
  fc.constant(Number.NaN),
);
const anyDistances = fc.tuple(fc.integer({ min: 2, max: 40 }), anyDistance).chain(([size, distance]) => {
  const length = (size * (size - 1)) / 2;
  return fc
    .array(distance, { minLength: length, maxLength: length })
    .map((values): Condensed => ({ size, values: Float64Array.from(values) }));
});

describe("complete linkage by vector instructions", () => {
  it("joins exactly as by the plain loops, whatever the distances", () => {
    fc.assert(
      fc.property(anyDistances, (distances) => {
        expect(vectorJoins(distances)).toEqual(plainJoins(distances));
      }),
      { numRuns: 300 },
    );
  });

  it("joins the same when the nearest-neighbour chain takes over after some searches", () => {
    fc.assert(
      fc.property(anyDistances, fc.double({ min: 0, max: 2, noNaN: true }), (distances, most) => {
        const mostSearches = Math.floor(most * distances.size) / distances.size;
        expect(vectorJoins(distances, mostSearches)).toEqual(plainJoins(distances));
      }),
    );
  });

  it.each([100, 257, 400])("joins %i items as the nearest-neighbour chain does", (size) => {
    const distances = mixedDistances(size, size);
    const chained = [...nearestNeighbourChain(copyOf(distances), "complete")].sort(
      (a, b) => a.height - b.height || a.first - b.first || a.second - b.second,
    );
    expect(vectorJoins(distances)).toEqual(chained);
    expect(plainJoins(distances)).toEqual(chained);
  });

  it("leaves the distances as they are", () => {
    const distances = mixedDistances(100, 1);
    const before = distances.values.slice();
    vectorJoins(distances);
    expect(distances.values).toEqual(before);
  });

  it("is for neither few items nor thousands", () => {
    const none = { values: new Float64Array() };
    expect(vectorGroups({ size: 99, ...none })).toBeUndefined();
    expect(vectorGroups({ size: 100, ...none })).toBeDefined();
    expect(vectorGroups({ size: 2501, ...none })).toBeUndefined();
  });
});

describe("where there are no vector instructions", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  it("the plain loops find the same joins", async () => {
    const distances = mixedDistances(100, 2);
    const expected = vectorJoins(distances);
    vi.resetModules();
    vi.stubGlobal("WebAssembly", undefined);
    const without = await import("../../addin/similarity/vectorGroups.ts");
    const { completeJoins: plainly } = await import("../../addin/similarity/completeJoins.ts");
    expect(without.vectorGroups(distances)).toBeUndefined();
    expect(plainly(distances)).toEqual(expected);
  });
});
