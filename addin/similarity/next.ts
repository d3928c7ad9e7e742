import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { Tolerance } from "../measures/measure.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import type { ComparedColumn } from "./columns.ts";
import { isKnown, isWithin, roundDistance } from "./pair.ts";
import { compareNames } from "./nameOrder.ts";

/** A reading that is missing, and what it would settle. */
export interface NextReading {
  readonly figure: string;
  /** Where the figure stands in the chart, from 0. */
  readonly place: number;
  readonly column: MeasureColumn;
  /** Number of open pairs that this reading alone would answer. */
  readonly settles: number;
  /** Number of open pairs that cannot be answered without it, or lack too many readings of which it is one. */
  readonly neededBy: number;
}

/**
 * The missing readings that would settle most pairs of figures, best first. A pair is open when nobody can say yet whether
 * the two share a body: no measure is beyond its tolerance, and the distance is not known (see `toleranceDistances`).
 *
 * Of equal ones that which more pairs wait for, then the first figure by name, then the first column.
 *
 * Time grows with the square of the number of figures.
 *
 * @param columns see `comparedColumns`
 */
export function nextReadings(chart: Chart, columns: readonly ComparedColumn[]): readonly NextReading[] {
  const size = chart.figures.length;
  const width = columns.length;
  const settles = new Int32Array(size * width);
  const neededBy = new Int32Array(size * width);
  const readings = readingsByFigure(columns, size);
  const gapsOf = chart.figures.map((_, figure) => gaps(columns, figure));
  for (let i = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++) {
      if (gapsOf[i]!.length === 0 && gapsOf[j]!.length === 0) continue;
      const pair = compare(readings, i, j);
      if (!pair || isKnown(pair.compared, width, pair.required > 0)) continue;
      const isShort = !isKnown(pair.compared + pair.required, width, false);
      const isNextEnough = isKnown(pair.compared + 1, width, false);
      for (let side = 0; side < 2; side++) {
        const figure = side === 0 ? i : j;
        const other = side === 0 ? j : i;
        for (const c of gapsOf[figure]!) {
          const at = figure * width + c;
          if (columns[c]!.required || isShort) neededBy[at]!++;
          const isLast = pair.required === 0 || (pair.required === 1 && pair.lastRequired === c);
          const hasOther = !Number.isNaN(readings.mm[other * width + c]!);
          if (isNextEnough && isLast && hasOther) settles[at]!++;
        }
      }
    }
  }
  return chart.figures
    .flatMap((figure, i) =>
      gapsOf[i]!.map((c) => ({
        i,
        c,
        figure,
        settles: settles[i * width + c]!,
        neededBy: neededBy[i * width + c]!,
      })),
    )
    .filter((reading) => reading.neededBy > 0)
    .sort(
      (a, b) =>
        b.settles - a.settles || b.neededBy - a.neededBy || compareNames(chart, a.i, b.i) || a.c - b.c,
    )
    .map(({ i, c, figure, ...counts }) => ({
      figure,
      place: i,
      column: columns[c]!.column,
      settles: counts.settles,
      neededBy: counts.neededBy,
    }));
}

/** The columns in which a figure has no reading. */
function gaps(columns: readonly ComparedColumn[], figure: number): readonly number[] {
  return columns.flatMap(({ column }, c) => (Number.isNaN(column.mm[figure] ?? Number.NaN) ? [c] : []));
}

/** Readings figure by figure, so that a pair is compared along two runs of memory. */
interface Readings {
  readonly mm: Float64Array;
  readonly tolerances: readonly Tolerance[];
  readonly isRequired: readonly boolean[];
}

function readingsByFigure(columns: readonly ComparedColumn[], size: number): Readings {
  const width = columns.length;
  const mm = new Float64Array(size * width);
  columns.forEach(({ column }, c) => {
    for (let figure = 0; figure < size; figure++) mm[figure * width + c] = column.mm[figure] ?? Number.NaN;
  });
  return {
    mm,
    tolerances: columns.map(({ tolerance }) => tolerance),
    isRequired: columns.map(({ required }) => required),
  };
}

/** What of a pair is known. */
interface Pair {
  /** Number of measures that both have. */
  readonly compared: number;
  /** Number of required measures that one of the two lacks, and the last of them. */
  readonly required: number;
  readonly lastRequired: number;
}

/** `undefined` when a measure that both have is beyond its tolerance: no further reading changes that. */
function compare({ mm, tolerances, isRequired }: Readings, i: number, j: number): Pair | undefined {
  const width = tolerances.length;
  let compared = 0;
  let required = 0;
  let lastRequired = -1;
  for (let c = 0; c < width; c++) {
    const a = mm[i * width + c]!;
    const b = mm[j * width + c]!;
    const difference = Math.abs(a - b);
    if (Number.isNaN(difference)) {
      if (isRequired[c]) {
        required++;
        lastRequired = c;
      }
      continue;
    }
    compared++;
    const limit = toleranceMm(tolerances[c]!, a, b);
    if (difference > limit && !isWithin(roundDistance(difference / limit), 1)) return undefined;
  }
  return { compared, required, lastRequired };
}
