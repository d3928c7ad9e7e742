/**
 * The factor that takes one set of lengths closest to another in proportion: the weighted geometric mean of
 * target / base, so that every measure counts by its ratio, not by its size.
 *
 *     ln p = Σ w · ln(target / base) / Σ w
 *
 * Pairs in which a length is missing (NaN) or not above 0 are left out.
 *
 * @param base lengths, in any one unit
 * @param target the same measures, in the same order and unit
 * @param weights how much each measure counts; 1 each when left out
 * @returns NaN when no pair is known
 * @example
 * bestScale([100, 80], [150, 120]); // 1.5
 */
export function bestScale(
  base: readonly number[],
  target: readonly number[],
  weights?: readonly number[],
): number {
  let sum = 0;
  let weight = 0;
  for (const [i, from] of base.entries()) {
    const logRatio = Math.log((target[i] ?? Number.NaN) / from);
    if (!Number.isFinite(logRatio)) continue;
    const counts = weights?.[i] ?? 1;
    sum += counts * logRatio;
    weight += counts;
  }
  return Math.exp(sum / weight);
}
