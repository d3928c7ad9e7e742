/**
 * Speed of WHATFITS: the verdict of every pattern on every figure, in a process of its own. Times are processor time, the
 * median of the runs; “made ready” reads both tables and works out what does not depend on the figure.
 *
 *   node --import tsx tests/bench/match.ts
 */
import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatterns } from "../../addin/chart/readPatterns.ts";
import { matchAll, prepareFitting } from "../../addin/fit/match.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";
import { seeded } from "../similarity/condensedOf.ts";
import { processorMs } from "./processorMs.ts";

const repeats = 7;
/** Body measures of an invented figure, mm. */
const typical = {
  ...{ Head: 160, Neck: 66, Bust: 180, Waist: 134, Hip: 194, "Shoulder girth": 205, "Upper arm": 50 },
  ...{ Wrist: 33, Hand: 40, "Arm length": 128, "Back waist": 88, Thigh: 108, Calf: 74, Ankle: 44 },
  ...{ Heel: 62, "Foot length": 52, "Foot width": 19, "Heel height": 3, "Hand length": 34 },
};

function figureCells(count: number): Cells {
  const random = seeded(1);
  const rows = Array.from({ length: count }, (_, i): Cell[] => {
    const size = 0.7 + 0.7 * random();
    const readings = Object.values(typical).map((mm) =>
      // One reading in fifty is missing.
      random() < 0.02 ? undefined : mm * size * (0.95 + 0.1 * random()),
    );
    return [`Figure ${String(i + 1)}`, random() < 0.3 ? "yes" : "no", ...readings];
  });
  return [["Figure", "Hands removable", ...Object.keys(typical)], ...rows];
}

/** Patterns of every class, drafted for figures of the chart; every fourth is worn over the two before it. */
function patternCells(count: number, figures: number): Cells {
  const random = seeded(2);
  const rows = Array.from({ length: count }, (_, i): Cell[] => [
    `P${String(i + 1)}`,
    defaultGarmentClasses[i % defaultGarmentClasses.length]?.name,
    `Figure ${String(1 + Math.floor(random() * figures))}`,
    `${String(Math.floor(random() * 60))}%`,
    0.2 + 0.5 * random(),
    i % 4 === 3 ? `P${String(i)}, P${String(i - 1)}` : "",
    random() < 0.5 ? "back" : "side",
    40 + 80 * random(),
    80 + 40 * random(),
    30 + 20 * random(),
    50 + 60 * random(),
  ]);
  const headings = [
    ...["Pattern", "Garment class", "Drafted for", "Stretch %", "Thickness (mm)", "Worn over", "Opens"],
    ...["Opening length", "Neck opening", "Cuff opening", "Hem opening"],
  ];
  return [headings, ...rows];
}

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
