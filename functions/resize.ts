import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { unitOfFraction } from "../addin/chart/unitsOfColumns.ts";
import { differentFigures } from "../addin/grading/differentFigures.ts";
import { printScale } from "../addin/grading/printScale.ts";
import { isPrintable, printablePercent } from "../addin/grading/printSetting.ts";
import { chart, figureName, names, optionalReading, tolerances } from "./arguments.ts";
import { columnsCalled, columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { withDoubts } from "./doubtMarks.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import { cautionRows, headings, measureRow, printedRows, scaleRows, settingRows } from "./resizeRows.ts";

export const resizeFunction = defineFunction({
  name: "RESIZE",
  summary:
    "The print scale that takes a pattern for one figure closest to another, what it leaves at each measure, and what to do.",
  details:
    "The verdict comes first: at which scale to print, and what to let out or take in where that leaves a measure beyond its " +
    "tolerance; or that the figure has another shape, so that the pattern is to be drafted anew. The scale is the one that " +
    "keeps most of the measures within tolerance, exactly; of those that keep the same, the one that leaves least. Where a " +
    "printer takes width and height apart, so do girths and widths, and lengths: two scales are taken where they keep more. A " +
    "pattern is to be altered where no more measures are out than within, each by at most a tenth of itself (our own starting " +
    "value).\n\nPrinted is what the base becomes at the print setting of the verdict, Left over is what is still missing there (below " +
    "zero: too much), Of tolerance is at most 1 where it counts as the same. The print settings are in whole percent, or with " +
    "decimals where no whole percent keeps as many measures.\n\n" +
    "Name the garment, such as Bodice, to have it judged by the measures that move it and no others: the verdict is then that of " +
    "GRADE, of STEPS and of the pane. Lengths are in the unit that stands after the measure; those of the allowance and the test " +
    "square are in the unit of the first measure. Where a row rests on a flagged or estimated reading, a last column Doubtful says on " +
    `which, and what it would be if that were mended. ${doubtfulNote} Beyond ${String(printablePercent.least)} to ${String(printablePercent.most)} % draft anew.`,
  parameters: {
    chart: chart(),
    base: figureName("The figure that the pattern was drafted for."),
    target: figureName("The figure that is to wear it."),
    measures: names(
      "The measures that count, or the garment or piece that is printed: a range of names, or one text with commas.",
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
          "Verdict",
          "",
          "",
          "",
          "",
          "",
          "",
          "Print at 142 %, then let out Waist by 13 mm. The other 2 measures are within tolerance.",
        ],
        ["One scale", "", "", 141.795, "", "", "", "2 of 3 measures within tolerance"],
        ["Girths and widths", "", "", 141.795, "", "", "", "2 of 3 measures within tolerance"],
        ["Lengths", "", "", "", "", "", "", "No such measure is known of both figures."],
        ["Bust (mm)", 135, 190, 140.741, 191.7, -1.7, 0.445, "within tolerance"],
        ["Waist (mm)", 100, 155, 155, 142, 13, 4.377, "13 mm too small"],
        ["Hip (mm)", 140, 200, 142.857, 198.8, 1.2, 0.301, "within tolerance"],
        ["Print setting", "", "", 142, "", "", "", ""],
        [
          "Seam allowance",
          6,
          6,
          142,
          8.52,
          -2.52,
          "",
          "On paper it becomes 8.5 mm: trim off 2.5 mm along every edge.",
        ],
        [
          "Test square",
          50,
          "",
          142,
          71,
          "",
          "",
          "Draw a square of 50 mm beside the pattern; on the print each side must measure 71 mm.",
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
    const tableOn = (on: Chart) => {
      const columns = given.measures
        ? columnsCalled(on, given.measures)
        : columnsOf(on, allowed).map(({ column }) => column);
      const scale = printScale(base, target, columns, allowed);
      const unit = columns[0]?.unit ?? "mm";
      return [
        headings,
        ...scaleRows(scale),
        ...scale.best.measures.map((measure) => measureRow(measure, on, base, target)),
        ...(isPrintable(scale.factor)
          ? [
              ...settingRows(scale),
              ...printedRows(scale, unit, given.seam_allowance?.mm(unit, unitOfFraction)),
              ...cautionRows(),
            ]
          : []),
      ];
    };
    return withDoubts(figures, tableOn, { keys: 1, about: [base, target] });
  },
});
