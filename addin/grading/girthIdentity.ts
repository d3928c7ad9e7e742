import type { GirthLine, GradePiece, GradeRule } from "../chart/gradeRule.ts";

/** A girth line whose pieces do not add up to the change of its girth. */
export interface GirthMismatch {
  readonly garment: string;
  /** Name of the girth line. */
  readonly line: string;
  /** id of the girth that the line has to follow */
  readonly girth: string;
  /** id of the measure of which there is too much or too little: the girth itself, or another that must cancel out */
  readonly measure: string;
  /** Sum of the shares of `measure`, counted with mirroring. */
  readonly sum: number;
  /** What the sum is too much by (below 0: too little), as a share of the change of `measure`. */
  readonly excess: number;
  /** The rules that make up the sum. */
  readonly rules: readonly GradeRule[];
}

/** Shares that are typed as decimals, such as 0.333, may be off by a thousandth of the girth. */
const allowed = 0.001 + 1e-12;

/**
 * Where a set of grade rules does not keep its girths: over all pieces of a garment, counted with mirroring, the movements
 * across at each girth line must add up to the change of that girth, and to nothing of any other measure.
 *
 * @param pieces the pieces to check; the pieces of one garment together
 * @returns none when every line adds up
 */
export function girthMismatches(
  rules: readonly GradeRule[],
  pieces: readonly GradePiece[],
): readonly GirthMismatch[] {
  const sums = new Map<string, Sum>();
  for (const { name: piece, garment, points } of pieces) {
    for (const { name: point, line } of points) {
      if (!line) continue;
      // A line without any rule has a sum too: 0.
      sumOf(sums, garment, line, line.measure);
      for (const rule of rules) {
        if (rule.piece !== piece || rule.point !== point) continue;
        const sum = sumOf(sums, garment, line, rule.measure);
        sum.sum += rule.across * line.times * line.end;
        if (rule.across !== 0 || rule.measure === line.measure) sum.rules.push(rule);
      }
    }
  }
  return [...sums.values()].flatMap((sum) => {
    const excess = sum.sum - (sum.measure === sum.girth ? 1 : 0);
    return Math.abs(excess) <= allowed ? [] : [{ ...sum, excess }];
  });
}

interface Sum {
  readonly garment: string;
  readonly line: string;
  readonly girth: string;
  readonly measure: string;
  sum: number;
  readonly rules: GradeRule[];
}

function sumOf(sums: Map<string, Sum>, garment: string, line: GirthLine, measure: string): Sum {
  const key = [garment, line.name, measure].join("\n");
  const found = sums.get(key);
  if (found) return found;
  const sum = { garment, line: line.name, girth: line.measure, measure, sum: 0, rules: [] };
  sums.set(key, sum);
  return sum;
}
