import type { Chart } from "../addin/chart/chart.ts";
import { printedAllowance } from "../addin/grading/allowance.ts";
import type { PrintScale, ScaledMeasure } from "../addin/grading/printScale.ts";
import { isAcross } from "../addin/grading/printScale.ts";
import { isPrintable, printSetting } from "../addin/grading/printSetting.ts";
import {
  allowanceWords,
  offWords,
  outsideWords,
  printCautions,
  roundingError,
  roundingWords,
  testSquareMm,
  testSquareWords,
  verdictWords,
} from "../addin/grading/printWords.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import type { Value } from "./descriptor.ts";
import { shown, shownLength } from "./shown.ts";

export const headings = [
  "What",
  "Base",
  "Target",
  "Scale %",
  "Printed",
  "Left over",
  "Of tolerance",
  "Says",
] as const;

interface Cells {
  readonly base?: Value;
  readonly target?: Value;
  readonly percent?: number;
  readonly printed?: Value;
  readonly leftOver?: Value;
  readonly ofTolerance?: number;
  readonly says: string;
}

function row(what: string, cells: Cells): readonly Value[] {
  return [
    what,
    cells.base ?? "",
    cells.target ?? "",
    shown(cells.percent ?? Number.NaN),
    cells.printed ?? "",
    cells.leftOver ?? "",
    shown(cells.ofTolerance ?? Number.NaN),
    cells.says,
  ];
}

/** The best scale for all, for girths and widths, and for lengths, with what becomes of it. */
export function scaleRows(scale: PrintScale): readonly (readonly Value[])[] {
  return [
    row("One scale", { percent: scale.factor * 100, says: verdictWords(scale) }),
    row("Girths and widths", { percent: scale.acrossFactor * 100, says: scaleWords(scale.acrossFactor) }),
    row("Lengths", { percent: scale.alongFactor * 100, says: scaleWords(scale.alongFactor) }),
  ];
}

function scaleWords(factor: number): string {
  if (Number.isNaN(factor)) return "No such measure is known of both figures.";
  return isPrintable(factor) ? "" : outsideWords;
}

/** What one measure becomes, and what is left over. */
export function measureRow(
  measure: ScaledMeasure,
  figures: Chart,
  base: number,
  target: number,
): readonly Value[] {
  const { column, baseMm, targetMm, factor, printedMm, residualMm, ofTolerance } = measure;
  return row(`${column.heading} (${column.unit})`, {
    base: shownLength(baseMm, column.unit),
    target: shownLength(targetMm, column.unit),
    percent: factor * 100,
    printed: shownLength(printedMm, column.unit),
    leftOver: shownLength(residualMm, column.unit),
    ofTolerance,
    says: measureWords(measure, [
      ...(Number.isNaN(baseMm) ? [figures.figures[base] ?? ""] : []),
      ...(Number.isNaN(targetMm) ? [figures.figures[target] ?? ""] : []),
    ]),
  });
}

function measureWords(
  { column, residualMm, ofTolerance }: ScaledMeasure,
  missingOf: readonly string[],
): string {
  if (missingOf.length > 0) return `Not known of ${missingOf.join(" and ")}: left out. Measure it.`;
  if (ofTolerance <= 1 + 1e-9) return "within tolerance";
  if (Number.isNaN(ofTolerance)) return "no tolerance is known";
  return offWords({ column, residualMm });
}

/** The scales in whole percent, with the error of rounding. */
export function settingRows(scale: PrintScale): readonly (readonly Value[])[] {
  return [
    settingRow("Print setting", scale.factor, scale.measures),
    ...apart(scale).map(({ way, factor, isOfThis }) =>
      settingRow(`Print setting, ${way}`, factor, scale.measures.filter(isOfThis)),
    ),
  ];
}

interface Apart {
  readonly way: "width" | "height";
  readonly factor: number;
  readonly isOfThis: (measure: ScaledMeasure) => boolean;
}

/** The scales for a printer that takes width and height apart; none where either cannot be printed. */
function apart({ acrossFactor, alongFactor }: PrintScale): readonly Apart[] {
  if (!isPrintable(acrossFactor) || !isPrintable(alongFactor)) return [];
  return [
    { way: "width", factor: acrossFactor, isOfThis: ({ column }) => isAcross(column) },
    { way: "height", factor: alongFactor, isOfThis: ({ column }) => !isAcross(column) },
  ];
}

function settingRow(what: string, factor: number, measures: readonly ScaledMeasure[]): readonly Value[] {
  const { percent } = printSetting(factor);
  const error = roundingError(factor, measures);
  return row(what, {
    percent,
    leftOver: error ? shownLength(-error.errorMm, error.measure.column.unit) : "",
    says: roundingWords(factor, measures),
  });
}

/** What the print makes of the allowance and of the test square: apart for width and height where they are printed so. */
export function printedRows(
  scale: PrintScale,
  unit: LengthUnit,
  allowanceMm: number | undefined,
): readonly (readonly Value[])[] {
  const prints = scale.verdict === "two scales" ? apart(scale) : [{ way: undefined, factor: scale.factor }];
  return [
    ...(allowanceMm === undefined ? [] : prints.map((print) => allowanceRow(print, unit, allowanceMm))),
    ...prints.map((print) => squareRow(print, unit)),
  ];
}

/** A print in both ways, or in one of them. */
interface Print {
  readonly way: Apart["way"] | undefined;
  readonly factor: number;
}

/** Allowances lie across the edge: those of upright edges widen with the width. */
function allowanceRow({ way, factor }: Print, unit: LengthUnit, allowanceMm: number): readonly Value[] {
  const { percent } = printSetting(factor);
  const { printed, toAdd } = printedAllowance(allowanceMm, percent / 100);
  const edges = { width: "upright edges", height: "level edges" };
  return row(way ? `Seam allowance, ${way}` : "Seam allowance", {
    base: shownLength(allowanceMm, unit),
    target: shownLength(allowanceMm, unit),
    percent,
    printed: shownLength(printed, unit),
    leftOver: shownLength(toAdd, unit),
    says: allowanceWords(allowanceMm, percent, unit, way && edges[way]),
  });
}

function squareRow({ way, factor }: Print, unit: LengthUnit): readonly Value[] {
  const { percent } = printSetting(factor);
  const sideMm = testSquareMm(unit);
  return row(way ? `Test square, ${way}` : "Test square", {
    base: shownLength(sideMm, unit),
    percent,
    printed: shownLength((sideMm * percent) / 100, unit),
    says: testSquareWords(percent, unit, way && `its ${way}`),
  });
}

/** What to do by hand, whatever the scale. */
export function cautionRows(): readonly (readonly Value[])[] {
  return printCautions.map((words) => row("Remember", { says: words }));
}
