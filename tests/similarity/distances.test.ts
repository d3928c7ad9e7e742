import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apart } from "../../addin/similarity/pair.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import {
  createCondensed,
  mostFigures,
  pairDistance,
  pairIndex,
  toleranceDistances,
} from "../../addin/similarity/matrix.ts";
import { comparedOf } from "./chartOf.ts";

const missing = Number.NaN;

describe("condensed distances", () => {
  it("holds each pair once, row by row", () => {
    const pairs: (readonly [number, number])[] = [
      [0, 1],
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
      [2, 3],
    ];
    expect(pairs.map(([i, j]) => pairIndex(4, i, j))).toEqual([0, 1, 2, 3, 4, 5]);
    expect(pairs.map(([i, j]) => pairIndex(4, j, i))).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it("has no pair for one item or none", () => {
    expect(createCondensed(1).values).toHaveLength(0);
    expect(createCondensed(0).values).toHaveLength(0);
  });

  it("refuses more figures than memory holds", () => {
    expect(() => createCondensed(mostFigures + 1)).toThrow("at most 12000");
  });
});

describe("toleranceDistances", () => {
  it("is the worst difference in tolerances", () => {
    const columns = comparedOf(
      [
        [80, 60],
        [82, 61],
      ],
      { floorMm: 4, percent: 0 },
    );
    expect([...toleranceDistances(columns, 2).values]).toEqual([0.5]);
  });

  it("takes the floor or the percentage of the mean, whichever is more", () => {
    const columns = comparedOf(
      [
        [99, 20],
        [101, 21],
      ],
      { floorMm: 2, percent: 4 },
    );
    // 2 / max(2, 4) and 1 / max(2, 0.82)
    expect([...toleranceDistances(columns, 2).values]).toEqual([0.5]);
    expect(toleranceDistances(columns.slice(0, 1), 2).values[0]).toBe(0.5);
    expect(toleranceDistances(columns.slice(1), 2).values[0]).toBe(0.5);
  });

  it.each([
    ["an odd number of measures", 0.5],
    ["hundreds of thousands of tolerances in a reading", 0.0001],
  ])("holds with %s, to the last digit that counts", (_, floorMm) => {
    const columns = comparedOf(
      [
        [80, 60, 40],
        [82, 61, 44],
        [82, 61, 44],
      ],
      { floorMm: 0.5, percent: 0 },
    ).map((compared, c) => (c === 0 ? { ...compared, tolerance: { floorMm, percent: 0 } } : compared));
    const [one, two, same] = toleranceDistances(columns, 3).values;
    expect(one).toBeCloseTo(Math.max(2 / floorMm, 8), 9);
    expect(two).toBe(one);
    expect(same).toBe(0);
    expect(toleranceDistances(columns.slice(1), 3).values[0]).toBe(8);
  });

  it("is not known when less than half of the measures can be compared", () => {
    const columns = comparedOf([
      [80, 60, 40],
      [81, 61, missing],
      [82, missing, missing],
    ]);
    expect([...toleranceDistances(columns, 3).values]).toEqual([1, missing, missing]);
  });

  it("is not known when nothing can be compared", () => {
    expect([
      ...toleranceDistances(
        comparedOf([
          [80, missing],
          [missing, 60],
        ]),
        2,
      ).values,
    ]).toEqual([missing]);
    expect([...toleranceDistances([], 2).values]).toEqual([missing]);
  });

  it("is not known when a required measure is missing", () => {
    const columns = comparedOf([
      [80, 60, 40],
      [81, 61, missing],
    ]).map((column, c) => ({ ...column, required: c === 2 }));
    expect([...toleranceDistances(columns, 2).values]).toEqual([missing]);
  });

  it("counts over more measures than fit into one word of bits", () => {
    const full = Array.from({ length: 70 }, (_, c) => 100 + c);
    const columns = comparedOf([
      full,
      full.map((reading, c) => (c < 35 ? missing : reading + 1)),
      full.map((reading, c) => (c < 36 ? missing : reading + 1)),
    ]);
    expect([...toleranceDistances(columns, 3).values]).toEqual([1, missing, missing]);
    const required = columns.map((column, c) => ({ ...column, required: c === 34 }));
    expect(toleranceDistances(required, 3).values[0]).toBeNaN();
  });

  it("compares two readings of 0 by a percentage", () => {
    expect([...toleranceDistances(comparedOf([[0], [0]], { floorMm: 0, percent: 2 }), 2).values]).toEqual([
      0,
    ]);
  });
});

const reading = fc.oneof(
  { weight: 5, arbitrary: fc.double({ min: 1, max: 700, noNaN: true }) },
  fc.constant(missing),
);
const tolerance = fc.record({
  floorMm: fc.double({ min: 0.1, max: 9, noNaN: true }),
  percent: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 9, noNaN: true })),
});
/** Five figures; every measure with a tolerance of its own, one in a few required. */
const anyColumns: fc.Arbitrary<readonly ComparedColumn[]> = fc
  .array(fc.tuple(fc.tuple(reading, reading, reading, reading, reading), tolerance, fc.nat(5)), {
    minLength: 1,
    maxLength: 12,
  })
  .map((measures) =>
    measures.flatMap(([readings, own, one]) =>
      comparedOf(
        readings.map((mm) => [mm]),
        own,
      ).map((column) => ({ ...column, required: one === 0 })),
    ),
  );

describe("any distances", () => {
  it("are those of apart, either way round", () => {
    fc.assert(
      fc.property(anyColumns, (columns) => {
        const distances = toleranceDistances(columns, 5);
        for (let i = 0; i < 5; i++) {
          for (let j = 0; j < 5; j++) {
            if (i === j) continue;
            const one = apart(columns, i, j).distance;
            expect(apart(columns, j, i).distance).toBe(one);
            const kernel = pairDistance(distances, i, j);
            if (Number.isNaN(one)) expect(kernel).toBeNaN();
            else expect(kernel / one || 1).toBeCloseTo(1, 12);
          }
        }
      }),
    );
  });

  it("do not depend on the order of figures", () => {
    fc.assert(
      fc.property(anyColumns, (columns) => {
        const turned = columns.map((compared) => ({
          ...compared,
          column: { ...compared.column, mm: Float64Array.from(compared.column.mm).reverse() },
        }));
        const there = toleranceDistances(columns, 5);
        const back = toleranceDistances(turned, 5);
        for (let i = 0; i < 5; i++) {
          for (let j = i + 1; j < 5; j++) {
            expect(pairDistance(back, 4 - i, 4 - j)).toBe(pairDistance(there, i, j));
          }
        }
      }),
    );
  });

  it("never fall when a measure is added that both figures have", () => {
    fc.assert(
      fc.property(anyColumns, (columns) => {
        const complete = columns.filter(({ column }) => !column.mm.some(Number.isNaN));
        fc.pre(complete.length > 1);
        const fewer = toleranceDistances(complete.slice(1), 5).values;
        toleranceDistances(complete, 5).values.forEach((distance, at) =>
          expect(distance).toBeGreaterThanOrEqual(fewer[at]! * (1 - 1e-12)),
        );
      }),
    );
  });
});

describe("apart", () => {
  const columns = comparedOf([
    [80, 60, 40, missing],
    [83, 56, 40, 20],
    [missing, missing, missing, 21],
  ]);

  it("names the worst measure and the second figure’s difference from the first", () => {
    expect(apart(columns, 0, 1)).toEqual({
      distance: 4,
      compared: 3,
      of: 4,
      worst: columns[1],
      deltaMm: -4,
      lacking: [],
    });
  });

  it("names no worst measure of equal figures", () => {
    expect(apart(columns, 1, 1)).toEqual({ distance: 0, compared: 4, of: 4, lacking: [] });
  });

  it("says what it could compare when the distance is not known", () => {
    const found = apart(columns, 1, 2);
    expect(found).toMatchObject({ compared: 1, of: 4, worst: columns[3], lacking: [] });
    expect(found.distance).toBeNaN();
  });

  it("says which required measure is lacking", () => {
    const required = columns.map((column, c) => ({ ...column, required: c === 3 }));
    const found = apart(required, 0, 1);
    expect(found.lacking).toEqual([required[3]]);
    expect(found.distance).toBeNaN();
  });
});
