import { someOf } from "../measures/quote.ts";
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

/** The doubts by the row of the range that they are about. */
export function doubtsByRow(doubtful: readonly Doubt[]): ReadonlyMap<number, readonly Doubt[]> {
  const ofRow = new Map<number, Doubt[]>();
  for (const doubt of doubtful)
    for (const row of new Set(doubt.cells.map((cell) => cell.row))) {
      const known = ofRow.get(row);
      if (known) known.push(doubt);
      else ofRow.set(row, [doubt]);
    }
  return ofRow;
}

/** The chart as it would be with every doubtful reading mended, or taken out where nobody knows what it ought to be. */
export function mended(chart: Chart, doubtful: readonly Doubt[]): Chart {
  return chartWith(chart, doubtful.flatMap(mendedCells));
}

function mendedCells(doubt: Doubt): readonly (CellPlace | CellReading)[] {
  return doubt.corrections.length > 0 ? doubt.corrections : placesOf(doubt);
}

/** Where the doubtful readings stand, for {@link chartWith} to take them out. */
export function placesOf({ cells }: Pick<Doubt, "cells">): readonly CellPlace[] {
  return cells.map(({ row, column }) => ({ row, column }));
}

/** What a doubt says, with the name of its figure where the answer is about another one. */
export function doubtSays({ figure, says }: Doubt, about?: string): string {
  return figure === "" || figure === about ? says : `${figure}, ${says}`;
}

/** “Rests on a doubtful reading: Waist 13.4 mm (wrong unit).” */
export function restsOnWords(says: readonly string[]): string {
  const what = says.length === 1 ? "a doubtful reading" : "doubtful readings";
  return `Rests on ${what}: ${someOf(says)}.`;
}
