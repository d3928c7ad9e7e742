import type { Chart } from "./chart.ts";

/** A cell, by row and column within the range, from 0 (row 0 is the headings). */
interface CellPlace {
  readonly row: number;
  readonly column: number;
}

interface CellReading extends CellPlace {
  readonly mm: number;
}

/** A reading of a chart that answers should not rest on without saying so: flagged, or an estimate. */
export interface Doubt {
  /** The cells, by row and column within the range. */
  readonly cells: readonly CellPlace[];
  /** Whose reading it is; empty where it is about a whole row or column. */
  readonly figure: string;
  /** “Waist 129 mm (digits swapped)” */
  readonly says: string;
  /** What would put it right; empty where that is not known. */
  readonly corrections: readonly CellReading[];
}

/** The chart as it would be with other readings in some cells; a place alone takes its reading out. */
export function chartWith(chart: Chart, cells: readonly (CellPlace | CellReading)[]): Chart {
  const placeOf = new Map(chart.rows.map((row, place) => [row, place]));
  const measures = chart.measures.map((column) => {
    const own = cells.filter((cell) => cell.column === column.position);
    if (own.length === 0) return column;
    const mm = Float64Array.from(column.mm);
    for (const cell of own) {
      const place = placeOf.get(cell.row);
      if (place !== undefined) mm[place] = "mm" in cell ? cell.mm : Number.NaN;
    }
    return { ...column, mm };
  });
  return { ...chart, measures };
}
