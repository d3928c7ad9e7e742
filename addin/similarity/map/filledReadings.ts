import type { Chart } from "../../chart/chart.ts";
import { chartModel } from "../../checking/chartModel.ts";
import { medianOf } from "../../checking/medianOf.ts";
import { medianPolish } from "../../checking/medianPolish.ts";
import { proportions } from "../../checking/proportions.ts";
import { logReadings, usualLogs } from "../../checking/readings.ts";
import type { ComparedColumn } from "../columns.ts";

/** Readings without gaps, for a picture of all figures. What was filled in is an estimate, never a reading. */
export interface FilledReadings {
  /** By column and figure, in mm; NaN only for a figure without any reading. */
  readonly mm: readonly Float64Array[];
  /** How many readings of each figure were filled in. */
  readonly estimated: Int32Array;
  /** True for a figure without any reading of the columns. */
  readonly isEmpty: readonly boolean[];
}

/** In larger charts the figures of most similar build are not asked: that would take too long. */
const mostForBuild = 1000;

/**
 * Missing readings from what is in proportion: as `expectedValue` gives them; where the chart is too small or too large for
 * that, by a median polish of ln(mm) over the columns (Tukey 1977); for a measure that does not grow with the figure the
 * median of its readings.
 *
 * @param columns of the chart, with their readings in its order
 */
export function filledReadings(
  chart: Chart,
  columns: readonly Pick<ComparedColumn, "column">[],
): FilledReadings {
  const mm = columns.map(({ column }) => Float64Array.from(chart.figures, (_, i) => column.mm[i] ?? NaN));
  const isEmpty = chart.figures.map((_, i) => mm.every((readings) => Number.isNaN(readings[i])));
  const estimated = Int32Array.from(chart.figures, (_, i) =>
    isEmpty[i] ? 0 : mm.filter((readings) => Number.isNaN(readings[i])).length,
  );
  if (estimated.some((count) => count > 0)) {
    const estimate = estimator(chart, columns);
    mm.forEach((readings, c) => {
      readings.forEach((reading, i) => {
        if (Number.isNaN(reading) && !isEmpty[i]) readings[i] = estimate(i, c);
      });
    });
  }
  return { mm, estimated, isEmpty };
}

function estimator(
  chart: Chart,
  columns: readonly Pick<ComparedColumn, "column">[],
): (figure: number, c: number) => number {
  const places = columns.map(({ column }) =>
    chart.measures.findIndex(({ position }) => position === column.position),
  );
  const logs = logReadings(chart);
  const fit = chart.figures.length > mostForBuild ? undefined : proportions(logs, usualLogs(chart));
  const model = fit && chartModel(fit);
  const polish = medianPolish(logs.map((row) => places.map((place) => row[place] ?? Number.NaN)));
  const medians = columns.map(({ column }) => medianOf(column.mm));
  return (figure, c) => {
    const inProportion = model?.expected(figure, places[c]!) ?? Number.NaN;
    const polished = polish.overall + polish.rows[figure]! + polish.columns[c]!;
    return Math.exp(inProportion) || Math.exp(polished) || medians[c]!;
  };
}
