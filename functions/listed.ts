import type { Chart } from "../addin/chart/chart.ts";
import { onceFor } from "../addin/chart/workOnce.ts";
import { doubts } from "../addin/checking/doubts.ts";
import type { Explanation } from "../addin/fit/explainPair.ts";
import { isWearable, rank } from "../addin/fit/verdict.ts";
import type { Value } from "./descriptor.ts";
import { shownLength } from "./shown.ts";

/** The headings of what {@link told} gives. */
export const toldHeadings = ["Verdict", "Where", "Difference", "What to do"] as const;

/** The doubts about a chart, worked out once for all formulas that name it. */
export const doubtsOf = onceFor((chart: Chart) => doubts(chart));

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
