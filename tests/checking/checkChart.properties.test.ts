import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { chartOf, cleanRows, grownRows, headings, withReading, type Rows } from "./bodies.ts";

const place = fc.record({ row: fc.nat(), column: fc.nat() });
const runs = { numRuns: 60, endOnFailure: true };

/** Folds any two natural numbers into the chart’s readings. */
function within(rows: Rows, { row, column }: { row: number; column: number }) {
  return { row: 1 + (row % rows.length), column: 1 + (column % (headings.length - 1)) };
}

/**
 * Plants one slip in each of many charts, and expects one flag, there; nearly always with the slip and the true reading. Now and
 * then two slips are as likely: 665 may be 66.5 with its point lost, or 65 with a digit doubled.
 */
function finds(slip: (mm: number) => number, kind: string): void {
  const cases = fc.sample(fc.tuple(cleanRows, place), { numRuns: 100, seed: 2203 });
  const right = cases.filter(([rows, anywhere]) => {
    const { row, column } = within(rows, anywhere);
    const trueMm = rows[row - 1]![column] as number;
    const flags = checkChart(chartOf(withReading(rows, row, column, slip)));
    expect(flags.map((flag) => [flag.row, flag.column])).toEqual([[row, column]]);
    const [flag] = flags;
    return flag?.kind === kind && Math.abs((flag.suggestedMm ?? Number.NaN) - trueMm) < 1e-6;
  });
  expect(right.length).toBeGreaterThanOrEqual(0.95 * cases.length);
}

describe("a chart of grown and child figures", () => {
  it("raises nothing when it is clean", () => {
    fc.assert(
      fc.property(cleanRows, (rows) => {
        expect(checkChart(chartOf(rows))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it("raises nothing when a third of the readings is missing", () => {
    fc.assert(
      fc.property(grownRows, fc.nat(1000), (rows, seed) => {
        const holes: Rows = rows.map(([name, ...readings], i) => [
          name,
          ...readings.map((mm, j) => (((i + 1) * (j + 3) * 7 + i + seed * (j + 1)) % 3 === 0 ? 0 : mm)),
        ]);
        const flags = checkChart(chartOf(holes)).filter(({ kind }) => kind !== "not a length");
        expect(flags).toEqual([]);
      }),
      runs,
    );
  });

  it("shows a reading in inches among millimetres, with the true value", () =>
    finds((mm) => mm / 25.4, "wrong unit"));
  it("shows a reading in centimetres, with the true value", () => finds((mm) => mm / 10, "wrong unit"));
  it("shows a lost decimal point, with the true value", () => finds((mm) => mm * 10, "wrong unit"));

  it("says the same whatever the unit of the chart", () => {
    fc.assert(
      fc.property(cleanRows, place, (rows, anywhere) => {
        const { row, column } = within(rows, anywhere);
        const planted = withReading(rows, row, column, (mm) => mm / 25.4);
        const inMm = chartOf(planted);
        const inCm = { ...inMm, measures: inMm.measures.map((one) => ({ ...one, unit: "cm" as const })) };
        const places = (flags: ReturnType<typeof checkChart>) => flags.map((flag) => [flag.row, flag.column]);
        expect(places(checkChart(inCm))).toEqual(places(checkChart(inMm)));
      }),
      { numRuns: 20 },
    );
  });

  it("shows a figure whose readings are all in another unit, and puts each right", () => {
    const scales = fc.constantFrom({ factor: 10, says: "centimetres" }, { factor: 25.4, says: "inches" });
    fc.assert(
      fc.property(cleanRows, fc.nat(), scales, (rows, any, { factor, says }) => {
        const row = any % rows.length;
        const planted: Rows = rows.map(([name, ...readings], i) => [
          name,
          ...readings.map((mm, j) => (i === row && j > 0 ? mm / factor : mm)),
        ]);
        const flags = checkChart(chartOf(planted));
        expect(flags.map(({ kind, figure }) => [kind, figure])).toEqual([
          ["whole row in a wrong unit", rows[row]![0]],
        ]);
        expect(flags[0]!.why).toContain(says);
        expect(flags[0]!.corrections).toHaveLength(headings.length - 2);
        for (const { column, mm } of flags[0]!.corrections) {
          expect(mm).toBeCloseTo(rows[row]![column] as number, 6);
        }
      }),
      runs,
    );
  });

  it("shows a column that is in another unit than its heading says, and puts each reading right", () => {
    fc.assert(
      fc.property(cleanRows, fc.integer({ min: 2, max: headings.length - 1 }), (rows, column) => {
        const planted: Rows = rows.map(([name, ...readings]) => [
          name,
          ...readings.map((mm, j) => (j + 1 === column ? mm / 10 : mm)),
        ]);
        const flags = checkChart(chartOf(planted));
        expect(flags.map((flag) => [flag.kind, flag.row, flag.column])).toEqual([
          ["whole column in a wrong unit", 0, column],
        ]);
        for (const { row, mm } of flags[0]!.corrections) {
          expect(mm).toBeCloseTo(rows[row - 1]![column] as number, 6);
        }
        expect(flags[0]!.corrections).toHaveLength(rows.length);
      }),
      runs,
    );
  });
});
