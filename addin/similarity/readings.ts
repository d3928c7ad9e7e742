import type { ComparedColumn } from "./comparedColumns.ts";

/**
 * Two figures count as compared when both have readings of at least this share of the measures. The project’s own
 * starting value.
 */
export const leastComparedShare = 0.5;

/** True when enough measures could be compared. */
export function isEnough(compared: number, of: number): boolean {
  return compared > 0 && compared >= of * leastComparedShare;
}

/** Readings laid out figure by figure, so that the comparison of two figures reads memory in a row. */
export interface Readings {
  readonly size: number;
  readonly width: number;
  /** size × width, in mm; NaN is missing. */
  readonly mm: Float64Array;
  readonly columns: readonly ComparedColumn[];
}

export function readingsByFigure(columns: readonly ComparedColumn[], size: number): Readings {
  const width = columns.length;
  const mm = new Float64Array(size * width);
  columns.forEach(({ column }, c) => {
    for (let i = 0; i < size; i++) mm[i * width + c] = column.mm[i] ?? Number.NaN;
  });
  return { size, width, mm, columns };
}
