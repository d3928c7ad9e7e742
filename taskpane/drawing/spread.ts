/**
 * Moves labels apart so that none covers another, each as little as may be: the least squares of the moves under the
 * given order (isotonic regression by pooling neighbours).
 *
 * @param wanted where each label would like to be, in rising order
 * @param gap the least distance from one to the next
 * @example
 * spread([10, 11, 40], 4); // [8.5, 12.5, 40]
 */
export function spread(wanted: readonly number[], gap: number): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const [i, at] of wanted.entries()) {
    let pool = { sum: at - i * gap, count: 1 };
    for (let last = pools.at(-1); last && mean(last) > mean(pool); last = pools.at(-1)) {
      pools.pop();
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
    }
    pools.push(pool);
  }
  return pools
    .flatMap((pool) => Array.from({ length: pool.count }, () => mean(pool)))
    .map((at, i) => at + i * gap);
}

function mean({ sum, count }: { readonly sum: number; readonly count: number }): number {
  return sum / count;
}
