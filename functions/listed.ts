import type { Chart } from "../addin/chart/chart.ts";
import { onceFor } from "../addin/chart/workOnce.ts";
import type { Doubt } from "../addin/chart/doubt.ts";
import { checkReadings } from "../addin/checking/checkChart.ts";
import { doubts, estimates } from "../addin/checking/doubts.ts";
import type { Explanation } from "../addin/fit/explainPair.ts";
import type { Verdict } from "../addin/fit/verdict.ts";
import { isWearable, rank } from "../addin/fit/verdict.ts";
import type { Value } from "./descriptor.ts";
import { shownLength } from "./shown.ts";

/** The headings of what {@link told} gives. */
export const toldHeadings = ["Verdict", "Where", "Difference", "What to do"] as const;

/** What the check says of the readings of a chart, worked out once for all formulas that name it. */
export const readingFlagsOf = onceFor(checkReadings);

/** The doubts about a chart, likewise. */
export const doubtsOf = onceFor((chart: Chart) => doubts(chart, readingFlagsOf(chart).against));

/** A chart of more figures takes longer to check than to group or to match. */
export const mostDoubted = 1000;

/** The doubts about a chart of up to {@link mostDoubted} figures; in a larger one FLAGS tells of all but estimates. */
export function doubtsBeside(chart: Chart): readonly Doubt[] {
  return chart.figures.length > mostDoubted ? estimates(chart) : doubtsOf(chart);
}

/** For the reference of functions that use it. */
export const doubtfulNote = `In a chart of more than ${mostDoubted.toLocaleString("en")} figures only estimates are told; see FLAGS.`;

/** For the reference of functions that can show bodies. */
export const bodiesNote =
  "With tolerances in the place of bodies, figures that share a body stand together, all named; a body is as good as the worst of its figures.";

/** The worst of some verdicts. */
export function worstOf(some: readonly Verdict[]): Verdict {
  return some.reduce((worst, verdict) => (rank[verdict] > rank[worst] ? verdict : worst));
}

/**
 * A verdict in the cells of a row: the place and the amount that decide, and what to do about it.
 *
 * @param mark what is to be said about the readings that it rests on
 */
export function told(explanation: Explanation, mark: string): readonly Value[] {
  const cells = toldAlone(explanation);
  return cells.map((cell, i) =>
    i < cells.length - 1 || mark === "" ? cell : `${String(cell)} ${mark}`.trim(),
  );
}

function toldAlone({ verdict, governing, take, unjudged }: Explanation): readonly Value[] {
  const unknown = isWearable(verdict) ? unjudged.join(" ") : "";
  if (verdict === "fits" || !governing) return [verdict, "", "", unknown];
  const toMeasure = take.length > 0 ? `Measure ${take.join(" and ")}.` : unknown;
  return [
    verdict,
    governing.place,
    shownLength(governing.differenceMm, governing.unit),
    governing.alteration?.words ?? toMeasure,
  ];
}

/** Best first; of equal verdicts the one that is less far off. */
export function bestFirst(a: Explanation, b: Explanation): number {
  return rank[a.verdict] - rank[b.verdict] || farOff(a) - farOff(b);
}

function farOff({ verdict, governing }: Explanation): number {
  if (verdict === "fits" || !governing) return 0;
  const share = Math.abs(governing.differenceMm) / Math.max(1, governing.needsMm);
  return Number.isFinite(share) ? share : 0;
}
