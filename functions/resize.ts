import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex, measureColumn } from "../addin/chart/find.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import { printedAllowance } from "../addin/grading/allowance.ts";
import { differentFigures } from "../addin/grading/differentFigures.ts";
import type { PrintScale, ScaledMeasure } from "../addin/grading/printScale.ts";
import { isAcross, printScale } from "../addin/grading/printScale.ts";
import { isPrintable, printablePercent, printSetting } from "../addin/grading/printSetting.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { toMm } from "../addin/measures/units.ts";
import { chart, names, optionalReading, text, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import type { Value } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { shown, shownLength } from "./shown.ts";

const headings = [
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

export const resizeFunction = defineFunction({
  name: "RESIZE",
  summary:
    "The print scale that takes a pattern for one figure closest to another, what it leaves at each measure, and what to do.",
  details:
    "One scale for the whole pattern comes first: the mean of the ratios of the chosen measures, each counting alike. Then the " +
    "scales of girths and widths alone, and of lengths alone, for printers that take width and height apart. Printed is what " +
    "the base becomes at the one scale, Left over is what is still missing there (below zero: too much), Of tolerance is at " +
    "most 1 where it counts as the same. The print settings are in whole percent; Left over is there what the rounding " +
    "makes of the longest measure.\n\nLengths are in the unit that stands after the measure; those of the allowance and the test square are in the " +
    `unit of the first measure. Beyond ${String(printablePercent.least)} to ${String(printablePercent.most)} % draft anew.`,
  parameters: {
    chart: chart(),
    base: text("The figure that the pattern was drafted for."),
    target: text("The figure that is to wear it."),
    measures: names(
      "The measures that count: a range of headings, or one text with commas.",
      "the measures of the body that decide fit",
    ),
    seam_allowance: optionalReading(
      "Seam allowance that is on the pattern, in the unit of the first measure, or with its own unit.",
      "a pattern without allowance",
    ),
    tolerances: tolerances(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.RESIZE(Figures[#All], "Linnet", "Teal", "Bust, Waist, Hip", 6)',
      values: [exampleChart, "Linnet", "Teal", "Bust, Waist, Hip", 6],
      gives: [
        ["What", "Base", "Target", "Scale %", "Printed", "Left over", "Of tolerance", "Says"],
        [
          "One scale",
          "",
          "",
          146.067,
          "",
          "",
          "",
          "No print scale will do: Waist is 8.9 mm too small. The figure has another shape: draft anew.",
        ],
        ["Girths and widths", "", "", 146.067, "", "", "", ""],
        ["Lengths", "", "", "", "", "", "", "No such measure is known of both figures."],
        ["Bust (mm)", 135, 190, 140.741, 197.19, -7.19, 1.857, "7.2 mm too large"],
        ["Waist (mm)", 100, 155, 155, 146.067, 8.933, 2.967, "8.9 mm too small"],
        ["Hip (mm)", 140, 200, 142.857, 204.493, -4.493, 1.111, "4.5 mm too large"],
        ["Print setting", "", "", 146, "", 0.093, "", "The whole percent makes Hip 0.1 mm too small."],
        [
          "Seam allowance",
          6,
          6,
          146,
          8.76,
          -2.76,
          "",
          "On paper it becomes 8.8 mm: trim off 2.8 mm along every edge.",
        ],
        [
          "Test square",
          50,
          "",
          146,
          73,
          "",
          "",
          "Draw a square of 50 mm beside the pattern; on the print each side must measure 73 mm.",
        ],
        [
          "Remember",
          "",
          "",
          "",
          "",
          "",
          "",
          "Snaps, hooks, buttons and zips keep their size: space them anew, and keep the overlap of the closure as wide as they need.",
        ],
        [
          "Remember",
          "",
          "",
          "",
          "",
          "",
          "",
          "Cloth keeps its thickness, its drape and the size of its design: it does not scale with the pattern.",
        ],
        [
          "Remember",
          "",
          "",
          "",
          "",
          "",
          "",
          "Hems and facings scale with the print: mark them again at the width that you sew.",
        ],
      ],
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "A measure is not in the chart. The message offers the nearest headings.", shows: "#N/A" },
    { when: "Base and target are the same figure.", shows: "#VALUE!" },
    badTolerances,
  ],
  source: "Geometry; that a pattern is scaled without its seam allowance is common practice.",
  compute: (given) => {
    const figures = given.chart;
    const base = figureIndex(figures, given.base);
    const target = figureIndex(figures, given.target);
    differentFigures(figures, base, target);
    const allowed = given.tolerances(figures);
    const columns =
      given.measures?.map((name) => measureColumn(figures, name)) ??
      columnsOf(figures, allowed).map(({ column }) => column);
    const scale = printScale(base, target, columns, allowed);
    const unit = scale.measures[0]?.column.unit ?? "mm";
    return [
      headings,
      ...scaleRows(scale),
      ...scale.measures.map((measure) => measureRow(measure, figures, base, target)),
      ...(isPrintable(scale.factor)
        ? [
            ...settingRows(scale),
            ...allowanceRows(scale, unit, given.seam_allowance?.mm(unit)),
            squareRow(scale, unit),
            ...cautions.map((words) => row("Remember", { says: words })),
          ]
        : []),
    ];
  },
});

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

function scaleRows(scale: PrintScale): readonly (readonly Value[])[] {
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
      return `One scale will not do: ${off}. Print girths and lengths at their own scales: then every measure is within tolerance.`;
    case "draft anew":
      return `No print scale will do: ${off}. The figure has another shape: draft anew.`;
  }
}

function measureRow(measure: ScaledMeasure, figures: Chart, base: number, target: number): readonly Value[] {
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

function settingRows(scale: PrintScale): readonly (readonly Value[])[] {
  const isKnown = isPrintable(scale.acrossFactor) && isPrintable(scale.alongFactor);
  return [
    settingRow("Print setting", scale.factor, scale.measures),
    ...(isKnown
      ? [
          settingRow(
            "Print setting, width",
            scale.acrossFactor,
            scale.measures.filter(({ column }) => isAcross(column)),
          ),
          settingRow(
            "Print setting, height",
            scale.alongFactor,
            scale.measures.filter(({ column }) => !isAcross(column)),
          ),
        ]
      : []),
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

function allowanceRows(
  { factor }: PrintScale,
  unit: LengthUnit,
  allowanceMm: number | undefined,
): readonly (readonly Value[])[] {
  if (allowanceMm === undefined) return [];
  const { percent } = printSetting(factor);
  const { printed, toAdd } = printedAllowance(allowanceMm, percent / 100);
  const says =
    percent === 100
      ? "The allowance stays as it is."
      : `On paper it becomes ${lengthWords(printed, unit)}: ${toAdd > 0 ? "add" : "trim off"} ${lengthWords(Math.abs(toAdd), unit)} along every edge.`;
  return [
    row("Seam allowance", {
      base: shownLength(allowanceMm, unit),
      target: shownLength(allowanceMm, unit),
      percent,
      printed: shownLength(printed, unit),
      leftOver: shownLength(toAdd, unit),
      says,
    }),
  ];
}

function squareRow({ factor }: PrintScale, unit: LengthUnit): readonly Value[] {
  const { percent } = printSetting(factor);
  const sideMm = toMm(testSquare[unit], unit);
  const printedMm = (sideMm * percent) / 100;
  return row("Test square", {
    base: shownLength(sideMm, unit),
    percent,
    printed: shownLength(printedMm, unit),
    says: `Draw a square of ${lengthWords(sideMm, unit)} beside the pattern; on the print each side must measure ${lengthWords(printedMm, unit)}.`,
  });
}
