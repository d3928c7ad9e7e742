/**
 * Speed of the exact answers for 300 figures × 20 measures: the fewest groups and the fewest base figures, at three tolerances, of
 * invented bodies (versions of one sculpt with reading errors) and of random ones; and of the demo, without the solver. The
 * peer is the plain set-cover model of the base figures, given to the same solver as it stands. Times are by the clock. Fails
 * when the two disagree. Run through `npm run bench`.
 */
import loadHighs from "highs";
import { figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { comparedColumns } from "../../addin/similarity/columns.ts";
import { itemsOf } from "../../addin/similarity/fewest/bits.ts";
import { exactBases } from "../../addin/similarity/fewest/exactBases.ts";
import { exactGroups } from "../../addin/similarity/fewest/exactGroups.ts";
import { fewestBaseFigures, fewestSharedGroups } from "../../addin/similarity/fewest/fewestShared.ts";
import { nearGraph } from "../../addin/similarity/fewest/graph.ts";
import { highsSolver } from "../../addin/similarity/fewest/highsSolver.ts";
import { distanceBetween, readingsOf } from "../../addin/similarity/pair.ts";
import { columnsOf, randomFigures, versionsOfBodies } from "./data.ts";

const limitMs = 20_000;
const solver = highsSolver(await loadHighs());

console.log("\nExact answers for 300 figures × 20 measures (reach in tolerances)");
console.log(line("", "reach", "groups", "", "base figures", "", "least alteration", "plain set cover"));
const sets = [
  { name: "40 bodies", figures: versionsOfBodies(300, 40), reaches: [1, 1.25, 1.5] },
  { name: "random", figures: randomFigures(300), reaches: [6.2, 10, 15] },
];
for (const { name, figures, reaches } of sets) {
  const readings = readingsOf(columnsOf(figures), figures.length);
  const alteration = (i: number, j: number) => (i === j ? 0 : distanceBetween(readings, i, j));
  for (const reach of reaches) {
    const graph = nearGraph(readings, reach);
    const groups = timed((leftMs) => exactGroups(graph, { solver, leftMs }));
    let provedMs: number | undefined;
    const bases = timed((leftMs) =>
      exactBases(graph, alteration, {
        solver,
        leftMs,
        onProgress: ({ count, atLeast }) => {
          if (count === atLeast) provedMs ??= limitMs - leftMs();
        },
      }),
    );
    const plain = timed((leftMs) =>
      plainCover(
        graph.near.map((row, i) => [i, ...itemsOf(row)]),
        leftMs(),
      ),
    );
    if (plain.found !== undefined && bases.found.count === bases.found.atLeast && plain.found !== bases.found.count) {
      throw new Error(`${name}: ${String(bases.found.count)} base figures, but plainly ${String(plain.found)}.`);
    } // prettier-ignore
    console.log(
      line(
        name,
        String(reach),
        words(groups.found),
        seconds(groups.ms),
        words(bases.found),
        seconds(provedMs ?? bases.ms),
        bases.found.isLeastAlteration ? seconds(bases.ms) : "not proved",
        plain.found === undefined ? "limit" : seconds(plain.ms),
      ),
    );
  }
}

const demo = readChart([figureHeadings, ...trueRows().map((row) => row.map(({ value }) => value))]);
const columns = comparedColumns(demo);
const demoGroups = timed(() => fewestSharedGroups(demo, columns));
const demoBases = timed(() => fewestBaseFigures(demo, columns));
console.log(
  `The demo, ${String(demo.figures.length)} figures, without the solver: groups ${words(demoGroups.found)} in ${seconds(demoGroups.ms)}, ` +
    `base figures ${words(demoBases.found)} in ${seconds(demoBases.ms)}.`,
);

/** The number of sets in the smallest cover; `undefined` when that is not proved in time. */
function plainCover(rows: readonly (readonly number[])[], timeLimitMs: number): number | undefined {
  const model = solver.open(rows.length);
  try {
    model.addVariables({ cost: 1, most: 1, isWhole: true, rows });
    const { outcome, values } = model.solve({ gap: 0.999, timeLimitMs });
    return outcome === "proved" ? values?.filter((value) => value > 0.5).length : undefined;
  } finally {
    model.close();
  }
}

function timed<T>(work: (leftMs: () => number) => T): { readonly found: T; readonly ms: number } {
  const begin = performance.now();
  const found = work(() => begin + limitMs - performance.now());
  return { found, ms: performance.now() - begin };
}

function words({ count, atLeast }: { readonly count: number; readonly atLeast: number }): string {
  return count === atLeast ? `${String(count)} proved` : `${String(count)}, at least ${String(atLeast)}`;
}

function seconds(ms: number): string {
  return ms < 1000 ? `${ms.toFixed(0)} ms` : `${(ms / 1000).toFixed(1)} s`;
}

function line(name: string, ...cells: readonly string[]): string {
  return name.padEnd(12) + cells.map((cell) => cell.padStart(17)).join("");
}
