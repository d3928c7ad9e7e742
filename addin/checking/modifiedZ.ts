import { mean } from "simple-statistics";
import { medianInPlace, medianOf } from "./medianOf.ts";

/** 0.6745 is the third quartile of the standard normal distribution, as rounded by Iglewicz & Hoaglin. */
const normalQuartile = 0.6745;

/** √(π/2): standard deviation of a normal distribution in mean absolute deviations. */
const sdPerMeanDeviation = 1.253314;

/**
 * Modified z of each value: how far it lies from the median, in units that one wild value cannot stretch.
 *
 * M = 0.6745 (x − median) / MAD, MAD being the median absolute deviation from the median. When MAD is 0 (more
 * than half of the values are equal), M = (x − median) / (1.253314 · mean absolute deviation). When all values
 * are equal every M is 0.
 *
 * Source: Iglewicz & Hoaglin, How to Detect and Handle Outliers (1993), who look twice at |M| > 3.5.
 *
 * @param values any unit; NaN is missing, and stays NaN in the result
 * @returns as many numbers as `values`, without unit
 * @example
 * modifiedZ([1, 2, 3, 4, 100]); // => [-1.349, -0.6745, 0, 0.6745, 65.4265]
 */
export function modifiedZ(values: readonly number[]): number[] {
  const centre = medianOf(values);
  const spread = robustSpread(values.map((value) => value - centre));
  return values.map((value) => (spread === 0 ? value - centre : (value - centre) / spread));
}

/**
 * The length that counts as one in a modified z: MAD / 0.6745, or 1.253314 · mean absolute deviation when MAD
 * is 0; 0 when all deviations are 0.
 *
 * @param deviations from the centre; NaN is missing
 */
export function robustSpread(deviations: Iterable<number>): number {
  const sizes: number[] = [];
  for (const deviation of deviations) if (!Number.isNaN(deviation)) sizes.push(Math.abs(deviation));
  if (sizes.length === 0) return Number.NaN;
  const mad = medianInPlace(sizes, sizes.length);
  return mad > 0 ? mad / normalQuartile : sdPerMeanDeviation * mean(sizes);
}
