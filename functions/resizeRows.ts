import type { Chart } from "../addin/chart/chart.ts";
import { printedAllowance } from "../addin/grading/allowance.ts";
import type { PrintScale, PrintSetting, ScaledMeasure } from "../addin/grading/printScale.ts";
import { isAcross, isInside } from "../addin/grading/printScale.ts";
import { isPrintable } from "../addin/grading/printSetting.ts";
import {
  allowanceWords,
  decimalsWords,
  insideWords,
  offWords,
  outsideWords,
  printCautions,
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

/** What to do; then the best scale for all, for girths and widths, and for lengths, with what each keeps. */
export function scaleRows(scale: PrintScale): readonly (readonly Value[])[] {
  const { one, two, factor } = scale;
  const [across, along] = [true, false].map((way) =>
    two.measures.filter(({ column }) => isAcross(column) === way),
  );
  return [
    row("Verdict", { says: verdictWords(scale) }),
    row("One scale", { percent: factor * 100, says: scaleWords(factor, one.measures) }),
    row("Girths and widths", {
      percent: two.across.factor * 100,
      says: scaleWords(two.across.factor, across ?? []),
    }),
    row("Lengths", { percent: two.along.factor * 100, says: scaleWords(two.along.factor, along ?? []) }),
  ];
}

function scaleWords(factor: number, measures: readonly ScaledMeasure[]): string {
  if (Number.isNaN(factor)) return "No such measure is known of both figures.";
  return isPrintable(factor) ? insideWords({ measures }) : outsideWords;
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

function measureWords(measure: ScaledMeasure, missingOf: readonly string[]): string {
  const { ofTolerance } = measure;
  if (missingOf.length > 0) return `Not known of ${missingOf.join(" and ")}: left out. Measure it.`;
  if (Number.isNaN(ofTolerance)) return "no tolerance is known";
  return isInside(measure) ? "within tolerance" : offWords(measure);
}

/** What is set on the printer: the print of the verdict in both ways, or in one of them. */
interface Setting extends PrintSetting {
  readonly way: "width" | "height" | undefined;
}

function settingsOf({ best: { across, along }, isApart }: PrintScale): readonly Setting[] {
  if (!isApart) return [{ ...across, way: undefined }];
  return [
    { ...across, way: "width" },
    { ...along, way: "height" },
  ];
}

/** The scales as a printer takes them. */
export function settingRows(scale: PrintScale): readonly (readonly Value[])[] {
  return settingsOf(scale).map((setting) =>
    row(setting.way ? `Print setting, ${setting.way}` : "Print setting", {
      percent: setting.percent,
      says: decimalsWords(setting),
    }),
  );
}

/** What the print makes of the allowance and of the test square: apart for width and height where they are printed so. */
export function printedRows(
  scale: PrintScale,
  unit: LengthUnit,
  allowanceMm: number | undefined,
): readonly (readonly Value[])[] {
  const settings = settingsOf(scale);
  return [
    ...(allowanceMm === undefined ? [] : settings.map((setting) => allowanceRow(setting, unit, allowanceMm))),
    ...settings.map((setting) => squareRow(setting, unit)),
  ];
}

/** Allowances lie across the edge: those of upright edges widen with the width. */
function allowanceRow({ way, percent }: Setting, unit: LengthUnit, allowanceMm: number): readonly Value[] {
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

function squareRow({ way, percent }: Setting, unit: LengthUnit): readonly Value[] {
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
