import type { Explanation } from "../addin/fit/explainPair.ts";
import { isWearable, rank } from "../addin/fit/verdict.ts";
import type { Value } from "./descriptor.ts";
import { shownLength } from "./shown.ts";

/** The headings of what {@link told} gives. */
export const toldHeadings = ["Verdict", "Where", "Difference", "What to do"] as const;

/** A verdict in the cells of a row: the place and the amount that decide, and what to do about it. */
export function told({ verdict, governing, take, unjudged }: Explanation): readonly Value[] {
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
