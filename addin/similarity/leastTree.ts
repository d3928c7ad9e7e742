/**
 * Numbers in numbered places, of which the least is always at hand: a tournament in which each number plays against its
 * neighbour, the lesser goes on, and of equals the one in the first place.
 */
export interface LeastTree {
  readonly leaves: number;
  /** The winners, from the last round at 1 to the numbers themselves from `leaves` on. */
  readonly winners: Float64Array;
}

/** Behind the numbers, places are filled up with Infinity. */
export function createLeastTree(numbers: Float64Array): LeastTree {
  const leaves = 2 ** Math.ceil(Math.log2(Math.max(1, numbers.length)));
  const winners = new Float64Array(2 * leaves).fill(Infinity);
  winners.set(numbers, leaves);
  for (let at = leaves - 1; at > 0; at--) winners[at] = Math.min(winners[2 * at]!, winners[2 * at + 1]!);
  return { leaves, winners };
}

export function least({ winners }: LeastTree): number {
  return winners[1]!;
}

/** The first place that holds the least number. */
export function leastAt({ leaves, winners }: LeastTree): number {
  let at = 1;
  while (at < leaves) {
    at *= 2;
    if (winners[at + 1]! < winners[at]!) at++;
  }
  return at - leaves;
}

export function setNumber({ leaves, winners }: LeastTree, place: number, number: number): void {
  let at = leaves + place;
  winners[at] = number;
  for (at >>= 1; at > 0; at >>= 1) {
    const one = winners[2 * at]!;
    const other = winners[2 * at + 1]!;
    winners[at] = one < other ? one : other;
  }
}
