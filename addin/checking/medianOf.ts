import { median } from "simple-statistics";

/** Median of the known values; NaN when there is none. */
export function medianOf(values: Iterable<number>): number {
  const known = Array.from(values).filter((value) => !Number.isNaN(value));
  return known.length > 0 ? median(known) : Number.NaN;
}
