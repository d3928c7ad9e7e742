import type { Chart } from "../../addin/chart/chart.ts";
import { apart } from "../../addin/similarity/pair.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { Difference } from "../../addin/similarity/differenceWords.ts";
import type { BasesAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import { compareNames } from "../../addin/similarity/nameOrder.ts";

/** A figure to draft for, and the figures that its patterns are altered for. Places in the chart, from 0. */
export interface HouseModel {
  readonly base: number;
  /** By name, without the house model itself. */
  readonly served: readonly number[];
  /** The figure that needs the largest alteration, of equals the first; absent when none needs any. */
  readonly farthest?: { readonly place: number; readonly difference: Difference };
}

/** The house models of an answer, those that serve most first, equals by name. */
export function houseModels(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { baseOf }: BasesAnswer,
): readonly HouseModel[] {
  const servedBy = new Map<number, number[]>();
  for (const base of baseOf) if (!servedBy.has(base)) servedBy.set(base, []);
  baseOf.forEach((base, place) => {
    if (base !== place) servedBy.get(base)?.push(place);
  });
  return [...servedBy]
    .map(([base, places]) => {
      const served = places.sort((a, b) => compareNames(chart, a, b));
      const farthest = farthestOf(columns, base, served);
      return { base, served, ...(farthest && { farthest }) };
    })
    .sort((a, b) => b.served.length - a.served.length || compareNames(chart, a.base, b.base));
}

function farthestOf(
  columns: readonly ComparedColumn[],
  base: number,
  served: readonly number[],
): HouseModel["farthest"] {
  let farthest: HouseModel["farthest"];
  for (const place of served) {
    const { worst, deltaMm = 0, distance } = apart(columns, base, place);
    if (worst && distance > (farthest?.difference.ofTolerance ?? 0)) {
      farthest = { place, difference: { column: worst.column, deltaMm, ofTolerance: distance } };
    }
  }
  return farthest;
}
