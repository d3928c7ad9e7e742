import type { MeasureColumn } from "../chart/chart.ts";
import { comparativeOf } from "./differenceWords.ts";

/** How much a measure counts in a direction of the map: from −1 to 1, the squares of all add up to 1. */
export interface AxisMeasure {
  readonly column: MeasureColumn;
  readonly weight: number;
}

/** A measure is named from this share of the greatest weight on. */
const leastShare = 0.5;
/** As many as are read at a glance. */
const mostNamed = 3;

/**
 * What it means to lie farther along a direction: “Mostly larger: Bust, Hip, Waist, against shorter: Inside leg”.
 *
 * @param measures largest weight first, whatever its sign; none where figures do not differ in this direction
 */
export function axisWords(measures: readonly AxisMeasure[]): string {
  const greatest = Math.abs(measures[0]?.weight ?? 0);
  const named = measures.filter(({ weight }) => Math.abs(weight) >= leastShare * greatest);
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
  const headings = new Map<string, string[]>();
  for (const { column, weight } of measures.slice(0, mostNamed)) {
    const comparative = comparativeOf(column, weight);
    headings.set(comparative, [...(headings.get(comparative) ?? []), column.heading]);
  }
  return [...headings].map(([comparative, list]) => `${comparative}: ${list.join(", ")}`).join("; ");
}
