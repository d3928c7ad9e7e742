import type { Chart, MeasureColumn } from "../addin/chart/chart.ts";
import { findMeasureColumn, measureColumn } from "../addin/chart/find.ts";
import { defaultGradeRules } from "../addin/chart/gradeBlocks.ts";
import type { ToleranceTable } from "../addin/chart/tolerances.ts";
import { columnsMoving } from "../addin/grading/columnsMoving.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { quote } from "../addin/measures/quote.ts";
import type { ComparedColumn, ZoneChoice } from "../addin/similarity/columns.ts";
import { comparedColumns } from "../addin/similarity/columns.ts";
import { piecesCalled } from "./gradeRules.ts";

/**
 * The measures that take part in a comparison of figures.
 *
 * @throws {InputError} when none is left
 */
export function columnsOf(
  chart: Chart,
  tolerances: ToleranceTable | undefined,
  zone: ZoneChoice = "body",
): readonly ComparedColumn[] {
  return comparedColumns(chart, tolerances ? { tolerances, zone } : { zone });
}

/**
 * The measures that are named, each once; the name of a garment or piece stands for those that move it by the rules of
 * Measure Book. A heading of the chart goes before a garment of the same name.
 *
 * @throws {InputError} “absent” when the chart has no such measure, or none that moves the piece
 */
export function columnsCalled(chart: Chart, names: readonly string[]): readonly MeasureColumn[] {
  const found = names.flatMap((name) => {
    const pieces = findMeasureColumn(chart, name) ? [] : piecesCalled(name);
    if (pieces.length === 0) return [measureColumn(chart, name)];
    const moving = columnsMoving(chart, defaultGradeRules, pieces);
    if (moving.length > 0) return moving;
    throw new InputError(`The chart has no measure that moves ${quote(name)}.`, "absent");
  });
  return [...new Set(found)];
}
