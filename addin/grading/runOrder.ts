import type { MeasureColumn } from "../chart/chart.ts";
import { printScale } from "./printScale.ts";

/**
 * The figures of a run from the smallest to the largest, by the print scale from the base; those of which too little is
 * known are left out.
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
  const sized = [base, ...targets].map((row) => ({
    row,
    size: row === base ? 1 : printScale(base, row, columns).factor,
  }));
  return sized
    .filter(({ size }) => !Number.isNaN(size))
    .sort((a, b) => a.size - b.size)
    .map(({ row }) => row);
}
