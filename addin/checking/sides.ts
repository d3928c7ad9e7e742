import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { findMeasure, splitSide } from "../measures/dictionary.ts";
import type { Measure } from "../measures/measure.ts";
import { toleranceMm } from "../measures/toleranceMm.ts";
import { amount } from "./amount.ts";
import type { Flag } from "./flag.ts";
import { cellFlag, columnFlag, keyOf, type Place } from "./readings.ts";

/** Columns, from 0, of one measure on both sides of the body. */
interface Sides {
  readonly measure: Measure;
  readonly left: number;
  readonly right: number;
}

/** When the sides differ on so many figures, the headings or the bodies are the reason, not the readings. */
const fewestOfMany = 3;
const shareOfMany = 1 / 3;

/**
 * Readings of the left and the right side that differ by more than the measure’s own tolerance. The flag stands at the
 * later of the two columns and names both readings.
 *
 * @param flagged readings that were found out already, and take no part
 */
export function findUnlikeSides(chart: Chart, flagged: readonly Place[]): readonly Flag[] {
  const out = new Set(flagged.map(keyOf));
  return bothSides(chart.measures).flatMap((sides) => unlike(chart, out, sides));
}

function bothSides(columns: readonly MeasureColumn[]): readonly Sides[] {
  const sided = columns.flatMap(({ heading }, column) => {
    const { side } = splitSide(heading);
    const measure = findMeasure(heading);
    return side && measure ? [{ side, measure, column }] : [];
  });
  return [...new Set(sided.map(({ measure }) => measure))].flatMap((measure) => {
    const [left, right] = (["left", "right"] as const).map((side) =>
      sided.find((each) => each.measure === measure && each.side === side),
    );
    return left && right ? [{ measure, left: left.column, right: right.column }] : [];
  });
}

function unlike(chart: Chart, out: ReadonlySet<string>, { measure, left, right }: Sides): readonly Flag[] {
  const [leftColumn, rightColumn] = [chart.measures[left], chart.measures[right]];
  if (!leftColumn || !rightColumn) return [];
  const known = chart.figures
    .map((_, figure) => ({
      figure,
      leftMm: leftColumn.mm[figure] ?? Number.NaN,
      rightMm: rightColumn.mm[figure] ?? Number.NaN,
    }))
    .filter(
      ({ figure, leftMm, rightMm }) =>
        !Number.isNaN(leftMm + rightMm) &&
        !out.has(keyOf({ figure, column: left })) &&
        !out.has(keyOf({ figure, column: right })),
    );
  const differing = known.filter(
    ({ leftMm, rightMm }) => Math.abs(leftMm - rightMm) > toleranceMm(measure.tolerance, leftMm, rightMm),
  );
  const column = Math.max(left, right);
  const kind = "left and right differ";
  if (differing.length >= fewestOfMany && differing.length > shareOfMany * known.length) {
    return [
      columnFlag(chart, column, {
        kind,
        why: `${leftColumn.heading} and ${rightColumn.heading} differ for ${String(differing.length)} of ${String(known.length)} figures: are the two headings right? If the bodies are like that, nothing is wrong.`,
      }),
    ];
  }
  return differing.map(({ figure, leftMm, rightMm }) =>
    cellFlag(
      chart,
      { figure, column },
      {
        kind,
        why: `${leftColumn.heading} is ${amount(leftMm, leftColumn.unit)}, ${rightColumn.heading} ${amount(rightMm, rightColumn.unit)}: more apart than two readings of one measure should be. Measure both again, unless the figure is posed like that.`,
      },
    ),
  );
}
