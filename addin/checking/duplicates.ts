import type { Chart } from "../chart/chart.ts";
import { amount } from "./amount.ts";
import { figureKey } from "../chart/find.ts";
import type { Flag } from "./flag.ts";
import { rowFlag } from "./readings.ts";
import { differ } from "./twins.ts";

/** One name on two rows, at the later row. */
export function findNameTwice(chart: Chart): readonly Flag[] {
  const first = new Map<string, number>();
  return chart.figures.flatMap((name, figure) => {
    const before = first.get(figureKey(name));
    if (before === undefined) {
      first.set(figureKey(name), figure);
      return [];
    }
    return [rowFlag(chart, figure, { kind: "one name, two rows", why: whyTwice(chart, before, figure) })];
  });
}

function whyTwice(chart: Chart, before: number, figure: number): string {
  const rows = `rows ${String(chart.rows[before]! + 1)} and ${String(chart.rows[figure]! + 1)} of the chart`;
  const different = chart.measures.filter((column) => differ(column, before, figure));
  if (different.length === 0)
    return `${chart.figures[figure]!} stands in ${rows} with the same readings. Delete one of them.`;
  const examples = different
    .slice(0, 3)
    .map(
      ({ heading, mm, unit }) => `${heading} ${amount(mm[before]!, unit)} and ${amount(mm[figure]!, unit)}`,
    );
  return `${chart.figures[figure]!} stands in ${rows} with different readings (${examples.join(", ")}). Give each figure a name of its own, or delete the older row.`;
}
