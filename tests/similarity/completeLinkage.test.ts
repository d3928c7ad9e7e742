import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { completeJoins } from "../../addin/similarity/completeLinkage.ts";
import { nearestNeighbourChain } from "../../addin/similarity/linkage.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { forEachNearPair, withRounding } from "../../addin/similarity/neighbours.ts";
import { apart, isWithin, readingsOf } from "../../addin/similarity/pair.ts";
import { abreast, bothNear, fillOwn, roughBounds, widen } from "../../addin/similarity/roughBounds.ts";
import { columnsOf, randomFigures } from "../bench/data.ts";
import { comparedOf } from "./chartOf.ts";

const missing = Number.NaN;

/** Up to 25 figures × 20 measures in whole millimetres, so with many ties; some readings missing, some measures required. */
const anyColumns = fc
  .record({
    size: fc.integer({ min: 1, max: 25 }),
    width: fc.oneof(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 7, max: 20 })),
  })
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

describe("roughBounds", () => {
  const anyMm = fc.oneof(
    fc.double({ min: 0, max: 500, noNaN: true }),
    fc.integer({ min: 0, max: 60 }),
    fc.constant(missing),
  );

  it("tell of no two groups that they are too far apart where none of their pairs is", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(anyMm, { minLength: 9, maxLength: 9 }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom(0, 0.2, 1.5, 3, 60, 150),
        fc.constantFrom(0, 0.5, 4),
        (rows, percent, floorMm) => {
          const columns = comparedOf(rows).map((compared) => ({
            ...compared,
            tolerance: { floorMm: percent === 0 ? Math.max(floorMm, 0.5) : floorMm, percent },
          }));
          const order = Int32Array.from(columns.keys());
          const rough = roughBounds(readingsOf(columns, 4), Int32Array.of(0, 1, 2, 3), order);
          widen(rough, 0, 1);
          widen(rough, 2, 3);
          const worst = columns.map((column) =>
            Math.max(
              0,
              ...[0, 1].flatMap((i) =>
                [2, 3].map((j) => apart([column], i, j).distance).filter((far) => !Number.isNaN(far)),
              ),
            ),
          );
          const own = new Int32Array(2 * abreast);
          fillOwn(rough, 0, withRounding(Math.max(...worst)), own);
          const near = [...own].map((number, c) => {
            const bound = rough.bounds[Math.floor(c / abreast) * 4 * abreast + 2 * abreast + (c % abreast)]!;
            return (number + bound) & bothNear;
          });
          expect(near).toEqual([...own].map(() => bothNear));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("tell of most pairs beyond a limit that they are", () => {
    const rows = randomFigures(100);
    const columns = columnsOf(rows, 1);
    const order = Int32Array.from(columns.keys());
    const rough = roughBounds(readingsOf(columns, 100), Int32Array.from(rows.keys()), order);
    const own = new Int32Array(Math.ceil(columns.length / abreast) * abreast);
    let far = 0;
    let told = 0;
    for (let i = 0; i < 100; i++) {
      fillOwn(rough, i, 3, own);
      for (let j = 0; j < 100; j++) {
        if (!(apart(columns, i, j).distance > 3)) continue;
        far++;
        const isTold = own.some(
          (number, c) =>
            ((number + rough.bounds[Math.floor(c / abreast) * 100 * abreast + j * abreast + (c % abreast)]!) &
              bothNear) !==
            bothNear,
        );
        if (isTold) told++;
      }
    }
    expect(far).toBeGreaterThan(1000);
    expect(told / far).toBeGreaterThan(0.99);
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
