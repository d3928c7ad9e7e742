import type { MeasureColumn } from "../chart/chart.ts";
import { bestScale } from "./bestScale.ts";

/**
 * The figures of a run from the smallest to the largest, by the mean of the ratios of their measures to the base; those of
 * which too little is known are left out.
 *
 * @param base row of the base figure, of the chart
 * @param targets rows of the others
 * @param columns the measures that count
 */
export function runOrder(
  base: number,
  targets: readonly number[],
  columns: readonly MeasureColumn[],
): readonly number[] {
  const readingsOf = (row: number) => columns.map(({ mm }) => mm[row] ?? Number.NaN);
  const sized = [base, ...targets].map((row) => ({
    row,
    size: row === base ? 1 : bestScale(readingsOf(base), readingsOf(row)),
  }));
  return sized
    .filter(({ size }) => !Number.isNaN(size))
    .sort((a, b) => a.size - b.size)
    .map(({ row }) => row);
}
