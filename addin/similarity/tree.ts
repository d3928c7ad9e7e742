import type { Chart } from "../chart/chart.ts";
import type { ComparedColumn } from "./comparedColumns.ts";
import { inMergeOrder } from "./labelMerges.ts";
import type { LinkageMethod, Merge } from "./linkage.ts";
import { linkageInPlace } from "./linkage.ts";
import { nameOrder } from "./nameOrder.ts";
import { toleranceDistances } from "./toleranceDistances.ts";

/**
 * The clustering of a chart by tolerance distance, merge by merge. A figure is −(its row below the headings, from 1), an
 * earlier merge its number from 1. The same figures are joined whatever the order of rows.
 *
 * @param columns see `comparedColumns`
 * @throws {InputError} when there are too many figures
 */
export function figureTree(
  chart: Chart,
  columns: readonly ComparedColumn[],
  method: LinkageMethod = "complete",
): readonly Merge[] {
  const named = nameOrder(chart, columns);
  const rowNumber = (label: number) => (label < 0 ? -chart.rows[named.order[-label - 1]!]! : label);
  return linkageInPlace(toleranceDistances(named.columns, chart.figures.length), method).map((merge) => {
    const [left, right] = inMergeOrder(rowNumber(merge.left), rowNumber(merge.right));
    return { ...merge, left, right };
  });
}
