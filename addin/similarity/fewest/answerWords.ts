import type { Chart } from "../../chart/chart.ts";
import type { ComparedColumn } from "../columns.ts";
import type { BasesAnswer, ExactAnswer } from "./fewestShared.ts";
import { compareNames } from "../nameOrder.ts";
import type { Apart } from "../pair.ts";
import { apart } from "../pair.ts";

/**
 * What an answer is worth, in words.
 *
 * @example proofWords(answer) // "4 base figures reach every figure, and no fewer can. No other 4 need less alteration in all."
 */
export function proofWords(answer: ExactAnswer): string {
  const { count, atLeast, isProved } = answer;
  const open = `At least ${String(atLeast)} ${atLeast === 1 ? "is" : "are"} needed; whether fewer than ${String(count)} can do is not settled.`;
  if (answer.kind === "groups") {
    const found = `${String(count)} ${count === 1 ? "group holds" : "groups hold"} every figure`;
    return isProved ? `${found}, and no fewer can.` : `${found}. ${open}`;
  }
  const found = `${String(count)} base ${count === 1 ? "figure reaches" : "figures reach"} every figure`;
  if (!isProved) return `${found}. ${open}`;
  const least = answer.isLeastAlteration
    ? `No other ${String(count)} ${count === 1 ? "needs" : "need"} less alteration in all.`
    : `Another ${String(count)} may need less alteration in all.`;
  return `${found}, and no fewer can. ${least}`;
}

/** A figure to keep as a base, and whom it serves. */
export interface BaseFigure {
  readonly base: string;
  /** Where it stands in the chart, from 0. */
  readonly place: number;
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
        place: base,
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
