import type { Chart } from "../chart/chart.ts";
import type { Doubt } from "../chart/doubt.ts";
import { amount } from "./amount.ts";
import { checkReadings } from "./checkChart.ts";
import type { Flag, FlagKind } from "./flag.ts";

/** Flags that say nothing against a reading. */
export const notes: ReadonlySet<FlagKind> = new Set([
  "unlike the other figures",
  "one name, two rows",
  "same readings, two names",
  "estimates",
  "unit assumed",
]);

/**
 * Every doubt about the readings of a chart, the worst first; estimates come last.
 *
 * @param flags what the check says against readings; those that somebody has confirmed may be left out
 */
export function doubts(
  chart: Chart,
  flags: readonly Flag[] = checkReadings(chart).against,
): readonly Doubt[] {
  const flagged = flags.flatMap((flag): readonly Doubt[] => {
    const { row, column, readingMm, corrections, kind, measure, figure, unit } = flag;
    if (notes.has(kind) || (readingMm === undefined && corrections.length === 0)) return [];
    const what =
      readingMm === undefined
        ? measure || `every reading of ${figure}`
        : `${measure} ${amount(readingMm, unit)}`;
    return [
      {
        cells: corrections.length > 0 ? corrections : [{ row, column }],
        figure: readingMm === undefined ? "" : figure,
        says: `${what} (${kind})`,
        corrections,
      },
    ];
  });
  return [...flagged, ...estimates(chart)];
}

/** The estimates alone, which need no check. */
export function estimates(chart: Chart): readonly Doubt[] {
  return chart.measures.flatMap(({ origins, mm, unit, heading, position }) =>
    [...(origins ?? [])].flatMap(([figure, origin]): readonly Doubt[] =>
      origin === "estimated"
        ? [
            {
              cells: [{ row: chart.rows[figure]!, column: position }],
              figure: chart.figures[figure] ?? "",
              says: `${heading} ${amount(mm[figure]!, unit)} (an estimate)`,
              corrections: [],
            },
          ]
        : [],
    ),
  );
}
