import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { completeJoins } from "../../addin/similarity/completeLinkage.ts";
import { nearestNeighbourChain } from "../../addin/similarity/linkage.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { forEachNearPair } from "../../addin/similarity/neighbours.ts";
import { apart, isWithin, readingsOf } from "../../addin/similarity/pair.ts";
import { comparedOf } from "./chartOf.ts";

const missing = Number.NaN;

/** Up to 25 figures × 6 measures in whole millimetres, so with many ties; some readings missing, some measures required. */
const anyColumns = fc
  .record({ size: fc.integer({ min: 1, max: 25 }), width: fc.integer({ min: 1, max: 6 }) })
  .chain(({ size, width }) =>
    fc.record({
      rows: fc.array(
        fc.array(fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 0, max: 60 }) }, fc.constant(missing)), {
          minLength: width,
          maxLength: width,
        }),
        { minLength: size, maxLength: size },
      ),
      tolerances: fc.array(
        fc.record({
          floorMm: fc.integer({ min: 1, max: 8 }),
          percent: fc.constantFrom(0, 0, 2, 15, 120),
          required: fc.constantFrom(false, false, false, true),
        }),
        { minLength: width, maxLength: width },
      ),
    }),
  )
  .map(({ rows, tolerances }): { size: number; columns: readonly ComparedColumn[] } => ({
    size: rows.length,
    columns: comparedOf(rows).map((compared, c) => {
      const { floorMm, percent, required } = tolerances[c]!;
      return { ...compared, required, tolerance: { floorMm, percent } };
    }),
  }));

describe("completeJoins", () => {
  it("joins what the chain joins on the distances of all pairs, with ties, gaps and percentages", () => {
    fc.assert(
      fc.property(anyColumns, ({ size, columns }) => {
        expect(completeJoins(readingsOf(columns, size))).toEqual(
          nearestNeighbourChain(toleranceDistances(columns, size), "complete"),
        );
      }),
      { numRuns: 500 },
    );
  });

  it("stops at a reach, which is itself within reach", () => {
    fc.assert(
      fc.property(anyColumns, fc.constantFrom(0, 0.5, 1, 2, 5), ({ size, columns }, reach) => {
        const readings = readingsOf(columns, size);
        expect(completeJoins(readings, reach)).toEqual(
          completeJoins(readings).filter(({ height }) => isWithin(height, reach)),
        );
      }),
      { numRuns: 500 },
    );
  });

  it("joins nothing where nothing is compared", () => {
    expect(completeJoins(readingsOf([], 3))).toEqual([]);
    expect(completeJoins(readingsOf(comparedOf([]), 0))).toEqual([]);
  });
});

describe("forEachNearPair", () => {
  it("tells of every pair within reach once, with its distance", () => {
    fc.assert(
      fc.property(anyColumns, fc.constantFrom(0.25, 1, 3), ({ size, columns }, reach) => {
        const found: string[] = [];
        forEachNearPair(readingsOf(columns, size), reach, (i, j, distance) =>
          found.push(`${String(i)} ${String(j)} ${String(distance)}`),
        );
        const all = Array.from({ length: size }, (_, i) =>
          Array.from({ length: size - i - 1 }, (__, next) => {
            const { distance } = apart(columns, i, i + 1 + next);
            return isWithin(distance, reach)
              ? [`${String(i)} ${String(i + 1 + next)} ${String(distance)}`]
              : [];
          }),
        );
        expect(found.sort()).toEqual(all.flat(2).sort());
      }),
      { numRuns: 500 },
    );
  });
});
