import { quickselect } from "simple-statistics";
import { readingErrorMm, usualReadingError } from "../measures/readingError.ts";
import { fromBuild } from "./buildFactors.ts";
import { likeBuild } from "./likeBuild.ts";
import { fromLikeFigures, mateCount } from "./likeFigures.ts";
import { robustSpread } from "./modifiedZ.ts";
import { fewestReadings, type Proportions } from "./proportions.ts";

/**
 * What each reading of a chart can be expected to be, and how far readings stray from that: one model for the expected
 * value, for what is out of proportion and for what may have happened to it.
 */
export interface ChartModel {
  /** ln of the reading to be expected from all others; the reading itself takes no part. NaN where too little is known. */
  expected(figure: number, column: number): number;
  /** Standard deviation of ln(reading) about it. */
  spread(figure: number, column: number): number;
}

/** Two-sided 95 % point of the standard normal distribution. */
export const normal95 = 1.96;
/** Nothing is better known than to a hundredth and to the error of a reading, even where a chart happens to agree better. */
const leastSpread = 0.01;
/** A measure or a figure may stray more than others by this factor, not more: beyond that its readings are to be looked at. */
const mostMore = 2;
/** Strays that are all next to nothing are not told apart. */
const leastCommon = 0.1;
/** So many readings are thought of as straying as usual, beside those of a measure or a figure, when its own spread is judged. */
const usualReadings = 15;

/**
 * Size and proportion by median polish; then build, by factor analysis; then what like figures have in common; then the
 * spread as it is measured: the share of readings within it is that of the chart’s own readings, and measures and figures
 * that stray more than others are allowed more.
 *
 * @param fit sizes and proportions; readings that are left out there are judged, but take no part
 */
export function chartModel(fit: Proportions): ChartModel {
  const { residuals } = fit;
  const width = residuals[0]?.length ?? 0;
  const flat = Float64Array.from(residuals.flat());
  const alike = likeBuild(residuals, fewestReadings, mateCount + 2);
  const build = fromBuild(residuals, alike.closest);
  const strays = flat.map((residual, at) => (residual - build.expected[at]!) / build.spread[at]!);
  const like = fromLikeFigures(residuals, strays, alike.closest);
  const expected = build.expected.map((value, at) => value + like.expected[at]! * build.spread[at]!);
  const spread = build.spread.map((value, at) => value * Math.sqrt(like.remains[at]!));
  calibrate(flat, expected, spread, width);
  return {
    expected: (figure, column) => fit.usual(figure, column) + expected[figure * width + column]!,
    spread: (figure, column) => {
      const reading = Math.exp(fit.usual(figure, column) + expected[figure * width + column]!);
      return Math.max(
        spread[figure * width + column]!,
        leastSpread,
        readingErrorMm(usualReadingError, reading) / reading,
      );
    },
  };
}

/** Makes the spreads those that are measured, in place. */
function calibrate(flat: Float64Array, expected: Float64Array, spread: Float64Array, width: number): void {
  const count = flat.length / width;
  const strays = flat.map((residual, at) => Math.abs(residual - expected[at]!) / spread[at]!);
  const common = Math.max(robustSpread(strays) || 1, leastCommon);
  const scaleLine = (from: number, step: number, length: number): void => {
    const own: number[] = [];
    for (let k = 0; k < length; k++) {
      const stray = strays[from + k * step]!;
      if (!Number.isNaN(stray)) own.push(stray);
    }
    const share = own.length > 0 ? Math.min(mostMore, robustSpread(own) / common) : 1;
    const scale = Math.sqrt((own.length * share ** 2 + usualReadings) / (own.length + usualReadings));
    for (let k = 0; k < length; k++) spread[from + k * step]! *= scale;
  };
  for (let j = 0; j < width; j++) scaleLine(j, width, count);
  for (let i = 0; i < count; i++) scaleLine(i * width, 1, width);
  const sizes: number[] = [];
  flat.forEach((residual, at) => {
    const size = Math.abs(residual - expected[at]!) / spread[at]!;
    if (!Number.isNaN(size)) sizes.push(size);
  });
  const place = Math.floor(0.95 * sizes.length);
  if (sizes.length > 1) quickselect(sizes, place, 0, sizes.length - 1);
  const scale = (sizes[place] ?? normal95) / normal95;
  if (scale > 0) for (let at = 0; at < spread.length; at++) spread[at]! *= scale;
}
