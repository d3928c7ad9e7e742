import type { Chart } from "../../addin/chart/chart.ts";
import type { GirthMismatch } from "../../addin/grading/girthIdentity.ts";
import { mismatchWords } from "../../functions/gradeWords.ts";
import type { TableProblem } from "../ui/ProblemList.tsx";

/** Girth lines that do not add up, in words, with the rows that make them up. */
export function mismatchProblems(
  mismatches: readonly GirthMismatch[],
  chart: Chart,
  base: number,
  targets: readonly number[],
): readonly TableProblem[] {
  return mismatches.map((mismatch) => {
    const column = chart.measures.find(({ key }) => key === mismatch.measure);
    const excessesMm = targets
      .map((target) =>
        Math.abs(mismatch.excess * ((column?.mm[target] ?? Number.NaN) - (column?.mm[base] ?? Number.NaN))),
      )
      .filter((mm) => mm > 0);
    return {
      rows: mismatch.rules.flatMap(({ row }) => (row === undefined ? [] : [row])),
      message: mismatchWords(mismatch, excessesMm, column?.unit ?? "mm"),
    };
  });
}
