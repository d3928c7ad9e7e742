/**
 * Speed of WHATFITS: the verdict of every pattern on every figure, in a process of its own. Times are processor time, the
 * median of the runs; “made ready” reads both tables and works out what does not depend on the figure.
 *
 *   node --import tsx tests/bench/match.ts
 */
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatterns } from "../../addin/chart/readPatterns.ts";
import { matchAll, prepareFitting } from "../../addin/fit/match.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";
import { figureCells, patternCells } from "./data.ts";
import { processorMs } from "./processorMs.ts";

const repeats = 7;
function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function timed(work: () => void): number {
  const times = Array.from({ length: repeats }, () => {
    const begin = process.cpuUsage();
    work();
    return processorMs(begin, process.cpuUsage());
  });
  return median(times);
}

function heapMb(): number {
  globalThis.gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 2 ** 20;
}

const cell = (text: string): string => text.padStart(14);
console.log("\nMATCH: patterns × figures, processor time, median of the runs");
console.log(["pairs", "made ready", "verdicts", "ns a pair", "result"].map(cell).join(""));

const sizes = [
  [125, 2000],
  [250, 2000],
  [500, 2000],
  [1000, 2000],
  [1000, 4000],
] as const;
const measured = sizes.map(([patternCount, figureCount]) => {
  const figures = figureCells(figureCount);
  const patterns = patternCells(patternCount, figureCount);
  const prepare = () => {
    const chart = readChart(figures);
    return prepareFitting(readPatterns(patterns, chart), chart);
  };
  const readyMs = timed(prepare);
  const fitting = prepare();
  const matchMs = timed(() => {
    matchAll(fitting);
  });
  const pairs = patternCount * figureCount;
  const resultMb = matchAll(fitting).ranks.byteLength / 2 ** 20;
  console.log(
    [
      pairs.toLocaleString("en"),
      `${readyMs.toFixed(0)} ms`,
      `${matchMs.toFixed(0)} ms`,
      ((matchMs * 1e6) / pairs).toFixed(0),
      `${resultMb.toFixed(1)} MB`,
    ]
      .map(cell)
      .join(""),
  );
  return { pairs, matchMs, fitting };
});

const first = measured[0];
const last = measured.at(-1);
if (first && last) {
  const exponent = Math.log(last.matchMs / first.matchMs) / Math.log(last.pairs / first.pairs);
  console.log(`The time grows with the power ${exponent.toFixed(2)} of the number of pairs.`);
}

const counted = measured[2] && matchAll(measured[2].fitting).ranks;
const shares = verdicts.map((name, rankOf) => {
  const share = (counted?.filter((each) => each === rankOf).length ?? 0) / (counted?.length ?? 1);
  return `${name} ${(100 * share).toFixed(1)} %`;
});
console.log(`Verdicts of 500 × 2,000: ${shares.join(", ")}.`);

const figures = figureCells(2000);
const patterns = patternCells(500, 2000);
const before = heapMb();
const started = performance.now();
const table = whatFitsFunction.compute([patterns, figures]);
const wallMs = performance.now() - started;
const afterMb = heapMb();
console.log(
  `The worksheet function, from cells to cells, 500 × 2,000: ${wallMs.toFixed(0)} ms by the clock, ` +
    `${Array.isArray(table) ? String(table.length) : "0"} rows, ${(afterMb - before).toFixed(0)} MB more in use; ` +
    `peak of the process ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB.`,
);
