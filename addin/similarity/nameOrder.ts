import type { Chart } from "../chart/chart.ts";
import type { ComparedColumn } from "./columns.ts";

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

export function nameOrder(chart: Pick<Chart, "figures">, columns: readonly ComparedColumn[]): NameOrder {
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

/** As people order names, then by row. */
export function compareNames({ figures }: Pick<Chart, "figures">, i: number, j: number): number {
  return naturalOrder(figures[i] ?? "", figures[j] ?? "") || i - j;
}

/**
 * Numbers within names by their size (“Size 2” before “Size 10”), all else by character codes, so that the order is the
 * same on every machine.
 */
export function naturalOrder(a: string, b: string): number {
  const ofA = textsAndNumbers(a);
  const ofB = textsAndNumbers(b);
  for (let part = 0; part < Math.min(ofA.length, ofB.length); part++) {
    const [x, y] = [ofA[part]!, ofB[part]!];
    const isNumber = part % 2 === 1;
    if (isNumber && Number(x) !== Number(y)) return Number(x) - Number(y);
    if (!isNumber && x !== y) return x < y ? -1 : 1;
  }
  if (a === b) return 0;
  return ofA.length - ofB.length || (a < b ? -1 : 1);
}

/** Text and numbers in turn, text first: “Size 10” → “Size ”, “10”, “”. */
function textsAndNumbers(name: string): readonly string[] {
  return name.split(/(\d+)/);
}
