import { PCA } from "ml-pca";
import type { Chart, MeasureColumn } from "../../chart/chart.ts";
import { groupedBy } from "../../chart/groupedBy.ts";
import type { ComparedColumn } from "../columns.ts";
import { comparativeOf } from "../differenceWords.ts";
import { filledReadings } from "./filledReadings.ts";
import { inTolerances } from "./inTolerances.ts";
import { nameOrder } from "../nameOrder.ts";

/** Where the figures of a chart lie to one another, seen from the side from which they differ most. */
export interface FigureMap {
  /** In the order of the chart, without those that are left out. */
  readonly points: readonly MapPoint[];
  /** What it means to lie farther to the right (greater x), and farther up (greater y). */
  readonly axes: readonly [MapAxis, MapAxis];
  /** Figures without a single reading of the compared measures, by name. */
  readonly leftOut: readonly string[];
  /** What has to be known to read this map, in whole sentences; often none. */
  readonly notes: readonly string[];
}

export interface MapPoint {
  readonly figure: string;
  /** Where the figure stands in the chart, from 0. */
  readonly place: number;
  /** In tolerances: one step is one tolerance. The middle of all figures is at 0, 0. */
  readonly x: number;
  readonly y: number;
  /** How many of its readings were missing, so that an estimate stands in. */
  readonly estimated: number;
}

export interface MapAxis {
  /** The part of the whole spread of the figures that this direction shows, from 0 to 1. */
  readonly share: number;
  /** Every measure that counts, largest weight first, whatever its sign; none where figures do not differ here. */
  readonly measures: readonly AxisMeasure[];
  /** See `axisWords`. */
  readonly words: string;
}

/** A direction with less than this share of the spread is rounding. */
const leastShare = 1e-12;
/** Weights that differ by less are equal. */
const rounding = 1e-9;

/**
 * A map of figures by the two principal components of their measures, each on a scale on which one step is one
 * tolerance, see `inTolerances`. Missing readings are filled in as `filledReadings` says, and counted.
 *
 * Principal components have no sign of their own: here the measure with the greatest weight has a positive one, of equal
 * ones the first column. Worked out in the order of names, so that the map is the same whatever the order of rows.
 *
 * Source: K. Pearson, On lines and planes of closest fit, Philosophical Magazine 2 (1901), 559–572; computed by ml-pca.
 *
 * @param columns see `comparedColumns`
 */
export function figureMap(chart: Chart, columns: readonly ComparedColumn[]): FigureMap {
  const named = nameOrder(chart, columns);
  const { mm, estimated, isEmpty } = filledReadings(inOrder(chart, named.order), named.columns);
  const items = named.order.map((_, item) => item).filter((item) => !isEmpty[item]);
  const found = components(
    items.map((item) => columns.map(({ tolerance }, c) => inTolerances(tolerance, mm[c]![item]!))),
  );
  const points = items.map((item, row) => ({
    figure: chart.figures[named.order[item]!] ?? "",
    place: named.order[item]!,
    x: found[0].scores[row] ?? 0,
    y: found[1].scores[row] ?? 0,
    estimated: estimated[item]!,
  }));
  const axes = [axisOf(found[0], columns), axisOf(found[1], columns)] as const;
  const leftOut = named.order.filter((_, item) => isEmpty[item]).map((place) => chart.figures[place] ?? "");
  return {
    points: points.sort((a, b) => a.place - b.place),
    axes,
    leftOut,
    notes: notesOn(points, columns.length, axes, leftOut),
  };
}

/** The chart with its figures in another order. */
function inOrder(chart: Chart, order: readonly number[]): Chart {
  return {
    ...chart,
    figures: order.map((place) => chart.figures[place] ?? ""),
    rows: order.map((place) => chart.rows[place] ?? 0),
    measures: chart.measures.map((column) => ({
      ...column,
      mm: Float64Array.from(order, (place) => column.mm[place] ?? Number.NaN),
    })),
    attributes: [],
  };
}

interface Component {
  readonly share: number;
  /** One a measure; all 0 where figures do not differ in this direction. */
  readonly weights: readonly number[];
  /** One a row. */
  readonly scores: readonly number[];
}

/** @param rows one figure each, without gaps */
function components(rows: readonly (readonly number[])[]): readonly [Component, Component] {
  const width = rows[0]?.length ?? 0;
  const nothing = { share: 0, weights: new Array<number>(width).fill(0), scores: rows.map(() => 0) };
  const isSame = rows.every((row) => row.every((value, c) => value === rows[0]![c]));
  if (isSame) return [nothing, nothing];
  const table = rows.map((row) => [...row]);
  const pca = new PCA(table);
  const loadings = pca.getLoadings().to2DArray();
  const shares = pca.getExplainedVariance();
  const scores = pca.predict(table, { nComponents: Math.min(2, loadings.length) }).to2DArray();
  const componentAt = (at: number): Component => {
    const share = shares[at] ?? 0;
    if (!(share > leastShare)) return nothing;
    const sign = signOf(loadings[at]!);
    return {
      share,
      weights: loadings[at]!.map((weight) => sign * weight),
      scores: scores.map((row) => sign * row[at]!),
    };
  };
  return [componentAt(0), componentAt(1)];
}

function signOf(weights: readonly number[]): 1 | -1 {
  const greatest = Math.max(...weights.map(Math.abs));
  const deciding = weights.find((weight) => Math.abs(weight) > greatest - rounding) ?? 0;
  return deciding < 0 ? -1 : 1;
}

function axisOf({ share, weights }: Component, columns: readonly ComparedColumn[]): MapAxis {
  const measures = columns
    .map(({ column }, c) => ({ column, weight: weights[c]! }))
    .filter(({ weight }) => Math.abs(weight) > rounding)
    .sort((a, b) => stepsOf(b.weight) - stepsOf(a.weight) || a.column.position - b.column.position);
  return { share, measures, words: axisWords(measures) };
}

/** The size of a weight in whole steps of rounding, so that equal weights are equal. */
function stepsOf(weight: number): number {
  return Math.round(Math.abs(weight) / rounding);
}

function notesOn(
  points: readonly MapPoint[],
  measureCount: number,
  axes: FigureMap["axes"],
  leftOut: readonly string[],
): readonly string[] {
  const notes: string[] = [];
  if (points.length === 0)
    notes.push("No figure has a reading of these measures, so there is nothing to show.");
  else if (points.length === 1) notes.push("There is only one figure to show; a map needs at least two.");
  else if (axes[0].share === 0)
    notes.push("All figures have the same readings of these measures, so they lie on one point.");
  else if (axes[1].share === 0) {
    const why =
      points.length === 2
        ? "Two figures always lie on one line"
        : measureCount === 1
          ? "With one measure all figures lie on one line"
          : "These figures lie on one line, since what differs between them goes together";
    notes.push(`${why}: up and down mean nothing here.`);
  }
  const filled = points.filter(({ estimated }) => estimated > 0).length;
  if (filled > 0) {
    notes.push(
      `${plural(filled, "figure has", "figures have")} missing readings. Estimates from the proportions of the chart stand in for them here.`,
    );
  }
  if (leftOut.length > 0) {
    notes.push(`Left out, since no reading of these measures is known: ${namesOf(leftOut)}.`);
  }
  return notes;
}

function plural(count: number, one: string, more: string): string {
  return `${String(count)} ${count === 1 ? one : more}`;
}

/** Names beyond these are counted only. */
const mostNames = 5;

function namesOf(figures: readonly string[]): string {
  const named = figures.slice(0, mostNames).join(", ");
  const others = figures.length - mostNames;
  return others > 0 ? `${named} and ${String(others)} more` : named;
}

/** How much a measure counts in a direction of the map: from −1 to 1, the squares of all add up to 1. */
export interface AxisMeasure {
  readonly column: MeasureColumn;
  readonly weight: number;
}

/** A measure is named from this share of the greatest weight on. */
const leastWeight = 0.5;
/** As many as are read at a glance. */
const mostNamed = 3;

/**
 * What it means to lie farther along a direction: “Mostly larger: Bust, Hip, Waist, against shorter: Inside leg”.
 *
 * @param measures largest weight first, whatever its sign; none where figures do not differ in this direction
 */
export function axisWords(measures: readonly AxisMeasure[]): string {
  const greatest = Math.abs(measures[0]?.weight ?? 0);
  const named = measures.filter(({ weight }) => Math.abs(weight) >= leastWeight * greatest);
  const more = named.filter(({ weight }) => weight > 0);
  const less = named.filter(({ weight }) => weight < 0);
  if (named.length === 0) return "No difference";
  if (more.length === measures.length && measures.length > mostNamed) return "Larger all over";
  const isAll = named.length === measures.length && Math.max(more.length, less.length) <= mostNamed;
  const words = [more, less]
    .filter((side) => side.length > 0)
    .map(sideWords)
    .join(", against ");
  return isAll ? words[0]!.toUpperCase() + words.slice(1) : `Mostly ${words}`;
}

/** “larger: Bust, Hip; longer: Arm length” */
function sideWords(measures: readonly AxisMeasure[]): string {
  return [...groupedBy(measures.slice(0, mostNamed), ({ column, weight }) => comparativeOf(column, weight))]
    .map(([comparative, alike]) => `${comparative}: ${alike.map(({ column }) => column.heading).join(", ")}`)
    .join("; ");
}
