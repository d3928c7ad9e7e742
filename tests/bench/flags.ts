/**
 * Speed of FLAGS, from cells to cells, in a process of its own: charts of invented figures (“plain”) and charts like the demo’s,
 * its figures repeated with sizes ± 8 % and 1 % noise, so that each has many near twins. Times are processor time, the median
 * of the runs.
 *
 *   node --import tsx tests/bench/flags.ts
 */
import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { usualShareOfHeight } from "../../addin/measures/usualShareOfHeight.ts";
import { figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import { flagsFunction } from "../../functions/flags.ts";
import { seeded } from "../similarity/condensedOf.ts";
import { normal } from "./data.ts";
import { processorMs } from "./processorMs.ts";

const repeats = 5;
const measureCount = 35;

/** Seeded figures × 35 measures, each about its usual share of the height, read to half a millimetre. */
function plainCells(count: number): Cells {
  const random = seeded(11);
  const measures = Object.entries(usualShareOfHeight).slice(0, measureCount);
  const rows = Array.from({ length: count }, (_, i): Cell[] => {
    const height = 250 + 310 * random();
    return [
      `Figure ${String(i + 1)}`,
      ...measures.map(([, share]) => halfMm(height * share * Math.exp(0.04 * normal(random)))),
    ];
  });
  return [["Figure", ...measures.map(([id]) => `${measureById(id)?.name ?? id} (mm)`)], ...rows];
}

/** The demo’s figures again and again, and as many measures that it does not have as make 35. */
function demoCells(count: number): Cells {
  const random = seeded(12);
  const chart = readChart([figureHeadings, ...trueRows().map((row) => row.map(({ value }) => value))]);
  const own = new Set(chart.measures.map(({ key }) => key));
  const more = Object.entries(usualShareOfHeight)
    .filter(([id]) => !own.has(id))
    .slice(0, measureCount - own.size);
  const height = chart.measures.find(({ key }) => key === "height");
  const rows = Array.from({ length: count }, (_, i): Cell[] => {
    const figure = i % chart.figures.length;
    const size = 0.92 + 0.16 * random();
    const read = (mm: number): Cell =>
      mm > 0 ? halfMm(mm * size * Math.exp(0.01 * normal(random))) : undefined;
    return [
      `${chart.figures[figure] ?? ""} ${String(i + 1)}`,
      ...chart.measures.map(({ mm }) => read(mm[figure] ?? Number.NaN)),
      ...more.map(([, share]) => read(share * (height?.mm[figure] ?? Number.NaN))),
    ];
  });
  const headings = [
    ...chart.measures.map(({ heading }) => heading),
    ...more.map(([id]) => measureById(id)?.name ?? id),
  ];
  return [["Figure", ...headings.map((heading) => `${heading} (mm)`)], ...rows];
}

function halfMm(mm: number): number {
  return Math.round(mm * 2) / 2;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function timed(work: (run: number) => void): number {
  const times = Array.from({ length: repeats }, (_, run) => {
    const begin = process.cpuUsage();
    work(run);
    return processorMs(begin, process.cpuUsage());
  });
  return median(times);
}

const cell = (text: string): string => text.padStart(14);
console.log(
  `\nFLAGS: figures × ${String(measureCount)} measures, from cells to cells, processor time, median of the runs`,
);
console.log(["figures", "plain", "flags", "like the demo", "flags"].map(cell).join(""));

const measured = [300, 600, 1250, 2500, 5000].map((count) => {
  const charts = [plainCells(count), demoCells(count)];
  const answers = charts.map((cells) => {
    let flags = 0;
    // A name differs from run to run, as after an edit, so that nothing is kept from the run before.
    const ms = timed((run) => {
      const table = flagsFunction.compute([cells.map((row, i) => (i === 1 ? [`Run ${String(run)}`, ...row.slice(1)] : row))]); // prettier-ignore
      flags = Array.isArray(table) ? table.length - 1 : Number.NaN;
    });
    return { ms, flags };
  });
  console.log(
    [
      count.toLocaleString("en"),
      ...answers.flatMap(({ ms, flags }) => [`${ms.toFixed(0)} ms`, flags.toLocaleString("en")]),
    ]
      .map(cell)
      .join(""),
  );
  return { count, answers };
});

for (const [kind, name] of ["plain", "like the demo"].entries()) {
  const first = measured[2];
  const last = measured.at(-1);
  if (!first || !last) continue;
  const times = (last.answers[kind]?.ms ?? Number.NaN) / (first.answers[kind]?.ms ?? Number.NaN);
  const power = Math.log(times) / Math.log(last.count / first.count);
  console.log(
    `Charts ${name}: the time grows with the power ${power.toFixed(2)} of the number of figures from 1,250 to 5,000.`,
  );
}
