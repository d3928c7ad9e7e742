import { figureIndex, measureColumn } from "../addin/chart/find.ts";
import { differentFigures } from "../addin/grading/differentFigures.ts";
import { printScale } from "../addin/grading/printScale.ts";
import { isPrintable, printablePercent } from "../addin/grading/printSetting.ts";
import { chart, names, optionalReading, text, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { cautionRows, headings, measureRow, printedRows, scaleRows, settingRows } from "./resizeRows.ts";

export const resizeFunction = defineFunction({
  name: "RESIZE",
  summary:
    "The print scale that takes a pattern for one figure closest to another, what it leaves at each measure, and what to do.",
  details:
    "One scale for the whole pattern comes first: the mean of the ratios of the chosen measures, each counting alike. Then the " +
    "scales of girths and widths alone, and of lengths alone, for printers that take width and height apart. Printed is what " +
    "the base becomes at the one scale, Left over is what is still missing there (below zero: too much), Of tolerance is at " +
    "most 1 where it counts as the same. The print settings are in whole percent; Left over is there what the rounding " +
    "makes of the longest measure. Where only two scales will do, allowance and test square are told for width and height apart.\n\nLengths are in the unit that stands after the measure; those of the allowance and the test square are in the " +
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
            ...printedRows(scale, unit, given.seam_allowance?.mm(unit)),
            ...cautionRows(),
          ]
        : []),
    ];
  },
});
