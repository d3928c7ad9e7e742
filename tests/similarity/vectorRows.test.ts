import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { apart } from "../../addin/similarity/apart.ts";
import type { ComparedColumn } from "../../addin/similarity/comparedColumns.ts";
import type { Condensed } from "../../addin/similarity/condensed.ts";
import { createCondensed, pairDistance } from "../../addin/similarity/condensed.ts";
import { pairedRows } from "../../addin/similarity/pairedColumns.ts";
import { toleranceDistances } from "../../addin/similarity/toleranceDistances.ts";
import type { Fill } from "../../addin/similarity/vectorRows.ts";
import { vectorRows } from "../../addin/similarity/vectorRows.ts";
import { comparedOf } from "./chartOf.ts";
import { seeded } from "./condensedOf.ts";

const missing = Number.NaN;
const fewest = 256;

/** Seeded readings of 20 to 220 mm, of which a share is missing, with a tolerance of 0.1 to 9 mm for each measure. */
function randomColumns(size: number, measures: number, seed: number, gaps = 0): readonly ComparedColumn[] {
  const random = seeded(seed);
  const rows = Array.from({ length: size }, () =>
    Array.from({ length: measures }, () => (random() < gaps ? missing : 20 + 200 * random())),
  );
  return comparedOf(rows).map((compared) => ({
    ...compared,
    tolerance: { floorMm: 0.1 + 8.9 * random(), percent: 0 },
    required: random() < 0.2,
  }));
}

function filledBy(fill: Fill | undefined, size: number): Condensed {
  if (!fill) throw new Error("The rows cannot be filled by vector instructions here.");
  const distances = createCondensed(size);
  fill(distances);
  return distances;
}

const anySize = fc.integer({ min: fewest, max: fewest + 17 });
const anyMeasures = fc.integer({ min: 1, max: 9 });

describe("distances by vector instructions", () => {
  it("are those of the plain loop, whatever the number of figures and measures", () => {
    fc.assert(
      fc.property(anySize, anyMeasures, fc.integer(), (size, measures, seed) => {
        const columns = randomColumns(size, measures, seed);
        const plain = filledBy(pairedRows(columns, size), size).values;
        const differences = filledBy(vectorRows(columns, size), size).values.map((distance, at) =>
          Math.abs(distance - plain[at]!),
        );
        // Rounded to 2⁻³⁶, so a hair’s difference before can be one step of that.
        expect(Math.max(...differences)).toBeLessThanOrEqual(2 ** -36);
      }),
      { numRuns: 30 },
    );
  });

  it("are those of apart when readings are missing", () => {
    fc.assert(
      fc.property(anySize, anyMeasures, fc.integer(), (size, measures, seed) => {
        const columns = randomColumns(size, measures, seed, 0.03);
        const distances = toleranceDistances(columns, size);
        for (let i = 0; i < size; i++) {
          const j = (7 * i + 1) % size;
          if (i === j) continue;
          const expected = apart(columns, i, j).distance;
          const distance = pairDistance(distances, i, j);
          if (Number.isNaN(expected)) expect(distance).toBeNaN();
          else expect(Math.abs(distance - expected)).toBeLessThanOrEqual(2 ** -36);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("do not mind other work between making ready and filling", () => {
    const columns = randomColumns(fewest, 3, 1);
    const expected = filledBy(vectorRows(columns, fewest), fewest).values;
    const fill = vectorRows(columns, fewest);
    filledBy(vectorRows(randomColumns(2 * fewest, 20, 2), 2 * fewest), 2 * fewest);
    expect(filledBy(fill, fewest).values).toEqual(expected);
  });

  it("are exact where readings and tolerances are", () => {
    const rows = Array.from({ length: fewest }, (_, i) => [100 + i / 4, 80]);
    const { values } = toleranceDistances(comparedOf(rows, { floorMm: 0.5, percent: 0 }), fewest);
    expect([...values.subarray(0, fewest - 1)]).toEqual(rows.slice(1).map((_, i) => (i + 1) / 2));
  });

  it("are 0 between identical figures", () => {
    const rows = Array.from({ length: fewest }, () => [123.4, 80, 4.875 * 25.4]);
    expect(toleranceDistances(comparedOf(rows), fewest).values.every((distance) => distance === 0)).toBe(
      true,
    );
  });

  it("are not known to a figure without a single reading", () => {
    const rows = Array.from({ length: fewest }, (_, i) => (i === 7 ? [missing, missing] : [100, 80]));
    const distances = toleranceDistances(comparedOf(rows), fewest);
    for (let i = 0; i < fewest; i++) {
      if (i !== 7) expect(pairDistance(distances, i, 7)).toBeNaN();
    }
    expect(distances.values.filter((distance) => distance === 0)).toHaveLength(
      ((fewest - 1) * (fewest - 2)) / 2,
    );
  });

  it("are not known when every reading is missing", () => {
    const rows = Array.from({ length: fewest }, () => [missing]);
    expect(toleranceDistances(comparedOf(rows), fewest).values.every(Number.isNaN)).toBe(true);
  });

  it("are left to other loops for few figures", () => {
    expect(vectorRows(randomColumns(2, 3, 1), 2)).toBeUndefined();
    expect(toleranceDistances(comparedOf([[80], [82]]), 2).values[0]).toBe(2);
  });

  it("do not take part where a tolerance is 0 or in percent", () => {
    const rows = Array.from({ length: fewest }, (_, i) => [100 + (i % 2)]);
    const none = toleranceDistances(comparedOf(rows, { floorMm: 0, percent: 0 }), fewest).values;
    expect(none[0]).toBeGreaterThan(1);
    expect(none[1]).toBe(0);
    const percent = toleranceDistances(comparedOf(rows, { floorMm: 0, percent: 2 }), fewest).values;
    expect(percent[0]).toBeCloseTo(1 / 2.01, 10);
  });
});

describe("where there are no vector instructions", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  it("the plain loop gives the distances", async () => {
    vi.resetModules();
    vi.stubGlobal("WebAssembly", undefined);
    const without = await import("../../addin/similarity/vectorRows.ts");
    const { toleranceDistances: plainly } = await import("../../addin/similarity/toleranceDistances.ts");
    const columns = randomColumns(fewest, 4, 1);
    expect(without.vectorRows(columns, fewest)).toBeUndefined();
    const expected = filledBy(pairedRows(columns, fewest), fewest).values;
    expect(plainly(columns, fewest).values).toEqual(expected);
  });
});
