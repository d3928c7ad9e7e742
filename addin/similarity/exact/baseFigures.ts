import type { Chart } from "../../chart/chart.ts";
import type { Apart } from "../apart.ts";
import { apart } from "../apart.ts";
import type { ComparedColumn } from "../comparedColumns.ts";
import { compareNames } from "../nameOrder.ts";
import type { BasesAnswer } from "./answers.ts";

/** A figure to keep as a base, and whom it serves. */
export interface BaseFigure {
  readonly base: string;
  /** The other figures that it serves, by name. */
  readonly serves: readonly string[];
  /** The one that needs the greatest alteration, the base figure’s readings first; of equals the first name. */
  readonly worst?: { readonly figure: string; readonly fromBase: Apart };
  /** The measures of which it has no reading, when it can be compared with no other figure for want of them. */
  readonly lacking: readonly ComparedColumn[];
}

/** The base figures of an answer: those that serve most first, then by name. */
export function baseFigures(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { baseOf }: BasesAnswer,
): readonly BaseFigure[] {
  const byName = chart.figures.map((_, item) => item).sort((i, j) => compareNames(chart, i, j));
  const served = new Map<number, number[]>();
  for (const item of byName) if (baseOf[item] === item) served.set(item, []);
  for (const item of byName) if (baseOf[item] !== item) served.get(baseOf[item]!)?.push(item);
  return [...served]
    .sort(([, a], [, b]) => b.length - a.length)
    .map(([base, others]): BaseFigure => {
      const worst = others
        .map((item) => ({ figure: chart.figures[item] ?? "", fromBase: apart(columns, base, item) }))
        .reduce<BaseFigure["worst"]>(
          (most, each) => (most && most.fromBase.distance >= each.fromBase.distance ? most : each),
          undefined,
        );
      return {
        base: chart.figures[base] ?? "",
        serves: others.map((item) => chart.figures[item] ?? ""),
        ...(worst && { worst }),
        lacking: lackingOf(columns, base),
      };
    });
}

/** A figure that cannot be compared with itself can be compared with nobody. */
function lackingOf(columns: readonly ComparedColumn[], item: number): readonly ComparedColumn[] {
  if (!Number.isNaN(apart(columns, item, item).distance)) return [];
  return columns.filter(({ column }) => Number.isNaN(column.mm[item] ?? Number.NaN));
}
