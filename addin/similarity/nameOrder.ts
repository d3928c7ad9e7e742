import type { Chart } from "../chart/chart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";

/**
 * The figures of a chart in the order of their names. Whatever must not depend on the order of rows is worked out in
 * this order.
 */
export interface NameOrder {
  /** Where in the chart each figure stands, from 0, first name first. Figures of one name keep their order. */
  readonly order: readonly number[];
  /** The columns with their readings in that order. */
  readonly columns: readonly ComparedColumn[];
}

export function nameOrder(chart: Chart, columns: readonly ComparedColumn[]): NameOrder {
  const order = chart.figures.map((_, i) => i).sort((i, j) => compareNames(chart, i, j));
  const reordered = (mm: Float64Array) => Float64Array.from(order, (i) => mm[i] ?? Number.NaN);
  return {
    order,
    columns: columns.map((compared) => ({
      ...compared,
      column: { ...compared.column, mm: reordered(compared.column.mm) },
    })),
  };
}

/** By character codes, so that the order is the same on every machine; then by row. */
export function compareNames({ figures }: Chart, i: number, j: number): number {
  const a = figures[i] ?? "";
  const b = figures[j] ?? "";
  if (a === b) return i - j;
  return a < b ? -1 : 1;
}
