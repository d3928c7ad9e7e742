import type { Chart } from "../chart/chart.ts";
import type { LengthUnit } from "../measures/units.ts";
import { lengthUnits } from "../measures/units.ts";
import type { Flag } from "./flag.ts";
import type { Proportions } from "./proportions.ts";
import { columnAt, correctionsBy, rowFlag, withFactor, type Place } from "./readings.ts";
import { timesOff, unitFactors, unitQuestion, unitSlip } from "./unitSlips.ts";

/** Flags, and the chart with what they suggest put in. */
export interface Mended {
  readonly flags: readonly Flag[];
  readonly chart: Chart;
}

/** A figure counts as far from all others when nobody comes within this factor … */
const gap = Math.log(2);
/** … and at most this share of the figures stands on its side of the gap. */
const largestMinority = 1 / 3;
/** A figure put right may be this much larger or smaller than all others, and more when readings of its own bear it out. */
const reach = Math.log(1.25);
const reachWithSupport = Math.log(2);
/** A reading agrees with a factor when it lies this close to it. */
const close = 0.3;
/** Two figures of one body differ less than this in size. */
const sameSize = 0.05;

/**
 * Figures whose readings, most or all of them, stand in a wrong unit.
 *
 * Such a row keeps its proportions, so that none of its readings stands out: only its size does. A row is flagged when
 * its size lies beyond a gap of a factor 2 from all others, at most a third of the figures is on that side, and a unit
 * factor brings it among the others. The factor must also be borne out by readings of the row that are right as they
 * are, or by a figure of the same build and the size it would then have; only the factors 10 and 25.4 may do
 * without, because no two figures of one wardrobe differ that much.
 *
 * @param fit what is usual in the chart
 */
export function mendRowUnits(chart: Chart, fit: Proportions | undefined): Mended {
  if (!fit) return { flags: [], chart };
  let mended = chart;
  const flags: Flag[] = [];
  const { far, others } = splitBySize(fit.sizes);
  for (const figure of far) {
    const factor = rowFactor(fit, figure, others);
    if (factor === undefined) continue;
    const shift = Math.log(factor);
    const wrong = fit.residuals[figure]!.flatMap((residual, column) =>
      Math.abs(residual) < Math.abs(residual - shift) ? [{ figure, column }] : [],
    );
    mended = withFactor(mended, wrong, factor);
    flags.push(
      rowFlag(chart, figure, {
        kind: "whole row in a wrong unit",
        why: whyRow(chart, figure, wrong, factor),
        corrections: correctionsBy(chart, wrong, factor),
      }),
    );
  }
  return { flags, chart: mended };
}

/** Figures beyond a wide gap at either end of the sizes, and the sizes of the rest. */
function splitBySize(sizes: readonly number[]): { far: readonly number[]; others: readonly number[] } {
  const order = sizes.map((size, i) => ({ size, i })).filter(({ size }) => !Number.isNaN(size));
  order.sort((a, b) => a.size - b.size);
  const most = Math.floor(order.length * largestMinority);
  let low = 0;
  let high = order.length;
  for (let k = 1; k < order.length; k++) {
    if (order[k]!.size - order[k - 1]!.size < gap) continue;
    if (k <= most) low = k;
    else if (order.length - k <= most) high = Math.min(high, k);
  }
  return {
    far: [...order.slice(0, low), ...order.slice(high)].map(({ i }) => i),
    others: order.slice(low, high).map(({ size }) => size),
  };
}

function rowFactor(fit: Proportions, figure: number, others: readonly number[]): number | undefined {
  const beyond = (size: number) => Math.max(others[0]! - size, size - others.at(-1)!);
  const candidates = unitFactors
    .map((factor) => ({ factor, shift: Math.log(factor), size: fit.sizes[figure]! + Math.log(factor) }))
    .map((candidate) => ({ ...candidate, support: supportOf(fit, figure, candidate) }))
    .filter(({ size, support }) => beyond(size) <= (support > 0 ? reachWithSupport : reach))
    .filter(({ factor, support }) => support > 0 || Math.abs(Math.log(factor)) > 2)
    .sort((a, b) => b.support - a.support);
  return candidates[0]?.factor;
}

/** Readings that are right as they are, and one more for a figure of the same build and size. */
function supportOf(
  fit: Proportions,
  figure: number,
  { shift, size }: { readonly shift: number; readonly size: number },
): number {
  const right = fit.residuals[figure]!.filter((residual) => Math.abs(residual - shift) < close).length;
  return right + (fit.mates(figure).some((mate) => Math.abs(fit.sizes[mate]! - size) < sameSize) ? 1 : 0);
}

function whyRow(chart: Chart, figure: number, wrong: readonly Place[], factor: number): string {
  const units = new Set<LengthUnit>(wrong.map(({ column }) => columnAt(chart, column).unit));
  const unit = lengthUnits.find((one) => units.has(one)) ?? "mm";
  const whose = units.size === 1 ? ` in ${unit}` : "";
  const all = wrong.length === chart.measures.filter(({ mm }) => mm[figure]! > 0).length ? "All" : "Most";
  return `${all} readings${whose} of ${chart.figures[figure]!} are ${timesOff(factor)} beside the other figures: ${unitQuestion(unitSlip(factor, unit), "were they")}`;
}
