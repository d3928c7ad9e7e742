import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { figureKey } from "../chart/find.ts";
import { readingErrorMm, usualReadingError } from "../measures/readingError.ts";
import { amount } from "./amount.ts";
import type { ChartModel } from "./chartModel.ts";
import type { Flag } from "./flag.ts";
import { robustSpread } from "./modifiedZ.ts";
import type { Proportions } from "./proportions.ts";
import { cellFlag, keyOf, rowFlag, type Place } from "./readings.ts";

/** Two rows can only be called the same when so many measures were taken on both. */
const fewestShared = 8;
/** How far apart rounding to the divisions of a tape leaves equal lengths: half a division, 0.5 mm or 1/32 in. */
const halfDivisionMm: Readonly<Record<MeasureColumn["unit"], number>> = { mm: 0.5, cm: 0.5, in: 25.4 / 32 };
const rounding = 1e-6;
/** Readings of one body seldom lie farther apart than so many standard deviations of their difference … */
const seldomApart = 3;
/** … and in the mean square they do not, over many measures. */
const mostMeanSquare = 2;
/** One that lies twice as far apart is another length, or wrong. */
const surelyApart = 2 * seldomApart;
/** One of two readings is called the odd one when it is so much farther from what is to be expected, in spreads. */
const clearlyFarther = 2;

/** Where a chart is too small to show how far measures of other bodies stray, in ln, they are thought to by so much. */
const usualSpread = 0.03;
/** That two figures have one body must be so much likelier than that any two happen to agree in all but any one measure. */
const likelier = 20;
/** So many figures tell how far measures stray. */
const mostAsked = 500;
/** A measure that lacks on more figures than this leaves is not gone by in the search. */
const nearlyAll = 0.95;
/** Of more twins than so many a figure does not need to hear. */
const mostTwins = 50;

/** Two figures, the first in the chart first, that agree in every measure of the body or in every one but one. */
interface Alike {
  readonly i: number;
  readonly k: number;
  /** The column in which they differ. */
  readonly odd: number | undefined;
  /** Whether so many measures agree so well that they have one body, but for that column. */
  readonly isOneBody: boolean;
}

/**
 * What twins tell: rows that are the same throughout under two names, and single readings in which twins of one body differ.
 *
 * @param flagged readings that were found out already, and are not told again
 * @param model to say which of two readings is the odd one, where the chart is large enough
 * @param usual what is usual in the chart, where it is large enough
 */
export function findTwins(
  chart: Chart,
  flagged: readonly Place[],
  model: ChartModel | undefined,
  usual: Proportions | undefined,
): { readonly same: readonly Flag[]; readonly odd: readonly Flag[] } {
  const alike = alikePairs(chart, usual);
  return { same: sameThroughout(chart, alike), odd: unlikeTwins(chart, alike, flagged, model) };
}

/**
 * Rows that are the same to within rounding in every measure taken on both, head and hands among them, under
 * different names. Figures that share only a body are not meant: that is usual.
 */
function sameThroughout(chart: Chart, alike: readonly Alike[]): readonly Flag[] {
  const told = new Map<number, number>();
  for (const { i, k } of alike) if (!told.has(i) && !told.has(k) && areSame(chart, i, k)) told.set(k, i);
  return [...told].map(([k, i]) =>
    rowFlag(chart, k, {
      kind: "same readings, two names",
      why: `Every reading of ${chart.figures[k]!} is that of ${chart.figures[i]!}, head and hands too. If they come from one mould, nothing is wrong; else one may be a copy that was not changed.`,
    }),
  );
}

function areSame({ figures, measures }: Chart, i: number, k: number): boolean {
  let shared = 0;
  const zones = new Set<string | undefined>();
  for (const column of measures) {
    if (differ(column, i, k)) return false;
    if (Number.isNaN(column.mm[i]! - column.mm[k]!)) continue;
    shared++;
    zones.add(column.zone);
  }
  return (
    shared >= fewestShared &&
    zones.has("head") &&
    zones.has("hands") &&
    figureKey(figures[i]!) !== figureKey(figures[k]!)
  );
}

/** Whether two readings of a measure are more than rounding apart. */
export function differ({ mm, unit }: MeasureColumn, i: number, k: number): boolean {
  return Math.abs(mm[i]! - mm[k]!) > halfDivisionMm[unit] + rounding;
}

/**
 * Readings in which a figure differs from its twins, where it agrees with each of them in all else of the body to within the
 * error of reading. A reading that some other twin has too is left alone: bodies may come with two busts. Of two, the less
 * likely one is told, or where that cannot be said both are asked about.
 */
function unlikeTwins(
  chart: Chart,
  alike: readonly Alike[],
  flagged: readonly Place[],
  model: ChartModel | undefined,
): readonly Flag[] {
  const known = new Set(flagged.map(keyOf));
  const isKnown = (figure: number, column: number) => known.has(keyOf({ figure, column }));
  const ofOneBody = alike.filter(({ isOneBody }) => isOneBody);
  const twins = new Map<number, number[]>();
  const add = (figure: number, twin: number): void => {
    const others = twins.get(figure);
    if (others) others.push(twin);
    else twins.set(figure, [twin]);
  };
  for (const { i, k } of ofOneBody) {
    add(i, k);
    add(k, i);
  }
  /** Whether another twin has the same there. */
  const isShared = (column: number, figure: number): boolean =>
    (twins.get(figure) ?? []).some(
      (twin) =>
        !isKnown(twin, column) && squareApart(chart.measures[column]!.mm, figure, twin) <= seldomApart ** 2,
    );
  const told = new Map<string, Flag>();
  for (const { i, k, odd } of ofOneBody) {
    if (odd === undefined || isKnown(i, odd) || isKnown(k, odd)) continue;
    if (figureKey(chart.figures[i]!) === figureKey(chart.figures[k]!)) continue;
    const shared = [isShared(odd, i), isShared(odd, k)] as const;
    if (shared[0] && shared[1]) continue;
    const asked = shared[0] ? [k] : shared[1] ? [i] : lessLikely(chart, model, odd, i, k);
    for (const figure of asked) {
      const place = { figure, column: odd };
      const twin = figure === i ? k : i;
      if (!told.has(keyOf(place))) told.set(keyOf(place), unlikeFlag(chart, place, twin, asked.length > 1));
    }
  }
  return [...told.values()];
}

/** The one of two readings that is clearly farther from what is to be expected, or both. */
function lessLikely(
  chart: Chart,
  model: ChartModel | undefined,
  column: number,
  i: number,
  k: number,
): readonly number[] {
  const [own, other] = [i, k].map((figure) => {
    const ln = Math.log(chart.measures[column]!.mm[figure]!);
    return model ? Math.abs(ln - model.expected(figure, column)) / model.spread(figure, column) : Number.NaN;
  });
  if (own! - other! > clearlyFarther) return [i];
  return other! - own! > clearlyFarther ? [k] : [i, k];
}

function unlikeFlag(chart: Chart, place: Place, twin: number, areBoth: boolean): Flag {
  const { heading, mm, unit } = chart.measures[place.column]!;
  const [own, other] = [chart.figures[place.figure]!, chart.figures[twin]!];
  const apart = `${own} and ${other} agree in all else of the body, but ${heading} is ${amount(mm[place.figure]!, unit)} here and ${amount(mm[twin]!, unit)} there.`;
  return cellFlag(chart, place, {
    kind: "unlike its twin",
    why: `${apart} ${areBoth ? "Measure both again" : "Measure again"}; if the bodies differ there, nothing is wrong.`,
  });
}

/** The square of the difference of two readings, in variances of it; NaN where one is missing. */
function squareApart(mm: Float64Array, i: number, k: number): number {
  return (mm[i]! - mm[k]!) ** 2 / (varianceOf(mm[i]!) + varianceOf(mm[k]!));
}

function varianceOf(mm: number): number {
  return readingErrorMm(usualReadingError, mm) ** 2;
}

/** The two columns in which the fewest figures come near one another: of those with nearly the most readings the longest. */
function sweptColumns(columns: readonly Float64Array[]): readonly [number, number] {
  const known = columns.map((mm) => mm.reduce((count, reading) => count + (reading > 0 ? 1 : 0), 0));
  const length = columns.map((mm) => mm.reduce((sum, reading) => sum + (reading > 0 ? reading : 0), 0));
  const enough = nearlyAll * Math.max(...known);
  const [first = 0, second = first] = [...columns.keys()]
    .filter((c) => known[c]! >= enough)
    .sort((a, b) => length[b]! / known[b]! - length[a]! / known[a]! || a - b);
  return [first, second];
}

/** Measures in which figures of one body differ: other heads, hands and feet are put on it. */
const exchanged: ReadonlySet<string | undefined> = new Set(["head", "hands", "feet"]);

/**
 * Every two figures that agree in all measures of the body, or in all but one, the first in the chart first. Such a pair agrees in one at
 * least of any two measures, so that it is found among the neighbours in the one or in the other; figures that lack one of the
 * two are compared with all.
 */
function alikePairs(chart: Chart, usual: Proportions | undefined): readonly Alike[] {
  const size = chart.figures.length;
  const places = [...chart.measures.keys()];
  const ofBody = places.filter((c) => {
    const { zone, key } = chart.measures[c]!;
    return !exchanged.has(zone) && key !== "height";
  });
  const columns = ofBody.length > 0 ? ofBody : places;
  const width = columns.length;
  const mm = new Float64Array(size * width);
  columns.forEach((place, c) => {
    for (let i = 0; i < size; i++) mm[i * width + c] = chart.measures[place]!.mm[i]!;
  });
  const variance = mm.map(varianceOf);
  const stride = Math.ceil(size / mostAsked);
  const asked = usual?.residuals.filter((_, i) => i % stride === 0);
  const strays = columns.map(
    (place) => (asked && robustSpread(asked.map((row) => row[place]!))) || usualSpread,
  );
  const leastEvidence = Math.log((likelier * size * (size - 1) * width) / 2);
  const [first, second] = sweptColumns(columns.map((place) => chart.measures[place]!.mm));
  const has = (i: number, c: number) => mm[i * width + c]! > 0;

  const found: Alike[] = [];
  const twins = new Uint16Array(size);
  const compare = (a: number, b: number): void => {
    let odd = -1;
    let shared = 0;
    let squares = 0;
    let evidence = 0;
    for (let c = 0; c < width; c++) {
      const at = a * width + c;
      const other = b * width + c;
      const difference = mm[at]! - mm[other]!;
      const square = (difference * difference) / (variance[at]! + variance[other]!);
      // False for a missing reading too.
      if (square > seldomApart ** 2) {
        if (odd >= 0 || square <= surelyApart ** 2) return;
        odd = c;
        shared++;
      } else if (square >= 0) {
        squares += square;
        shared++;
        const both = variance[at]! + variance[other]!;
        const ratio = 1 + (strays[c]! * (mm[at]! + mm[other]!)) ** 2 / (2 * both);
        evidence += (Math.log(ratio) - square * (1 - 1 / ratio)) / 2;
      }
    }
    const isOneBody =
      shared >= fewestShared &&
      squares <= mostMeanSquare * (odd < 0 ? shared : shared - 1) &&
      evidence >= leastEvidence;
    if (odd >= 0 && !isOneBody) return;
    const [i, k] = a < b ? [a, b] : [b, a];
    found.push({ i, k, odd: odd < 0 ? undefined : columns[odd], isOneBody });
    twins[a]!++;
    twins[b]!++;
  };

  const whole: number[] = [];
  const others: number[] = [];
  for (let i = 0; i < size; i++) (has(i, first) && has(i, second) ? whole : others).push(i);
  const isLacking = new Uint8Array(size);
  for (const i of others) isLacking[i] = 1;
  const reach = (reading: number) => seldomApart * Math.sqrt(2 * varianceOf(reading));
  const isNear = (a: number, b: number, c: number): boolean => {
    const [one, other] = [mm[a * width + c]!, mm[b * width + c]!];
    return Math.abs(one - other) <= reach(Math.max(one, other));
  };
  for (const c of first === second ? [first] : [first, second]) {
    const order = [...whole].sort((a, b) => mm[a * width + c]! - mm[b * width + c]! || a - b);
    for (let p = 0; p < order.length; p++) {
      const a = order[p]!;
      for (let q = p + 1; q < order.length && twins[a]! < mostTwins; q++) {
        const b = order[q]!;
        if (!isNear(a, b, c)) break;
        if (c === first || !isNear(a, b, first)) compare(a, b);
      }
    }
  }
  for (const a of others)
    for (let b = 0; b < size && twins[a]! < mostTwins; b++)
      if (b !== a && !(isLacking[b] && b < a)) compare(a, b);
  return found.sort((x, y) => x.i - y.i || x.k - y.k);
}
