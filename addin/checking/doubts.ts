import type { Chart } from "../chart/chart.ts";
import { amount } from "./amount.ts";
import { checkChart } from "./checkChart.ts";
import type { Correction, FlagKind } from "./flag.ts";

/** A reading of a chart that answers should not rest on without saying so: flagged, or an estimate. */
export interface Doubt {
  /** The cells, by row and column within the range. */
  readonly cells: readonly { readonly row: number; readonly column: number }[];
  /** “Waist 129 mm (digits swapped)” */
  readonly says: string;
  /** What would put it right; empty where that is not known. */
  readonly corrections: readonly Correction[];
}

/** Flags that say nothing against a reading. */
const notes: ReadonlySet<FlagKind> = new Set([
  "unlike the other figures",
  "one name, two rows",
  "same readings, two names",
  "estimates",
  "unit assumed",
]);

/** Every doubt about the readings of a chart, the worst first; estimates come last. */
export function doubts(chart: Chart): readonly Doubt[] {
  const flagged = checkChart(chart).flatMap((flag): readonly Doubt[] => {
    const { row, column, readingMm, corrections, kind, measure, figure, unit } = flag;
    if (notes.has(kind) || (readingMm === undefined && corrections.length === 0)) return [];
    const what =
      readingMm === undefined
        ? measure || `every reading of ${figure}`
        : `${measure} ${amount(readingMm, unit)}`;
    return [
      {
        cells: corrections.length > 0 ? corrections : [{ row, column }],
        says: `${what} (${kind})`,
        corrections,
      },
    ];
  });
  const estimated = chart.measures.flatMap(({ origins, mm, unit, heading, position }) =>
    [...(origins ?? [])].flatMap(([figure, origin]): readonly Doubt[] =>
      origin === "estimated"
        ? [
            {
              cells: [{ row: chart.rows[figure]!, column: position }],
              says: `${heading} ${amount(mm[figure]!, unit)} (an estimate)`,
              corrections: [],
            },
          ]
        : [],
    ),
  );
  return [...flagged, ...estimated];
}

/** The chart as it would be with other readings in some cells; `undefined` takes a reading out. */
export function chartWith(
  chart: Chart,
  cells: readonly { readonly row: number; readonly column: number; readonly mm?: number }[],
): Chart {
  const measures = chart.measures.map((column) => {
    const own = cells.filter((cell) => cell.column === column.position);
    if (own.length === 0) return column;
    const mm = Float64Array.from(column.mm);
    for (const cell of own) mm[chart.rows.indexOf(cell.row)] = cell.mm ?? Number.NaN;
    return { ...column, mm };
  });
  return { ...chart, measures };
}
