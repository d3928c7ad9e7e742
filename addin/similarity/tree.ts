import type { Chart } from "../chart/chart.ts";
import type { ComparedColumn } from "./columns.ts";
import { completeJoins } from "./completeLinkage.ts";
import type { LinkageMethod, Merge } from "./linkage.ts";
import { labelMerges, linkageInPlace } from "./linkage.ts";
import { checkSize, toleranceDistances } from "./matrix.ts";
import { nameOrder } from "./nameOrder.ts";
import { readingsOf } from "./pair.ts";

/**
 * The clustering of figures by tolerance distance, merge by merge. Only complete linkage, which needs no distances of all
 * pairs, is for many thousands of figures.
 *
 * @param columns see `comparedColumns`
 * @param size number of figures
 * @param reach merges above this are not needed, in tolerances
 * @throws {InputError} when there are too many figures for another method
 */
export function figureMerges(
  columns: readonly ComparedColumn[],
  size: number,
  method: LinkageMethod,
  reach = Infinity,
): readonly Merge[] {
  return method === "complete"
    ? labelMerges(completeJoins(readingsOf(columns, size), reach), size)
    : linkageInPlace(toleranceDistances(columns, size), method);
}

/** One step of a clustering: what joins with what. */
export interface TreeStep {
  /** From 1. */
  readonly step: number;
  /** Figures before groups; figures by name, groups by the step that made them. */
  readonly sides: readonly [TreeSide, TreeSide];
  /** How far the two are apart, in tolerances, as the method counts it. */
  readonly height: number;
  /** Figures in the new group. */
  readonly size: number;
}

/** A figure by its name, or the group that an earlier step made. */
export type TreeSide = { readonly figure: string } | { readonly step: number };

/**
 * The clustering of a chart by tolerance distance, step by step, closest first. It does not depend on the order of rows.
 *
 * @param columns see `comparedColumns`
 * @throws {InputError} when there are too many figures
 */
export function figureTree(
  chart: Pick<Chart, "figures">,
  columns: readonly ComparedColumn[],
  method: LinkageMethod = "complete",
): readonly TreeStep[] {
  checkSize(chart.figures.length);
  const named = nameOrder(chart, columns);
  const side = (label: number): TreeSide =>
    label < 0 ? { figure: chart.figures[named.order[-label - 1]!]! } : { step: label };
  return figureMerges(named.columns, chart.figures.length, method).map(
    ({ left, right, height, size }, i) => ({ step: i + 1, sides: [side(left), side(right)], height, size }),
  );
}
