/**
 * Whether figures share as often as is said: the sureness of every pair of many invented charts, whose bodies are known, beside
 * what is true.
 *
 *   node --import tsx tests/bench/sureness.ts [first seed] [charts]
 */
import { anyBody } from "../../addin/similarity/certainty/sharing.ts";
import type { Said } from "../similarity/sureness/calibration.ts";
import { calibration } from "../similarity/sureness/calibration.ts";
import type { SharingKind } from "../similarity/sureness/sharedBodies.ts";
import { sharings } from "../similarity/sureness/sharedBodies.ts";

/** The charts on which it was made have other seeds. */
const [first = 400_000, charts = 300] = process.argv.slice(2).map(Number);
const seeds = Array.from({ length: charts }, (_, i) => first + i);
const kinds = Object.keys(sharings) as SharingKind[];

const number = (value: number, digits = 2): string => value.toFixed(digits).padStart(9);
function print(title: string, tables: readonly (readonly Said[])[]): void {
  console.log(`\n${title}`);
  console.log(["".padEnd(12), ...kinds.map((kind) => kind.padStart(36))].join(""));
  console.log(`said        ${"    pairs     said    share        ±".repeat(kinds.length)}`);
  tables[0]?.forEach(({ from, to }, k) => {
    const cells = tables.map((table) => {
      const { pairs, share, sum } = table[k]!;
      // Two standard errors of a share of so many pairs, as if they were independent.
      const error = 2 * Math.sqrt(((sum / pairs) * (1 - sum / pairs)) / pairs);
      return `${String(pairs).padStart(9)}${[sum / pairs, share / pairs, error].map((each) => number(each)).join("")}`;
    });
    console.log(`${from.toFixed(1)}–${to.toFixed(1)}     ${cells.join("")}`);
  });
  const said = tables.map((table, k) => {
    const pairs = table.reduce((sum, each) => sum + each.pairs, 0);
    const perhaps = table.slice(1).reduce((sum, each) => sum + each.pairs, 0);
    return `${kinds[k]!} ${((100 * perhaps) / pairs).toFixed(2)} %`;
  });
  console.log(`Said to share with 0.1 and more: ${said.join(", ")} of the pairs.`);
}

print(
  `Of pairs said to share so probably, how many do, in ${String(charts)} charts each`,
  kinds.map((kind) => calibration(kind, seeds)),
);
print(
  "The same without what the chart teaches, in a tenth of the charts",
  kinds.map((kind) => calibration(kind, seeds.slice(0, charts / 10), anyBody)),
);
