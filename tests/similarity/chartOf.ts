import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import type { Tolerance } from "../../addin/measures/measure.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";

/** A chart in mm from one row a figure. Dictionary ids as headings; any other heading is an unknown measure. */
export function chartOf(
  headings: readonly string[],
  rows: Readonly<Record<string, readonly number[]>> | readonly (readonly [string, readonly number[]])[],
): Chart {
  const entries: readonly (readonly [string, readonly number[]])[] = isList(rows)
    ? rows
    : Object.entries(rows);
  return {
    figures: entries.map(([figure]) => figure),
    rows: entries.map((_, i) => i + 1),
    measures: headings.map((heading, c) =>
      columnOf(
        heading,
        entries.map(([, readings]) => readings[c] ?? Number.NaN),
        c + 1,
      ),
    ),
    attributes: [],
    problems: [],
  };
}

function isList(
  rows: Readonly<Record<string, readonly number[]>> | readonly (readonly [string, readonly number[]])[],
): rows is readonly (readonly [string, readonly number[]])[] {
  return Array.isArray(rows);
}

function columnOf(heading: string, mm: readonly number[], position: number): MeasureColumn {
  const measure = measureById(heading);
  return {
    key: measure?.id ?? heading.toLowerCase(),
    heading,
    ...(measure && { measure }),
    kind: measure?.kind,
    zone: measure?.zone,
    unit: "mm",
    mm: Float64Array.from(mm),
    position,
  };
}

/** Columns of unknown measures, all with one tolerance, from one row a figure. */
export function comparedOf(
  rows: readonly (readonly number[])[],
  tolerance: Tolerance = { floorMm: 1, percent: 0 },
): readonly ComparedColumn[] {
  const width = rows[0]?.length ?? 0;
  return Array.from({ length: width }, (_, c) => ({
    column: columnOf(
      `Measure ${String(c + 1)}`,
      rows.map((row) => row[c] ?? Number.NaN),
      c + 1,
    ),
    tolerance,
    required: false,
  }));
}
