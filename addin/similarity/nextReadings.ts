import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { isKnown } from "./known.ts";
import { compareNames } from "./nameOrder.ts";
import { roundDistance } from "./roundDistance.ts";
import { isWithin } from "./within.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";

/** A reading that is missing, and what it would settle. */
export interface NextReading {
  readonly figure: string;
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
 * @param columns see `comparedColumns`
 */
export function nextReadings(chart: Chart, columns: readonly ComparedColumn[]): readonly NextReading[] {
  const size = chart.figures.length;
  const width = columns.length;
  const settles = new Int32Array(size * width);
  const neededBy = new Int32Array(size * width);
  const gapsOf = chart.figures.map((_, figure) => gaps(columns, figure));
  for (let i = 0; i < size; i++) {
    for (let j = i + 1; j < size; j++) {
      const gapsHere = [gapsOf[i]!, gapsOf[j]!] as const;
      if (gapsHere.every((each) => each.length === 0) || isDifferent(columns, i, j)) continue;
      const missing = new Set(gapsHere.flat());
      const compared = width - missing.size;
      const required = [...missing].filter((c) => columns[c]!.required);
      if (isKnown(compared, width, required.length > 0)) continue;
      const isShort = !isKnown(compared + required.length, width, false);
      for (const [figure, other] of [
        [i, j],
        [j, i],
      ] as const) {
        for (const c of gapsOf[figure]!) {
          const at = figure * width + c;
          if (columns[c]!.required || isShort) neededBy[at]!++;
          const isLast = required.every((each) => each === c) && !gapsOf[other]!.includes(c);
          if (isLast && isKnown(compared + 1, width, false)) settles[at]!++;
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
    .map(({ c, figure, ...counts }) => ({
      figure,
      column: columns[c]!.column,
      settles: counts.settles,
      neededBy: counts.neededBy,
    }));
}

/** The columns in which a figure has no reading. */
function gaps(columns: readonly ComparedColumn[], figure: number): readonly number[] {
  return columns.flatMap(({ column }, c) => (Number.isNaN(column.mm[figure] ?? Number.NaN) ? [c] : []));
}

/** True when a measure that both have is beyond its tolerance: no further reading changes that. */
function isDifferent(columns: readonly ComparedColumn[], i: number, j: number): boolean {
  return columns.some(({ column, tolerance }) => {
    const a = column.mm[i] ?? Number.NaN;
    const b = column.mm[j] ?? Number.NaN;
    const difference = Math.abs(a - b);
    return difference > 0 && !isWithin(roundDistance(difference / toleranceMm(tolerance, a, b)), 1);
  });
}
