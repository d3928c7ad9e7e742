/**
 * What the check of a chart finds: a slip of each kind in each of many invented charts (25–60 figures × 15–35 measures, bodies shared
 * under several heads, grown-ups, children, heads of all sizes), one at a time, and the charts as they are.
 *
 *   node --import tsx tests/bench/slips.ts [first seed] [charts]
 */
import { expectedCoverage } from "../checking/slips/expectedCoverage.ts";
import { countSlips, type SlipCount } from "../checking/slips/countSlips.ts";

/** The charts on which the checks were made have other seeds. */
const [first = 400_000, charts = 300] = process.argv.slice(2).map(Number);
const seeds = Array.from({ length: charts }, (_, i) => first + i);
const table = countSlips(seeds);

const percent = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`;
const line = (name: string, ...cells: readonly string[]): string =>
  name.padEnd(24) + cells.map((cell) => cell.padStart(14)).join("");
const row = (name: string, count: SlipCount): string =>
  line(
    name,
    ...(count.planted === 0
      ? ["", "", "", ""]
      : [
          count.planted.toLocaleString("en"),
          percent(count.found, count.planted),
          percent(count.rightFirst, count.planted),
          percent(count.rightValue, count.planted),
        ]),
    ((100 * count.falseFlags) / count.cleanCells).toFixed(3),
  );

console.log(`\nSlips of 1.3 × and more in ${String(charts)} invented charts`);
console.log(line("slip", "planted", "found", "right first", "right value", "false per 100"));
for (const [kind, count] of table) console.log(row(kind, count));
const all: SlipCount = { planted: 0, found: 0, rightFirst: 0, rightValue: 0, falseFlags: 0, cleanCells: 0 };
for (const [kind, count] of table) {
  if (kind === "none") continue;
  for (const key of Object.keys(all) as (keyof SlipCount)[]) all[key] += count[key];
}
console.log(row("all", all));

const { asked, inRange } = expectedCoverage(seeds, 20);
console.log(
  `Of ${asked.toLocaleString("en")} readings taken out one at a time, ${percent(inRange, asked)} lie in the range that EXPECTED gives for nineteen in twenty.`,
);
