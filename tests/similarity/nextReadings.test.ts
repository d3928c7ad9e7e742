import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { nextReadings } from "../../addin/similarity/next.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { chartOf } from "./chartOf.ts";

const no = Number.NaN;
const headings = ["bustGirth", "waistGirth", "hipGirth"];
const compare = (chart: Chart, required = headings): readonly ComparedColumn[] =>
  chart.measures.map((column) => ({
    column,
    tolerance: { floorMm: 2, percent: 0 },
    required: required.includes(column.key),
  }));
const told = (chart: Chart, required?: string[]) =>
  nextReadings(chart, compare(chart, required)).map((next) => [
    next.figure,
    next.column.key,
    next.settles,
    next.neededBy,
  ]);

describe("nextReadings", () => {
  it("puts first the reading that answers most pairs, and leaves out what nobody waits for", () => {
    const chart = chartOf(headings, {
      A: [100, 80, 110],
      B: [101, no, 110],
      C: [101, 81, no],
      D: [150, 120, no], // too different from all others to matter
      E: [100, 80, 111],
    });
    expect(told(chart)).toEqual([
      ["B", "waistGirth", 2, 3],
      ["C", "hipGirth", 2, 3],
    ]);
  });

  it("counts a pair as waiting, not as answered, when it needs two readings", () => {
    const chart = chartOf(headings, { A: [100, no, 110], B: [101, no, 110] });
    expect(told(chart)).toEqual([
      ["A", "waistGirth", 0, 1],
      ["B", "waistGirth", 0, 1],
    ]);
  });

  it("takes any measure where too few are known", () => {
    const chart = chartOf(["tail", "ear", "paw", "nose"], { B: [1, no, no, no], A: [1, 2, no, 3] });
    expect(told(chart)).toEqual([
      ["B", "ear", 1, 1],
      ["B", "nose", 1, 1],
      ["A", "paw", 0, 1],
      ["B", "paw", 0, 1],
    ]);
  });

  it("is empty when nothing is missing", () => {
    expect(told(chartOf(headings, { A: [1, 2, 3], B: [1, 2, 3] }))).toEqual([]);
  });

  it("settles the open pairs that filling in the reading makes known, and every such reading is listed", () => {
    const reading = fc.option(fc.integer({ min: 100, max: 103 }), { nil: no, freq: 2 });
    const row = fc.array(reading, { minLength: 5, maxLength: 5 });
    const make = (rows: readonly (readonly number[])[]) =>
      chartOf(
        [...headings, "tail", "ear"],
        rows.map((each, i) => [`F${String(i)}`, each] as const),
      );
    const isKnown = (rows: readonly (readonly number[])[]) => {
      const { values } = toleranceDistances(compare(make(rows)), rows.length);
      return [...values].map((distance) => !Number.isNaN(distance));
    };
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 6 }), (rows) => {
        const chart = make(rows);
        const before = isKnown(rows);
        const isClear = rows.flatMap((a, i) =>
          rows.slice(i + 1).map((b) => a.some((mm, c) => Math.abs(mm - b[c]!) > 2)),
        );
        const listed = nextReadings(chart, compare(chart));
        rows.forEach((own, figure) => {
          own.forEach((mm, column) => {
            if (!Number.isNaN(mm)) return;
            const after = isKnown(
              rows.map((each, i) => each.map((old, c) => (i === figure && c === column ? 101 : old))),
            );
            const expected = after.filter((now, pair) => now && !before[pair] && !isClear[pair]).length;
            const found = listed.find(
              (next) =>
                next.figure === chart.figures[figure] && next.column.key === chart.measures[column]!.key,
            );
            expect(found?.settles ?? 0).toBe(expected);
            expect(found?.neededBy ?? 0).toBeGreaterThanOrEqual(expected);
          });
        });
      }),
      { numRuns: 100 },
    );
  });
});
