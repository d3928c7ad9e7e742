import fc from "fast-check";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";

/** Measures with their share of height on a grown and on a child figure, in proportions that are common in dolls. */
const shares: readonly (readonly [heading: string, grown: number, child: number])[] = [
  ["Height", 1, 1],
  ["Head", 0.41, 0.56],
  ["Neck", 0.17, 0.195],
  ["Bust", 0.455, 0.465],
  ["Under-bust", 0.385, 0.425],
  ["Waist", 0.335, 0.43],
  ["Hip", 0.485, 0.5],
  ["Back waist length", 0.22, 0.21],
  ["Arm length", 0.32, 0.29],
  ["Upper arm", 0.135, 0.15],
  ["Wrist", 0.085, 0.1],
  ["Inside leg", 0.465, 0.4],
  ["Thigh", 0.275, 0.285],
  ["Knee", 0.18, 0.205],
  ["Calf", 0.19, 0.2],
  ["Ankle", 0.11, 0.135],
];
export const headings: readonly string[] = ["Figure", ...shares.map(([heading]) => `${heading} (mm)`)];

/** A chart of figures of many sizes, each with proportions of its own, read to 0.5 mm: name first, then readings in mm. */
export type Rows = readonly (readonly [name: string, ...readings: number[]])[];

/** Without the bias to round numbers, which would make many figures copies of one another but for a reading. */
const stray = fc.noBias(fc.double({ min: -0.03, max: 0.03, noNaN: true }));

const figure = (child: boolean) =>
  fc
    .tuple(
      fc.double({ min: 250, max: 560, noNaN: true }),
      fc.array(stray, { minLength: shares.length, maxLength: shares.length }),
    )
    .map(([height, strays]) =>
      shares.map(([, grown, young], j) => {
        const share = child ? young : grown;
        return Math.round(height * share * Math.exp(j === 0 ? 0 : strays[j]!) * 2) / 2;
      }),
    );

/** Grown figures only. */
export const grownRows: fc.Arbitrary<Rows> = fc
  .array(figure(false), { minLength: 8, maxLength: 20 })
  .map(named);

/** Grown figures, and some children among them. */
export const cleanRows: fc.Arbitrary<Rows> = fc
  .tuple(
    fc.array(figure(false), { minLength: 8, maxLength: 16 }),
    fc.oneof(fc.constant([]), fc.array(figure(true), { minLength: 4, maxLength: 6 })),
  )
  .map(([grown, children]) => named([...grown, ...children]));

function named(figures: readonly (readonly number[])[]): Rows {
  return figures.map((readings, i) => [`Figure ${String(i + 1)}`, ...readings]);
}

export function chartOf(rows: Rows): Chart {
  return readChart([headings, ...rows]);
}

/** The chart with one reading changed. `row` and `column` are those of the range: 1 is the first figure, the first measure. */
export function withReading(rows: Rows, row: number, column: number, change: (mm: number) => number): Rows {
  return rows.map(([name, ...readings], i) => [
    name,
    ...readings.map((mm, j) => (i === row - 1 && j === column - 1 ? change(mm) : mm)),
  ]);
}
