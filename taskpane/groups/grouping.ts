import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { copheneticCorrelation } from "../../addin/similarity/cophenetic.ts";
import { cutAt } from "../../addin/similarity/cut.ts";
import type { LinkageMethod, Merge } from "../../addin/similarity/linkage.ts";
import { linkage, linkageInPlace } from "../../addin/similarity/linkage.ts";
import { nameOrder } from "../../addin/similarity/nameOrder.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import type { GroupMethod } from "./methods.ts";

/** How the figures of a chart join, so that it can be cut anywhere without comparing them again. */
export interface GroupTree {
  /** Where in the chart each item of the tree stands, from 0: items are in the order of names. */
  readonly order: readonly number[];
  /** Joins of items, see `linkage`. */
  readonly merges: readonly Merge[];
  /** How faithfully the heights of the tree show the differences: 1 is perfectly. NaN when nobody can say. */
  readonly faithfulness: number;
}

/** The tree of a chart. The same figures are joined whatever the order of rows. */
export function groupTree(
  chart: Chart,
  columns: readonly ComparedColumn[],
  method: LinkageMethod,
): GroupTree {
  const { order, columns: named } = nameOrder(chart, columns);
  const distances = toleranceDistances(named, chart.figures.length);
  if (order.length > mostForFaithfulness) {
    return { order, merges: linkageInPlace(distances, method), faithfulness: Number.NaN };
  }
  const merges = linkage(distances, method);
  return { order, merges, faithfulness: copheneticCorrelation(distances, merges) };
}

/** More figures would need the memory of all their pairs three times over. */
const mostForFaithfulness = 2000;

/**
 * The group of each figure when the tree is cut at a height, in the order of the chart. From 1: larger groups first, groups
 * of one size by their first name.
 */
export function groupingAt({ order, merges }: GroupTree, cut: number): Int32Array {
  const ofItem = bySize(cutAt(merges, order.length, cut));
  const groupOf = new Int32Array(order.length);
  order.forEach((place, item) => (groupOf[place] = ofItem[item] ?? 0));
  return groupOf;
}

/** Numbers by first appearance → larger groups first; groups of one size keep their order. */
function bySize(numbers: Int32Array): Int32Array {
  const sizes = new Map<number, number>();
  numbers.forEach((number) => sizes.set(number, (sizes.get(number) ?? 0) + 1));
  const ranked = [...sizes].sort(([a, m], [b, n]) => n - m || a - b);
  const numberOf = new Map(ranked.map(([number], i) => [number, i + 1]));
  return numbers.map((number) => numberOf.get(number) ?? 0);
}

/** Columns with all tolerances made so many times larger. */
export function scaledColumns(columns: readonly ComparedColumn[], times: number): readonly ComparedColumn[] {
  if (times === 1) return columns;
  return columns.map((compared) => {
    const { floorMm, percent } = compared.tolerance;
    return { ...compared, tolerance: { floorMm: floorMm * times, percent: percent * times } };
  });
}

export const groupViews = ["cards", "tree", "map"] as const;

export type GroupView = (typeof groupViews)[number];

/** How figures are grouped, as the user has set it. */
export interface GroupSettings {
  /** Part of the body or class of garments. */
  readonly part: string;
  readonly method: GroupMethod;
  /** How far two figures may be apart, in tolerances. */
  readonly cut: number;
  readonly view: GroupView;
}
