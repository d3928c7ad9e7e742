import { quickselect } from "simple-statistics";

/** Median of the known values; NaN when there is none. */
export function medianOf(values: Iterable<number>): number {
  const known: number[] = [];
  for (const value of values) if (!Number.isNaN(value)) known.push(value);
  return medianInPlace(known, known.length);
}

/** Median of the first `count` values, none of them NaN; they are put in another order. NaN when there is none. */
export function medianInPlace(values: number[], count: number): number {
  if (count < 2) return count === 1 ? values[0]! : Number.NaN;
  const middle = count >> 1;
  quickselect(values, middle, 0, count - 1);
  const upper = values[middle]!;
  if (count % 2 === 1) return upper;
  let lower = values[0]!;
  for (let i = 1; i < middle; i++) if (values[i]! > lower) lower = values[i]!;
  return (lower + upper) / 2;
}
