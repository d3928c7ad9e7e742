import type { Mate } from "./likeBuild.ts";
import { medianOf } from "./medianOf.ts";

/** How many like figures are asked about a reading. */
export const mateCount = 4;
/** Pairs of figures are sorted by how like they are into so many classes, from each of which is learnt how far to trust them. */
const classes = 8;
/** Strays count for no more than this, in spreads, so that a slip does not speak for others. */
const farthest = 2.5;
/** Nobody is trusted more than so, and whoever is trusted less is not asked. */
const mostTrust = 0.97;
const leastTrust = 0.03;

/**
 * What like figures say of each reading beyond size and build: figures of one sculpt stray from the usual in the same places.
 * How much the strays of two figures have in common is measured in the chart itself, by how like the figures are and
 * by measure (heads differ where bodies are shared), and the strays of the most similar figures are weighted by that
 * (simple kriging).
 *
 * Source of the method: Cressie, Statistics for Spatial Data (1993), chapter 3. Its use on figures is this project’s own.
 *
 * @param residuals ln(reading) less size and proportion, figure by figure; NaN is missing
 * @param strays (reading − expected) / spread of each reading; NaN is missing
 * @param closest some more figures than are asked, the most similar first
 * @returns for each reading the stray to be expected, and the share of its variance that remains
 */
export function fromLikeFigures(
  residuals: readonly (readonly number[])[],
  strays: Float64Array,
  closest: (figure: number) => readonly Mate[],
): { readonly expected: Float64Array; readonly remains: Float64Array } {
  const count = residuals.length;
  const width = residuals[0]?.length ?? 0;
  const expected = new Float64Array(count * width);
  const remains = new Float64Array(count * width).fill(1);
  const tame = strays.map((z) => (Number.isNaN(z) ? Number.NaN : Math.max(-farthest, Math.min(farthest, z))));
  const mates = residuals.map((_, i) => closest(i));
  const trust = learnTrust(mates, tame, width);
  const own = new Float64Array(mateCount);
  const said = new Float64Array(mateCount);
  for (let i = 0; i < count; i++) {
    const near = mates[i]!;
    const common = near.map(({ distance }) => trust.common(distance));
    if (!(common[0]! > leastTrust)) continue;
    for (let j = 0; j < width; j++) {
      let size = 0;
      for (let a = 0; a < near.length && size < mateCount; a++) {
        const stray = tame[near[a]!.mate * width + j]!;
        if (Number.isNaN(stray)) continue;
        said[size] = stray;
        own[size++] = Math.min(mostTrust, common[a]! * trust.own[j]!);
      }
      if (size === 0 || !(own[0]! > leastTrust)) continue;
      const { stray, explained } = krige(own, said, size);
      expected[i * width + j] = stray;
      remains[i * width + j] = Math.max(leastTrust, 1 - explained);
    }
  }
  return { expected, remains };
}

/** Entries of the lower triangle of a covariance of that many. */
const triangle = (mateCount * (mateCount + 1)) / 2;

/**
 * Simple kriging from a few figures, the most trusted first: two of them have as much in common as the less trusted of them
 * has with the figure. By Cholesky’s decomposition of their covariance.
 */
function krige(
  own: Float64Array,
  said: Float64Array,
  size: number,
): { readonly stray: number; readonly explained: number } {
  const rows = new Float64Array(triangle);
  const left = new Float64Array(2 * mateCount);
  let stray = 0;
  let explained = 0;
  for (let a = 0, row = 0; a < size; row += ++a) {
    let trusted = own[a]!;
    let says = said[a]!;
    let square = 1;
    for (let b = 0, other = 0; b < a; other += ++b) {
      let sum = own[a]!;
      for (let k = 0; k < b; k++) sum -= rows[row + k]! * rows[other + k]!;
      const entry = sum / rows[other + b]!;
      rows[row + b] = entry;
      square -= entry * entry;
      trusted -= entry * left[2 * b]!;
      says -= entry * left[2 * b + 1]!;
    }
    const root = Math.sqrt(Math.max(square, 1e-6));
    rows[row + a] = root;
    left[2 * a] = trusted / root;
    left[2 * a + 1] = says / root;
    stray += left[2 * a]! * left[2 * a + 1]!;
    explained += left[2 * a]! ** 2;
  }
  return { stray, explained };
}

/** How much of a stray two figures share, from 0 to 1, by their distance; and each measure’s factor to it. */
function learnTrust(
  mates: readonly (readonly Mate[])[],
  strays: Float64Array,
  width: number,
): { common(distance: number): number; readonly own: Float64Array } {
  const pairs = mates.flatMap((near, i) => near.map(({ mate, distance }) => ({ i, mate, distance })));
  pairs.sort((a, b) => a.distance - b.distance);
  const shared = new Float64Array(classes);
  const middle = new Float64Array(classes);
  const products = new Float64Array(width);
  const usual = new Float64Array(width);
  for (let c = 0; c < classes; c++) {
    const from = Math.floor((c * pairs.length) / classes);
    const to = Math.floor(((c + 1) * pairs.length) / classes);
    let product = 0;
    let squares = 0;
    for (const { i, mate } of pairs.slice(from, to)) {
      for (let j = 0; j < width; j++) {
        const a = strays[i * width + j]!;
        const b = strays[mate * width + j]!;
        if (Number.isNaN(a + b)) continue;
        product += a * b;
        squares += (a * a + b * b) / 2;
      }
    }
    middle[c] = medianOf(pairs.slice(from, to).map(({ distance }) => distance));
    shared[c] = Math.max(0, squares > 0 ? product / squares : 0);
    // Less like figures share no more.
    if (c > 0) shared[c] = Math.min(shared[c]!, shared[c - 1]!);
  }
  const common = (distance: number): number => {
    if (!(distance > middle[0]!)) return shared[0]!;
    for (let c = 1; c < classes; c++) {
      if (distance > middle[c]!) continue;
      const along = (distance - middle[c - 1]!) / (middle[c]! - middle[c - 1]! || 1);
      return shared[c - 1]! + along * (shared[c]! - shared[c - 1]!);
    }
    return shared[classes - 1]!;
  };
  for (const { i, mate, distance } of pairs) {
    const trust = common(distance);
    for (let j = 0; j < width; j++) {
      const a = strays[i * width + j]!;
      const b = strays[mate * width + j]!;
      if (Number.isNaN(a + b)) continue;
      products[j]! += trust * a * b;
      usual[j]! += (trust * trust * (a * a + b * b)) / 2;
    }
  }
  // A measure’s own share of the common trust; a few pairs say little of it.
  const own = products.map((product, j) => Math.max(0, Math.min(1.3, (product + 3) / (usual[j]! + 3))));
  return { common, own };
}
