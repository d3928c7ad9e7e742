import type { ReactNode } from "react";
import { useMemo } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import { restsOn, restWords } from "../../addin/fit/restsOn.ts";
import { useDoubts } from "../check/useCheck.ts";
import { DoubtBox } from "../ui/DoubtWords.tsx";
import type { Pair } from "./ranking.ts";
import type { Fit } from "./readFit.ts";

/**
 * The doubtful readings that the answer about a pair rests on, and whether it would change if they were mended; nothing where
 * it rests on none, and while the chart is being checked.
 */
export function RestsOn(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly pair: Pair;
}): ReactNode {
  const { fit, fitting, pair } = props;
  const { pattern, figure } = pair;
  const { used, rules } = fit;
  const doubtful = useDoubts(used.figures, fitting.view.chart);
  const grounds = useMemo(
    () => (doubtful ? restsOn(fitting, pattern, figure, doubtful, rules) : []),
    [fitting, pattern, figure, doubtful, rules],
  );
  return <DoubtBox says={grounds.map((ground) => restWords(ground, "Check"))} />;
}
