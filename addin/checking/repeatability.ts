import { mean } from "simple-statistics";
import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import type { TakenReading } from "../chart/readReadings.ts";
import type { ReadingError } from "../measures/readingError.ts";
import { readingErrorMm, usualReadingError } from "../measures/readingError.ts";
import { medianOf } from "./medianOf.ts";
import type { TechnicalError } from "./technicalError.ts";
import { squaresAboutMean, technicalErrorOfReadings } from "./technicalError.ts";

/**
 * Readings of a figure that are farther apart than so many errors of one reading are a slip. For two readings that is
 * 5/√2 = 3.5 standard deviations of their difference, the bound of `modifiedZ`. The project’s own starting value.
 */
export const slipErrors = 5;

/** What stands for some readings of one measure of one figure. */
export type Settled =
  | { readonly kind: "one" | "mean" | "median"; readonly mm: number }
  /** Two readings that cannot both be right: a third one has to say which. */
  | { readonly kind: "unlike" };

/**
 * One length for all readings of one thing: the mean of two, the median from three on, which one slip does not move. Of
 * two readings that are farther apart than five errors nobody can say which is right, and their mean is neither.
 *
 * Source: common practice of anthropometry – measure twice, a third time where the two differ by more than is allowed, then the
 * median (International Standards for Anthropometric Assessment, ISAK; from memory).
 *
 * @param mm at least one reading
 * @param errorMm of one reading
 */
export function settle(mm: readonly number[], errorMm: number): Settled {
  if (mm.length === 1) return { kind: "one", mm: mm[0]! };
  if (mm.length > 2) return { kind: "median", mm: medianOf(mm) };
  if (Math.max(...mm) - Math.min(...mm) > slipErrors * errorMm) return { kind: "unlike" };
  return { kind: "mean", mm: mean([...mm]) };
}

/** A reading, and whose hand took it. */
export type HandReading = Pick<TakenReading, "mm" | "by">;

/** What the variance of readings is made of, in mm²: what one hand repeats, and what differs between hands. */
export interface ErrorParts {
  readonly repeat: number;
  /** 0 where nobody measured after another, so that nothing is known of it. */
  readonly hands: number;
}

/**
 * The variance within a hand and that between hands, from readings of several figures: the estimates of the analysis of variance,
 * where the squares between the hands of a figure hold their variance as often as n − Σnₕ²/n of its readings say. Where hands differ
 * by less than they repeat, nothing is left for them.
 *
 * Source: ISO 5725-2, basic method: repeatability and between-laboratory variance, hands in the place of laboratories and figures in
 * that of levels (from memory); the coefficients for unlike counts are those of Searle, Casella & McCulloch, Variance Components
 * (1992), chapter 3 (from memory). The test holds them against R’s table of squares.
 *
 * @param things the readings of one measure, a list for each figure
 */
export function errorParts(things: readonly (readonly HandReading[])[]): ErrorParts {
  let [within, withinFree, between, betweenFree, timesHands] = [0, 0, 0, 0, 0];
  for (const thing of things) {
    const hands = readingsByHand(thing);
    const ofHands = hands.reduce((sum, own) => sum + squaresAboutMean(own), 0);
    within += ofHands;
    withinFree += thing.length - hands.length;
    between += squaresAboutMean(thing.map(({ mm }) => mm)) - ofHands;
    betweenFree += hands.length - 1;
    timesHands += thing.length * (1 - squaredShares(thing));
  }
  // Of single readings by different hands nobody can say which part is which: all of it may be the hands’.
  const repeat = withinFree === 0 ? 0 : within / withinFree;
  return { repeat, hands: timesHands === 0 ? 0 : Math.max(0, (between - betweenFree * repeat) / timesHands) };
}

/** Σ(nₕ/n)²: how much of the variance between hands stays in the mean of readings. */
function squaredShares(thing: readonly HandReading[]): number {
  return readingsByHand(thing).reduce((sum, own) => sum + (own.length / thing.length) ** 2, 0);
}

function readingsByHand(thing: readonly HandReading[]): readonly (readonly number[])[] {
  return [...groupedBy(thing, handOf).values()].map((own) => own.map(({ mm }) => mm));
}

/** Names of people are one in any case. */
function handOf({ by }: Pick<HandReading, "by">): string {
  return by.toLowerCase();
}

/**
 * The error of what {@link settle} makes of the readings of one thing. What a hand repeats averages out as 1/k, with the median a
 * little less; what differs between hands only as far as several hands measured; all else of the error of one reading stays, since
 * no repeat shows it.
 *
 *     u² = v(k)·r² + h²·Σ(kₕ/k)² + (u₁² − r² − h²)
 *
 * Source: JCGM 100:2008 (GUM), 4.2.3, the variance of a mean; v(k) of a median is {@link medianVariance}.
 *
 * @param thing its readings, one at least
 * @param ofOneMm the error of one reading; the parts are never more than it
 */
export function settledErrorMm(thing: readonly HandReading[], ofOneMm: number, parts: ErrorParts): number {
  const repeat = Math.min(parts.repeat, ofOneMm ** 2);
  const hands = Math.min(parts.hands, ofOneMm ** 2 - repeat);
  return Math.sqrt(
    ofOneMm ** 2 - repeat * (1 - medianVariance(thing.length)) - hands * (1 - squaredShares(thing)),
  );
}

/** Of one to ten readings. */
const medianVariances = [1, 0.5, 0.4487, 0.2982, 0.2868, 0.2147, 0.2104, 0.1682, 0.1661, 0.1383];

/**
 * The variance of the median of k readings that are off normally, in that of one; the median of two is their mean. Beyond ten
 * readings π/2k, which is what it comes to for many and is a little too much for few.
 *
 * Source: integrals over the order statistics of the normal distribution, by SciPy 1.17; a test simulates them.
 */
export function medianVariance(k: number): number {
  return medianVariances[k - 1] ?? Math.PI / (2 * k);
}

/** All readings of one measure of one figure, oldest row first. */
export interface ReadingsOfOne {
  readonly figure: number;
  readonly column: MeasureColumn;
  readonly taken: readonly TakenReading[];
}

/** Readings put together by figure and measure, in the order of their first rows. */
export function readingsByThing(readings: readonly TakenReading[]): readonly ReadingsOfOne[] {
  return [...groupedBy(readings, ({ figure, column }) => thingKey(figure, column.key)).values()].map(
    (taken) => ({
      ...{ figure: taken[0]!.figure, column: taken[0]!.column, taken },
    }),
  );
}

/** What is one and the same: a measure of a figure. */
export function thingKey(figure: number, measure: string): string {
  return `${String(figure)} ${measure}`;
}

/** What the readings would change in the chart. */
export interface ChartFeed {
  /** Cells that are to hold something else than now, in the order of the chart. */
  readonly changes: readonly {
    readonly figure: number;
    readonly column: MeasureColumn;
    /** NaN where the chart has nothing yet. */
    readonly beforeMm: number;
    readonly mm: number;
    readonly how: "one" | "mean" | "median";
    readonly readings: number;
  }[];
  /** Read twice, too far apart to say. */
  readonly unlike: readonly ReadingsOfOne[];
}

/** Lengths that differ by less say the same: tapes have no such steps. mm */
export const sameMm = 0.005;

/**
 * The chart as its readings have it: each cell that has any is to hold what {@link settle} makes of them.
 *
 * @param errors those that count for the chart
 */
export function feedOf(
  chart: Chart,
  readings: readonly TakenReading[],
  errors: ReadingError = usualReadingError,
): ChartFeed {
  const changes: ChartFeed["changes"][number][] = [];
  const unlike: ReadingsOfOne[] = [];
  for (const thing of readingsByThing(readings)) {
    const { figure, column, taken } = thing;
    const mm = taken.map((each) => each.mm);
    const settled = settle(mm, readingErrorMm(errors, mean(mm), column.key));
    if (settled.kind === "unlike") {
      unlike.push(thing);
      continue;
    }
    const beforeMm = column.mm[figure] ?? Number.NaN;
    const isEstimate = column.origins?.has(figure) === true;
    if (!isEstimate && Math.abs(beforeMm - settled.mm) < sameMm) continue;
    changes.push({ figure, column, beforeMm, mm: settled.mm, how: settled.kind, readings: mm.length });
  }
  const at = (measure: MeasureColumn): number => chart.measures.indexOf(measure);
  changes.sort((a, b) => a.figure - b.figure || at(a.column) - at(b.column));
  return { changes, unlike };
}

/** How closely one person repeats a reading. */
export interface PersonError extends TechnicalError {
  /** "" for readings that name nobody. */
  readonly by: string;
}

/**
 * How closely each person repeats: the technical error of measurement within a person, over all measures that they took twice or more of
 * a figure. Readings of two people are never paired, so that a difference of hands is not taken for carelessness of one.
 * Slips are left out, as everywhere: by the error of their measure.
 *
 * Source: see `technicalErrorOfReadings`; intra-observer error as in Ulijaszek & Kerr 1999.
 */
export function repeatabilityByPerson(
  readings: readonly TakenReading[],
  errors: ReadingError = usualReadingError,
): readonly PersonError[] {
  return [...groupedBy(readings, handOf).values()].flatMap((taken) => {
    const repeated = readingsByThing(taken)
      .map((thing) => ({ key: thing.column.key, mm: thing.taken.map(({ mm }) => mm) }))
      .filter(({ mm }) => mm.length > 1)
      .filter(
        ({ key, mm }) =>
          Math.max(...mm) - Math.min(...mm) <= slipErrors * readingErrorMm(errors, mean(mm), key),
      )
      .map(({ mm }) => mm);
    return repeated.length === 0 ? [] : [{ by: taken[0]!.by, ...technicalErrorOfReadings(repeated) }];
  });
}

/**
 * So many figures that were measured twice the usual error counts for as much as. The project’s own starting value: with as many
 * figures of one’s own, both count half.
 */
export const usualCountsFor = 5;

/**
 * The error of a reading from few figures, drawn towards the usual one: the variances weighed by their degrees of freedom,
 *
 *     u² = (n₀·u₀² + ν·s²) / (n₀ + ν)
 *
 * Source: the posterior variance under a scaled inverse χ² prior, as `squeezeVar` of the R package limma has it, whose help page
 * (rdrr.io/pkg/limma/man/squeezeVar.html) names G. K. Smyth, Statistical Applications in Genetics and Molecular Biology 3(1), article
 * 3 (2004); the formula stands in its source (.squeezeVar). There the prior is learned from many variances, here it is the usual error.
 *
 * @param ownMm the technical error that was found
 * @param freedom readings less figures: 1 for each figure that was read twice
 * @param usualMm the usual error of such a reading
 */
export function drawnToUsual(ownMm: number, freedom: number, usualMm: number): number {
  return Math.sqrt((usualCountsFor * usualMm ** 2 + freedom * ownMm ** 2) / (usualCountsFor + freedom));
}
