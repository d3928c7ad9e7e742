import { invertInPlace } from "./cholesky.ts";
import type { Mate } from "./likeBuild.ts";
import { robustSpread } from "./modifiedZ.ts";
import { orderByReadings } from "./orderByReadings.ts";

/** What each reading would be after the other readings of its figure, in ln beside size and proportion. */
export interface FromBuild {
  /** Figure by figure; NaN for a figure about which nothing is known. */
  readonly expected: Float64Array;
  /** The standard deviation of the reading about it. */
  readonly spread: Float64Array;
}

/** Builds differ in no more independent ways than so many … */
const mostWays = 5;
/** … and one can be learnt from so many figures and measures. */
const figuresAWay = 5;
const measuresAWay = 4;
/** To learn from more figures would take long and teach nothing. */
const mostLearntFrom = 500;
const learningSteps = 10;
/**
 * A residual beyond so many spreads of its measure, and as far from those of all like figures, weighs less and less from the
 * start, so that a slip is not learnt as a build; at first it counts for no more than some spreads.
 */
const doubtfulFrom = 4;
const leastDoubted = 0.01;
const clippedAt = 2;
/** A way of build changes a measure by about so much, in ln: keeps what few figures teach small. */
const usualLoading = 0.05;
/** Degrees of freedom of the t distribution by which strays are weighed: few, so that a slip has next to no weight. */
const degrees = 4;
/** A figure without a reading that strays so far, in spreads, is not judged again. */
const straysFrom = 2.5;
/** No measure is better known than so, in ln. */
const leastSpread = 0.004;

/**
 * Factor analysis of the residuals after size and proportion: in a few ways that the chart itself teaches (stout or slim, long
 * or short legs, child or grown-up), builds differ in several measures at once. A robust maximum-likelihood fit for
 * incomplete tables by the EM algorithm, with strays weighed as from a t distribution.
 *
 * Each reading is expected from the others of its figure alone, as if it had not been taken (the leave-one-out formula of
 * regression), so that a slip cannot excuse itself.
 *
 * Sources: Rubin & Thayer, EM algorithms for ML factor analysis, Psychometrika 47 (1982), 69–76; Lange, Little & Taylor, Robust
 * statistical modeling using the t distribution, JASA 84 (1989), 881–896.
 *
 * @param residuals ln(reading) less size and proportion, figure by figure; NaN is missing
 * @param mates the figures that are most like one
 */
export function fromBuild(
  residuals: readonly (readonly number[])[],
  mates: (figure: number) => readonly Mate[],
): FromBuild {
  const count = residuals.length;
  const width = residuals[0]?.length ?? 0;
  const table = Float64Array.from(residuals.flat());
  const stride = Math.ceil(count / mostLearntFrom);
  const teachers: number[] = [];
  const order = stride > 1 ? orderByReadings(residuals) : [...residuals.keys()];
  for (let place = 0; place < count; place += stride) {
    const i = order[place]!;
    if (residuals[i]!.some((value) => !Number.isNaN(value))) teachers.push(i);
  }
  const ways = Math.max(0, Math.min(mostWays, Math.floor(teachers.length / figuresAWay) - 1, Math.floor(width / measuresAWay))); // prettier-ignore
  const size = ways + 1;

  const offset = new Float64Array(width);
  const noise = new Float64Array(width).fill(0.03 ** 2);
  const spreads = Array.from({ length: width }, (_, j) => robustSpread(residuals.map((row) => row[j]!)));
  const trust = table.map((residual, at) => {
    const farthest = doubtfulFrom * Math.max(leastDoubted, spreads[at % width]!);
    let off = Math.abs(residual);
    if (!(off > farthest)) return 1;
    for (const { mate } of mates(Math.floor(at / width)))
      off = Math.min(off, Math.abs(residual - table[mate * width + (at % width)]!) || off);
    return off > farthest ? (farthest / off) ** 2 : 1;
  });
  /** For each column: 1 for the size of the figure, and how much each way of build changes it. */
  const design = firstDesign({ table, trust, spreads }, teachers, ways);
  const weights = Float64Array.from(trust);
  const scores = new Float64Array(size);
  const sums = new Float64Array(size);
  const precision = new Float64Array(size * size);
  const expected = new Float64Array(count * width);
  const spread = new Float64Array(count * width);
  const normal = new Float64Array(width * size * size);
  const right = new Float64Array(width * size);
  const squares = new Float64Array(width);
  const known = new Float64Array(width);

  /** Scores of a figure, its expected readings, and the weights of its readings. Leaves the covariance in `precision`. */
  function judge(i: number): void {
    const base = i * width;
    precision.fill(0);
    for (let k = 0; k < size; k++) precision[k * size + k] = 1;
    sums.fill(0);
    for (let j = 0; j < width; j++) {
      const value = table[base + j]!;
      if (Number.isNaN(value)) continue;
      const weight = weights[base + j]! / noise[j]!;
      for (let k = 0; k < size; k++) {
        const scaled = weight * design[j * size + k]!;
        sums[k]! += scaled * (value - offset[j]!);
        for (let l = 0; l <= k; l++) precision[k * size + l]! += scaled * design[j * size + l]!;
      }
    }
    invertInPlace(precision, size);
    for (let k = 0; k < size; k++) {
      let sum = 0;
      for (let l = 0; l < size; l++) sum += precision[k * size + l]! * sums[l]!;
      scores[k] = sum;
    }
    for (let j = 0; j < width; j++) {
      let fit = offset[j]!;
      let variance = 0;
      for (let k = 0; k < size; k++) {
        const own = design[j * size + k]!;
        let sum = 0.5 * precision[k * size + k]! * own;
        for (let l = 0; l < k; l++) sum += precision[k * size + l]! * design[j * size + l]!;
        variance += 2 * own * sum;
        fit += own * scores[k]!;
      }
      const value = table[base + j]!;
      if (Number.isNaN(value)) {
        expected[base + j] = fit;
        spread[base + j] = Math.sqrt(noise[j]! + variance);
        continue;
      }
      const leverage = Math.min(0.999, (weights[base + j]! * variance) / noise[j]!);
      const without = (fit - leverage * value) / (1 - leverage);
      expected[base + j] = without;
      spread[base + j] = Math.sqrt(noise[j]! + variance / (1 - leverage));
    }
  }

  /** Whether any reading weighs less for how far it strays. */
  function weigh(i: number): boolean {
    let isAny = false;
    for (let at = i * width; at < (i + 1) * width; at++) {
      const z = (table[at]! - expected[at]!) / spread[at]!;
      weights[at] = (trust[at]! * (degrees + 1)) / (degrees + z * z) || 0;
      if (Math.abs(z) > straysFrom) isAny = true;
    }
    return isAny;
  }

  for (let step = 0; step < learningSteps; step++) {
    normal.fill(0);
    right.fill(0);
    squares.fill(0);
    known.fill(0);
    for (const i of teachers) {
      judge(i);
      if (step > 0) weigh(i);
      for (let j = 0; j < width; j++) {
        const value = table[i * width + j]!;
        if (Number.isNaN(value)) continue;
        const at = i * width + j;
        const weight = weights[at]!;
        // What the reading strays when it takes no part is more than the noise by what is not known of the figure.
        squares[j]! += (weight * (value - expected[at]!) ** 2 * noise[j]!) / spread[at]! ** 2;
        known[j]!++;
        const rest = value - scores[0]!;
        // The first place stands for the offset, the others for the ways of build.
        for (let k = 0; k < size; k++) {
          const score = k === 0 ? 1 : scores[k]!;
          right[j * size + k]! += weight * (score * rest - (k === 0 ? 0 : precision[k * size]!));
          for (let l = 0; l <= k; l++) {
            const product = score * (l === 0 ? 1 : scores[l]!);
            normal[(j * size + k) * size + l]! +=
              weight * (product + (k > 0 && l > 0 ? precision[k * size + l]! : 0));
          }
        }
      }
    }
    learn();
    for (let j = 0; j < width; j++) {
      // A few readings say little of a measure’s own spread: two more with the usual one.
      noise[j] = Math.max(leastSpread ** 2, (squares[j]! + 2 * 0.03 ** 2) / (known[j]! + 2));
    }
  }
  for (let i = 0; i < count; i++) {
    judge(i);
    if (weigh(i)) judge(i);
  }
  return { expected, spread };

  /** New offsets and loadings from what was gathered. */
  function learn(): void {
    const matrix = new Float64Array(size * size);
    for (let j = 0; j < width; j++) {
      for (let k = 0; k < size * size; k++) matrix[k] = normal[j * size * size + k]!;
      matrix[0]! += 1e-9;
      for (let k = 1; k < size; k++) matrix[k * size + k]! += noise[j]! / usualLoading ** 2;
      if (!invertInPlace(matrix, size)) continue;
      for (let k = 0; k < size; k++) {
        let sum = 0;
        for (let l = 0; l < size; l++) sum += matrix[k * size + l]! * right[j * size + l]!;
        if (k === 0) offset[j] = sum;
        else design[j * size + k] = sum;
      }
    }
  }
}

/** The main directions of the residuals, the doubtful ones clipped, as loadings. */
function firstDesign(
  {
    table,
    trust,
    spreads,
  }: {
    readonly table: Float64Array;
    readonly trust: Float64Array;
    readonly spreads: readonly number[];
  },
  teachers: readonly number[],
  ways: number,
): Float64Array {
  const width = spreads.length;
  const size = ways + 1;
  const design = new Float64Array(width * size);
  for (let j = 0; j < width; j++) design[j * size] = 1;
  const covariance = new Float64Array(width * width);
  const most = spreads.map((spread) => clippedAt * spread || 0);
  const row = new Float64Array(width);
  for (const i of teachers) {
    for (let j = 0; j < width; j++) {
      const value = table[i * width + j]!;
      row[j] = (trust[i * width + j]! < 1 ? Math.max(-most[j]!, Math.min(most[j]!, value)) : value) || 0;
    }
    for (let j = 0; j < width; j++)
      for (let k = 0; k < width; k++) covariance[j * width + k]! += row[j]! * row[k]!;
  }
  for (let way = 1; way <= ways; way++) {
    let direction = Float64Array.from({ length: width }, (_, j) => 1 + ((j * 7 + way * 3) % 11));
    let length = 0;
    for (let step = 0; step < 30; step++) {
      const next = new Float64Array(width);
      for (let j = 0; j < width; j++)
        for (let k = 0; k < width; k++) next[j]! += covariance[j * width + k]! * direction[k]!;
      length = Math.hypot(...next);
      if (!(length > 0)) break;
      direction = next.map((value) => value / length);
    }
    const scale = Math.sqrt(length / Math.max(1, teachers.length));
    for (let j = 0; j < width; j++) {
      design[j * size + way] = direction[j]! * scale || 0;
      for (let k = 0; k < width; k++)
        covariance[j * width + k]! -= length * direction[j]! * direction[k]! || 0;
    }
  }
  return design;
}
