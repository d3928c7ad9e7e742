/** Target − base, in the unit of both. NaN when either is missing (NaN). */
export function delta(base: number, target: number): number {
  return target - base;
}

/**
 * A delta in percent of the base. NaN when either is missing (NaN) or the base is 0.
 *
 * @example
 * percentOfBase(80, 84); // 5
 */
export function percentOfBase(base: number, target: number): number {
  return base === 0 ? Number.NaN : (100 * delta(base, target)) / base;
}
