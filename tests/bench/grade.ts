/**
 * Speed of the grade: from one base figure to every other, every piece that has grade rules, in a process of its own. Times
 * are processor time, the median of the runs; “made ready” matches the rules with the columns of the chart.
 *
 *   node --import tsx tests/bench/grade.ts
 */
import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { girthMismatches } from "../../addin/grading/girthIdentity.ts";
import { grade, prepareGrading } from "../../addin/grading/grade.ts";
import { measureById } from "../../addin/measures/dictionary.ts";
import { seeded } from "../similarity/condensedOf.ts";
import { processorMs } from "./processorMs.ts";

const repeats = 15;
const measures = [...new Set(defaultGradeRules.map(({ measure }) => measure))];

/** Invented figures with every measure that a rule uses, in mm. */
function chartOf(count: number) {
  const random = seeded(3);
  const headings = ["Figure", ...measures.map((id) => measureById(id)?.name)];
  const rows = Array.from({ length: count }, (_, i) => [
    `Figure ${String(i + 1)}`,
    ...measures.map(() => 40 + 160 * random()),
  ]);
  return readChart([headings, ...rows]);
}

function timed(work: () => void): number {
  const times = Array.from({ length: repeats }, () => {
    const begin = process.cpuUsage();
    work();
    return processorMs(begin, process.cpuUsage());
  });
  return times.sort((a, b) => a - b)[Math.floor(repeats / 2)] ?? Number.NaN;
}

const cell = (text: string): string => text.padStart(14);
const points = gradePieces.reduce((sum, piece) => sum + piece.points.length, 0);
console.log(
  `\nGRADE: figures × ${String(gradePieces.length)} pieces with ${String(points)} points, processor time, median of the runs`,
);
console.log(["figures", "made ready", "grade", "ns a point"].map(cell).join(""));

const measured = [250, 500, 1000, 2000, 4000].map((count) => {
  const chart = chartOf(count);
  const prepare = () => prepareGrading(chart, defaultGradeRules, gradePieces);
  const grading = prepare();
  const readyMs = timed(prepare);
  let moved = 0;
  const gradeMs = timed(() => {
    for (let target = 1; target < count; target++) moved += grade(grading, 0, target).length;
  });
  if (moved !== repeats * (count - 1) * points) throw new Error("A point was left out.");
  console.log(
    [
      count.toLocaleString("en"),
      `${readyMs.toFixed(2)} ms`,
      `${gradeMs.toFixed(1)} ms`,
      ((gradeMs * 1e6) / ((count - 1) * points)).toFixed(0),
    ]
      .map(cell)
      .join(""),
  );
  return { count, gradeMs };
});

const first = measured[0];
const last = measured.at(-1);
if (first && last) {
  const exponent = Math.log(last.gradeMs / first.gradeMs) / Math.log(last.count / first.count);
  console.log(`The time grows with the power ${exponent.toFixed(2)} of the number of figures.`);
}
const checkMs = timed(() => girthMismatches(defaultGradeRules, gradePieces));
console.log(`Checking that all rules keep their girths: ${checkMs.toFixed(2)} ms.`);
