import fc from "fast-check";
import { expect, it } from "vitest";
import { medianPolish } from "../../addin/checking/medianPolish.ts";

const reading = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -5, max: 5, noNaN: true }) },
  fc.constant(Number.NaN),
);
const table = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .chain(([n, m]) =>
    fc.array(fc.array(reading, { minLength: m, maxLength: m }), { minLength: n, maxLength: n }),
  );

it("always adds up to the readings", () => {
  fc.assert(
    fc.property(table, (rows) => {
      const { overall, rows: r, columns: c, residuals } = medianPolish(rows);
      rows.forEach((row, i) =>
        row.forEach((value, j) => {
          if (Number.isNaN(value)) expect(residuals[i]![j]).toBeNaN();
          else expect(overall + r[i]! + c[j]! + residuals[i]![j]!).toBeCloseTo(value, 9);
        }),
      );
    }),
  );
});

it("leaves a single wild value in its own residual", () => {
  const rows = [0, 1, 2, 3, 4].map((i) => [0, 10, 20, 30, 40].map((j) => i + j));
  rows[1]![3]! += 100;
  const { residuals } = medianPolish(rows);
  expect(residuals[1]![3]).toBe(100);
  expect(residuals.flat().filter((value) => value !== 0)).toEqual([100]);
});

it("takes empty tables, empty rows and empty columns", () => {
  expect(medianPolish([]).overall).toBe(0);
  const { rows, columns } = medianPolish([
    [1, Number.NaN],
    [Number.NaN, Number.NaN],
  ]);
  expect(rows).toEqual([0, Number.NaN]);
  expect(columns).toEqual([0, Number.NaN]);
});
