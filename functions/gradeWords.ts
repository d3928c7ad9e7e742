import type { Chart } from "../addin/chart/chart.ts";
import { gradePieces } from "../addin/chart/gradeBlocks.ts";
import type { GirthMismatch } from "../addin/grading/girthIdentity.ts";
import type { Movement } from "../addin/grading/grade.ts";
import { measureById } from "../addin/measures/dictionary.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../addin/measures/units.ts";

/** Which reading to take, and on whom. */
export function missingWords(measure: string, { measures, figures }: Chart, run: readonly number[]): string {
  const column = measures.find(({ key }) => key === measure);
  if (!column) return `${measureName(measure)} is not in the chart.`;
  const lacking = run.filter((figure) => Number.isNaN(column.mm[figure]));
  return `${measureName(measure)} is not known of ${andList(lacking.map((figure) => figures[figure] ?? ""))}.`;
}

/** True at the points of a girth line that does not add up. */
export function isAt({ garment, line }: GirthMismatch, movement: Pick<Movement, "piece" | "point">): boolean {
  const piece = gradePieces.find(({ name }) => name === movement.piece);
  const point = piece?.points.find(({ name }) => name === movement.point);
  return piece?.garment === garment && point?.line?.name === line;
}

/**
 * Where the pieces of a garment do not add up to the change of a girth, and by how much.
 *
 * @param excessesMm what that makes, above 0, for every target of which it is known
 */
export function mismatchWords(
  mismatch: GirthMismatch,
  excessesMm: readonly number[],
  unit: LengthUnit,
): string {
  const { garment, line, girth, measure, sum, excess, rules } = mismatch;
  const rows = rules.flatMap(({ row }) => (row === undefined ? [] : [String(row + 1)]));
  const where =
    rows.length > 0 ? `${rows.length > 1 ? "Rows" : "Row"} ${rows.join(", ")} of the grade rules: ` : "";
  const whole = measure === girth ? "100 %" : "nothing";
  const size = lengthWords(Math.max(...excessesMm), unit);
  const amount = excessesMm.length > 0 ? ` or ${excessesMm.length > 1 ? "up to " : ""}${size}` : "";
  const off = `${percent(Math.abs(excess))}${amount}`;
  return `${where ? `${where}at` : "At"} the ${line} the pieces of the ${garment.toLowerCase()} add up to ${percent(sum)} of the change of ${measureName(measure)} instead of ${whole}, ${off} too ${excess > 0 ? "much" : "little"}.`;
}

function andList(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

function percent(share: number): string {
  return `${String(Math.round(share * 1000) / 10)} %`.replace("-", "−");
}

export function measureName(measure: string): string {
  return measureById(measure)?.shortName ?? measure;
}
