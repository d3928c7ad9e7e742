import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { Correction, Flag } from "./flag.ts";
import { proportions, type Proportions } from "./proportions.ts";
import { usualShareOfHeight } from "../measures/usualShareOfHeight.ts";

/** One reading’s place: figure and measure by their position in the chart’s lists. */
export interface Place {
  readonly figure: number;
  readonly column: number;
}

/** A place as a text, for sets of places. */
export function keyOf({ figure, column }: Place): string {
  return `${String(figure)} ${String(column)}`;
}

/** Measures that do not grow with the figure. */
const notProportional: ReadonlySet<string> = new Set(["heelHeight"]);

/** ln(mm), figure by figure; NaN for missing readings and for measures that do not grow with the figure. */
export function logReadings(chart: Chart): number[][] {
  return chart.figures.map((_, i) =>
    chart.measures.map(({ key, mm }) =>
      mm[i]! > 0 && !notProportional.has(key) ? Math.log(mm[i]!) : Number.NaN,
    ),
  );
}

/** ln of each measure’s usual share of height; NaN where the dictionary does not know the measure. */
export function usualLogs(chart: Chart): readonly number[] {
  return chart.measures.map(({ key }) => Math.log(usualShareOfHeight[key] ?? Number.NaN));
}

/** What is usual in a chart, see {@link proportions}. */
export function chartProportions(chart: Chart): Proportions | undefined {
  return proportions(logReadings(chart), usualLogs(chart));
}

/** The chart with some readings multiplied by a factor. */
export function withFactor(chart: Chart, places: readonly Place[], factor: number): Chart {
  const measures = chart.measures.map((column, j) => {
    const figures = places.filter((place) => place.column === j).map(({ figure }) => figure);
    if (figures.length === 0) return column;
    const mm = Float64Array.from(column.mm);
    for (const figure of figures) mm[figure]! *= factor;
    return { ...column, mm };
  });
  return { ...chart, measures };
}

export function columnAt(chart: Chart, column: number): MeasureColumn {
  return chart.measures[column]!;
}

export function correctionAt(chart: Chart, { figure, column }: Place, mm: number): Correction {
  return { row: chart.rows[figure]!, column: columnAt(chart, column).position, mm };
}

/** Corrections that multiply readings by a factor. */
export function correctionsBy(chart: Chart, places: readonly Place[], factor: number): readonly Correction[] {
  return places.map((place) =>
    correctionAt(chart, place, columnAt(chart, place.column).mm[place.figure]! * factor),
  );
}

/** A flag on one reading. */
export function cellFlag(
  chart: Chart,
  place: Place,
  { kind, why, corrections = [] }: Pick<Flag, "kind" | "why"> & Partial<Pick<Flag, "corrections">>,
): Flag {
  const { position, heading, unit, mm } = columnAt(chart, place.column);
  const row = chart.rows[place.figure]!;
  const own = corrections.find((correction) => correction.row === row && correction.column === position);
  return {
    figure: chart.figures[place.figure]!,
    row,
    column: position,
    measure: heading,
    unit,
    readingMm: mm[place.figure]!,
    kind,
    why,
    ...(own ? { suggestedMm: own.mm } : {}),
    corrections,
  };
}

/** A flag on a whole row, at the figure’s name. */
export function rowFlag(
  chart: Chart,
  figure: number,
  { kind, why, corrections = [] }: Pick<Flag, "kind" | "why"> & Partial<Pick<Flag, "corrections">>,
): Flag {
  return {
    figure: chart.figures[figure]!,
    row: chart.rows[figure]!,
    column: 0,
    measure: "",
    unit: chart.measures[0]?.unit ?? "mm",
    kind,
    why,
    corrections,
  };
}

/** A flag on a whole column, at its heading. */
export function columnFlag(
  chart: Chart,
  column: number,
  { kind, why, corrections = [] }: Pick<Flag, "kind" | "why"> & Partial<Pick<Flag, "corrections">>,
): Flag {
  const { position, heading, unit } = columnAt(chart, column);
  return { figure: "", row: 0, column: position, measure: heading, unit, kind, why, corrections };
}
