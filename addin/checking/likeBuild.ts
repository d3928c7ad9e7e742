/** How many figures of the same build are asked. */
const mateCount = 3;
/** Differences in proportion beyond this count no more, so that one slip cannot part two figures of one body. */
const farthest = 0.5;
/** In larger charts so many figures are looked through, half of them on either side in the order of their builds. */
const mostLookedThrough = 600;

/** Which figures of a chart are built alike. */
export interface LikeBuild {
  /**
   * The figures of most similar proportions, closest first, among those with a reading in `column`. That column itself
   * takes no part, so that figures with the same slip do not find each other.
   */
  mates(figure: number, column?: number): readonly number[];
  /** The same with their distances, as many as were asked for, whatever they have readings of. */
  closest(figure: number): readonly Mate[];
}

export interface Mate {
  readonly mate: number;
  /** Mean difference in proportion, in ln. */
  readonly distance: number;
}

/**
 * Finds figures of like build by the mean difference in proportion. Up to {@link mostLookedThrough} figures each is compared
 * with all others, beyond that with those next to it along the direction in which builds differ most (the first principal
 * component of the residuals), so that the work grows no faster than the chart. There, a like figure may be overlooked where
 * many readings are missing.
 *
 * @param residuals ln(reading) less size and proportion, figure by figure; NaN is missing
 * @param fewest measures that must be known of both
 * @param most how many figures to find
 */
export function likeBuild(
  residuals: readonly (readonly number[])[],
  fewest: number,
  most = mateCount,
): LikeBuild {
  const width = residuals[0]?.length ?? 0;
  const flat = Float64Array.from(residuals.flat());
  const everyFigure = Uint32Array.from(residuals.keys());
  const nearby = residuals.length > mostLookedThrough ? buildOrder(flat, width) : undefined;
  const others = (figure: number): ArrayLike<number> => {
    if (!nearby) return everyFigure;
    const { order, rank } = nearby;
    const from = Math.min(rank[figure]! - mostLookedThrough / 2, order.length - mostLookedThrough - 1);
    return order.subarray(Math.max(0, from), Math.max(0, from) + mostLookedThrough + 1);
  };
  let looked:
    { readonly figure: number; readonly others: ArrayLike<number>; readonly apart: Apart } | undefined;
  const found = new Map<number, readonly number[]>();
  const near = new Map<number, readonly Mate[]>();

  const look = (figure: number) => {
    if (looked?.figure !== figure) {
      const asked = others(figure);
      looked = { figure, others: asked, apart: apartFrom(flat, width, figure, asked) };
    }
    return looked;
  };

  return {
    mates: (figure, column) => {
      const key = figure * (width + 1) + (column ?? width);
      const known = found.get(key);
      if (known) return known;
      const mates = closest(flat, width, look(figure), { column, fewest, most }).map(({ mate }) => mate);
      found.set(key, mates);
      return mates;
    },
    closest: (figure) => {
      const known = near.get(figure);
      if (known) return known;
      const mates = closest(flat, width, look(figure), { column: undefined, fewest, most });
      near.set(figure, mates);
      return mates;
    },
  };
}

/** Of some figures: the sum of their differences from one figure, and in how many measures. */
interface Apart {
  readonly sum: Float64Array;
  readonly common: Int32Array;
}

function apartFrom(flat: Float64Array, width: number, figure: number, others: ArrayLike<number>): Apart {
  const sum = new Float64Array(others.length);
  const common = new Int32Array(others.length);
  const own = flat.subarray(figure * width, (figure + 1) * width);
  for (let k = 0; k < others.length; k++) {
    const base = others[k]! * width;
    let total = 0;
    let count = 0;
    for (let j = 0; j < width; j++) {
      const difference = Math.abs(own[j]! - flat[base + j]!);
      // False for a missing reading too.
      if (difference < farthest) {
        total += difference;
        count++;
      } else if (difference >= farthest) {
        total += farthest;
        count++;
      }
    }
    sum[k] = total;
    common[k] = count;
  }
  return { sum, common };
}

function closest(
  flat: Float64Array,
  width: number,
  looked: { readonly figure: number; readonly others: ArrayLike<number>; readonly apart: Apart },
  {
    column,
    fewest,
    most,
  }: { readonly column: number | undefined; readonly fewest: number; readonly most: number },
): readonly Mate[] {
  const { figure, others, apart } = looked;
  const best: Mate[] = [];
  for (let k = 0; k < others.length; k++) {
    const mate = others[k]!;
    if (mate === figure) continue;
    let sum = apart.sum[k]!;
    let common = apart.common[k]!;
    if (column !== undefined) {
      const theirs = flat[mate * width + column]!;
      if (Number.isNaN(theirs)) continue;
      const difference = Math.abs(flat[figure * width + column]! - theirs);
      if (!Number.isNaN(difference)) {
        sum -= Math.min(difference, farthest);
        common--;
      }
    }
    if (common < fewest) continue;
    const distance = sum / common;
    if (!(distance < (best[most - 1]?.distance ?? Number.POSITIVE_INFINITY))) continue;
    const place = best.findIndex((one) => distance < one.distance);
    best.splice(place < 0 ? best.length : place, 0, { mate, distance });
    if (best.length > most) best.pop();
  }
  return best;
}

/** The figures in order along the first principal component, found by power iteration, and each one’s rank in it. */
function buildOrder(
  flat: Float64Array,
  width: number,
): { readonly order: Uint32Array; readonly rank: Uint32Array } {
  const along = alongMainDirection(
    flat.map((residual) => Math.max(-farthest, Math.min(farthest, residual))),
    width,
  );
  const order = Uint32Array.from(along.keys()).sort((a, b) => along[a]! - along[b]! || a - b);
  const rank = new Uint32Array(along.length);
  order.forEach((figure, place) => (rank[figure] = place));
  return { order, rank };
}

/** How far each row lies, by its known values, along the direction in which the rows differ most. */
function alongMainDirection(table: Float64Array, width: number): Float64Array {
  const along = new Float64Array(table.length / width);
  let direction = new Float64Array(width).map((_, j) => 1 + j / width);
  for (let round = 0; round < 8; round++) {
    const next = new Float64Array(width);
    for (let i = 0; i < along.length; i++) {
      let sum = 0;
      let weight = 0;
      for (let j = 0; j < width; j++) {
        const value = table[i * width + j]!;
        if (Number.isNaN(value)) continue;
        sum += direction[j]! * value;
        weight += direction[j]! * direction[j]!;
      }
      along[i] = weight > 0 ? sum / weight : 0;
      for (let j = 0; j < width; j++) next[j]! += along[i]! * (table[i * width + j]! || 0);
    }
    const length = Math.hypot(...next) || 1;
    direction = next.map((value) => value / length);
  }
  return along;
}
