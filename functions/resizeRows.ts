import type { Chart } from "../addin/chart/chart.ts";
import { printedAllowance } from "../addin/grading/allowance.ts";
import type { PrintScale, ScaledMeasure } from "../addin/grading/printScale.ts";
import { isAcross } from "../addin/grading/printScale.ts";
import { isPrintable, printablePercent, printSetting } from "../addin/grading/printSetting.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { toMm } from "../addin/measures/units.ts";
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

/** Sides of the square that is drawn beside a pattern to check the print, in the unit of the chart. */
const testSquare: Readonly<Record<LengthUnit, number>> = { mm: 50, cm: 5, in: 2 };

/** Half of the finest length that words give: a tenth of a mm, or 1/64 in. */
const finestMm = 0.05;
const finestInInches = toMm(1 / 128, "in");

const outsideWords = `This is outside ${String(printablePercent.least)} to ${String(printablePercent.most)} %: draft anew.`;

const cautions = [
  "Snaps, hooks, buttons and zips keep their size: space them anew, and keep the overlap of the closure as wide as they need.",
  "Cloth keeps its thickness, its drape and the size of its design: it does not scale with the pattern.",
  "Hems and facings scale with the print: mark them again at the width that you sew.",
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

function verdictWords({ verdict, worst, factor }: PrintScale): string {
  if (Number.isNaN(factor)) return "None of these measures is known of both figures. Measure one on both.";
  if (!isPrintable(factor)) return outsideWords;
  if (verdict === "not known" || !worst) {
    return "None of these measures has a tolerance, so nobody can say whether one scale will do. Look at what is left over.";
  }
  const off = `${worst.column.heading} is ${lengthWords(Math.abs(worst.residualMm), worst.column.unit)} ${worst.residualMm < 0 ? "too large" : "too small"}`;
  switch (verdict) {
    case "one scale":
      return worst.residualMm === 0
        ? "One scale will do: nothing is left over."
        : `One scale will do: at worst ${off}, which is within tolerance.`;
    case "two scales":
      return `One scale will not do: ${off}. Print girths and lengths at their own scales, the lengths upright on the page: then every measure is within tolerance.`;
    case "draft anew":
      return `No print scale will do: ${off}. The figure has another shape: draft anew.`;
  }
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
  return `${lengthWords(Math.abs(residualMm), column.unit)} ${residualMm < 0 ? "too large" : "too small"}`;
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

/** The rounding is worst where the measure is longest. */
function settingRow(what: string, factor: number, measures: readonly ScaledMeasure[]): readonly Value[] {
  const { percent, roundingShare } = printSetting(factor);
  const longest = measures.reduce<ScaledMeasure | undefined>(
    (most, each) => (each.printedMm > (most?.printedMm ?? 0) && !Number.isNaN(each.targetMm) ? each : most),
    undefined,
  );
  if (!longest) return row(what, { percent, says: "" });
  const { column, baseMm } = longest;
  const errorMm = roundingShare * baseMm;
  const isRound = Math.abs(errorMm) < (column.unit === "in" ? finestInInches : finestMm);
  const words = `The whole percent makes ${column.heading} ${lengthWords(Math.abs(errorMm), column.unit)} ${errorMm < 0 ? "too small" : "too large"}.`;
  return row(what, {
    percent,
    leftOver: shownLength(-errorMm, column.unit),
    says: isRound ? "The whole percent is near enough." : words,
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
  const edges = { width: "along upright edges", height: "along level edges" };
  const where = way ? edges[way] : "along every edge";
  const says =
    percent === 100
      ? "The allowance stays as it is."
      : `On paper it becomes ${lengthWords(printed, unit)}: ${toAdd > 0 ? "add" : "trim off"} ${lengthWords(Math.abs(toAdd), unit)} ${where}.`;
  return row(way ? `Seam allowance, ${way}` : "Seam allowance", {
    base: shownLength(allowanceMm, unit),
    target: shownLength(allowanceMm, unit),
    percent,
    printed: shownLength(printed, unit),
    leftOver: shownLength(toAdd, unit),
    says,
  });
}

function squareRow({ way, factor }: Print, unit: LengthUnit): readonly Value[] {
  const { percent } = printSetting(factor);
  const sideMm = toMm(testSquare[unit], unit);
  const printedMm = (sideMm * percent) / 100;
  const side = way ? `its ${way}` : "each side";
  return row(way ? `Test square, ${way}` : "Test square", {
    base: shownLength(sideMm, unit),
    percent,
    printed: shownLength(printedMm, unit),
    says: `Draw a square of ${lengthWords(sideMm, unit)} beside the pattern; on the print ${side} must measure ${lengthWords(printedMm, unit)}.`,
  });
}

/** What to do by hand, whatever the scale. */
export function cautionRows(): readonly (readonly Value[])[] {
  return cautions.map((words) => row("Remember", { says: words }));
}
