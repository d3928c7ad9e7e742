/**
 * Our answer, in a process of its own so that its processor time and peak memory are its own.
 * Arguments: what (tree, groups or cells), number of figures, repeats, percent of the tolerances. Prints JSON.
 *
 * - `tree`: all joins by complete linkage, from columns of readings.
 * - `groups`: the groups within tolerance, from columns of readings.
 * - `cells`: the worksheet function GROUPS, from the cells that it is given to the cells that it gives. Each run has a figure of
 *   another name, so that nothing is kept from the run before.
 */
import { cutAt } from "../../addin/similarity/cut.ts";
import { figureMerges } from "../../addin/similarity/tree.ts";
import { groupsFunction } from "../../functions/groups.ts";
import { columnsOf, measureNames, randomFigures, tolerancesMm } from "./data.ts";
import { processorMs } from "./processorMs.ts";

const [what = "", ...numbers] = process.argv.slice(2);
const [count = 0, repeats = 1, percent = 0] = numbers.map(Number);
const rows = randomFigures(count);
const columns = columnsOf(rows, percent);
const chartOf = (run: number) => [
  ["Figure", ...measureNames],
  ...rows.map((row, i) => [`Figure ${String(i === 0 ? count + run : i + 1)}`, ...row]),
];
const tolerances = [
  ["Measure", "Tolerance"],
  ...measureNames.map((name, c) => [name, `${String(tolerancesMm[c]!)} mm`]),
];

interface Answer {
  readonly heights?: readonly number[];
  readonly groups?: readonly number[];
}

const tasks: Readonly<Record<string, (chart: ReturnType<typeof chartOf>) => Answer>> = {
  tree: () => ({ heights: figureMerges(columns, count, "complete").map(({ height }) => height) }),
  groups: () => ({ groups: [...cutAt(figureMerges(columns, count, "complete", 1), count, 1)] }),
  cells: (chart) => {
    const result = groupsFunction.compute([chart, tolerances, "all"]);
    return { groups: Array.isArray(result) ? result.slice(1).map((row) => Number(row[1])) : [] };
  },
};
const task = tasks[what];
if (!task) throw new Error(`There is no task “${what}”.`);

const runs = Array.from({ length: repeats }, (_, run) => {
  const chart = chartOf(run + 1);
  const begin = process.cpuUsage();
  const answer = task(chart);
  return { answer, ms: processorMs(begin, process.cpuUsage()) };
});
console.log(
  JSON.stringify({
    version: process.versions.node,
    times: runs.map((run) => run.ms),
    ...runs.at(-1)?.answer,
    peakMb: process.resourceUsage().maxRSS / 1024,
  }),
);
