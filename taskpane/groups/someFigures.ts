import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";

/** A chart and its compared columns with some of the figures only. */
export function someFigures(
  chart: Chart,
  columns: readonly ComparedColumn[],
  places: readonly number[],
): { readonly chart: Chart; readonly columns: readonly ComparedColumn[] } {
  const cut = (column: MeasureColumn): MeasureColumn => ({
    ...column,
    mm: Float64Array.from(places, (place) => column.mm[place] ?? Number.NaN),
  });
  return {
    chart: {
      ...chart,
      figures: places.map((place) => chart.figures[place] ?? ""),
      rows: places.map((place) => chart.rows[place] ?? 0),
      measures: chart.measures.map(cut),
      attributes: chart.attributes.map((column) => ({
        ...column,
        values: places.map((place) => column.values[place] ?? ""),
      })),
    },
    columns: columns.map((compared) => ({ ...compared, column: cut(compared.column) })),
  };
}
