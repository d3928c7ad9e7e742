/**
 * The rows of a table in an order of their own: by their first reading, then by the second, and so on, a missing one first. What is
 * reckoned in it stays the same, to the last digit, when somebody sorts the chart.
 *
 * @param rows NaN is missing
 * @returns positions in `rows`
 */
export function orderByReadings(rows: readonly (readonly number[])[]): readonly number[] {
  return [...rows.keys()].sort((one, other) => compare(rows[one]!, rows[other]!));
}

function compare(one: readonly number[], other: readonly number[]): number {
  for (let j = 0; j < one.length; j++) {
    const [a, b] = [one[j]!, other[j]!];
    if (a === b || (Number.isNaN(a) && Number.isNaN(b))) continue;
    return Number.isNaN(a) || a < b ? -1 : 1;
  }
  return 0;
}
