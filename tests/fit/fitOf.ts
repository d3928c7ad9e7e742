import type { Cell, Cells } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatterns } from "../../addin/chart/readPatterns.ts";
import type { Explanation } from "../../addin/fit/explainPair.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import type { FitOptions, Fitting } from "../../addin/fit/match.ts";
import { matchAll, prepareFitting } from "../../addin/fit/match.ts";

/** An invented figure, mm. */
export const wisp = {
  Head: 160,
  Neck: 66,
  Bust: 180,
  Waist: 134,
  Hip: 194,
  "Upper arm": 50,
  Wrist: 33,
  Hand: 40,
  "Arm length": 128,
  "Back waist": 88,
  Calf: 74,
  Ankle: 44,
  Heel: 62,
  "Foot length": 52,
} as const;

export type Row = Readonly<Record<string, Cell>>;

/** Rows of named cells → a table with a heading for every name. */
export function table(first: string, rows: Readonly<Record<string, Row>>): Cells {
  const headings = [...new Set(Object.values(rows).flatMap((row) => Object.keys(row)))];
  return [
    [first, ...headings],
    ...Object.entries(rows).map(([name, row]) => [name, ...headings.map((heading) => row[heading])]),
  ];
}

export function chartWith(rows: Readonly<Record<string, Row>>): Chart {
  return readChart(table("Figure", rows), { unit: "mm" });
}

/** Patterns on figures, by the readers of the tables. */
export function fittingOf(
  patterns: Readonly<Record<string, Row>>,
  figures: Readonly<Record<string, Row>>,
  options: FitOptions = {},
): Fitting {
  const chart = chartWith(figures);
  return prepareFitting(readPatterns(table("Pattern", patterns), chart, { unit: "mm" }), chart, options);
}

/** The last of the patterns on one figure, with its reasons. */
export function explain(
  patterns: Readonly<Record<string, Row>>,
  figure: Row = wisp,
  options: FitOptions = {},
): Explanation {
  const fitting = fittingOf(patterns, { Wisp: figure }, options);
  return explainPair(fitting, fitting.patterns.length - 1, 0);
}

/** The verdict of one garment on one figure. */
export function verdict(garment: Row, figure: Row = wisp, options: FitOptions = {}): string {
  return matchAll(fittingOf({ G: garment }, { Wisp: figure }, options)).verdict(0, 0);
}
