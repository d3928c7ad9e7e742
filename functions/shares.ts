import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { shares, sharesOfAll } from "../addin/similarity/shares.ts";
import { chart, figureName, garmentTolerances, optionalFigureName } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { withDoubts } from "./doubtMarks.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { doubtfulNote } from "./listed.ts";
import { shown } from "./shown.ts";

/** How far figures may differ in fitted clothes, and in two other classes. */
const exampleClasses = [
  ["Measure", "Tolerance", "Corset", "Loose dress"],
  ["Bust", 3, 2, 10],
  ["Waist", 2, 0.5, ""],
  ["Hip", 3, "", 10],
];

export const sharesFunction = defineFunction({
  name: "SHARES",
  summary:
    "What two figures can share, part by part and garment by garment, and why not; or one with all others.",
  details:
    "Without the other figure, every other one of the chart has a row: first those that share only some clothes, then those that " +
    "share the body, then those of which neither is known. A blank cell or the number 0 as the other figure is the same as leaving it " +
    'out; a figure that is called 0 is written as text: "0" in the formula, \'0 in the chart. ' +
    "Body is torso, arms and legs together. The tolerances may have a column for each class of garments, under a name of " +
    "your choice: how far each measure may differ for that class. An empty cell there means that the measure does not " +
    "matter to it. The answer is no as soon as one measure is beyond its tolerance, and not known where readings are " +
    "missing: Why then says which to take. Of tolerance is the worst difference: at most 1 is within tolerance.\n\n" +
    "Where an answer rests on a flagged reading, a last column Doubtful says on which, and what the answer would be if it were mended. " +
    doubtfulNote,
  parameters: {
    chart: chart(),
    figure: figureName("One figure."),
    other: optionalFigureName(
      "The other figure: the one that is larger or smaller in the answer.",
      "all others, a row each",
    ),
    tolerances: garmentTolerances(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.SHARES(Figures[#All], "Linnet", "Dunnock", Tolerances[#All])',
      values: [exampleChart, "Linnet", "Dunnock", exampleClasses],
      gives: [
        ["Part or garment", "Share", "Why", "Of tolerance"],
        ["Body", "yes", "Differs most: Hip 2 mm larger, of 3 mm allowed.", 0.667],
        ["Torso", "yes", "Differs most: Hip 2 mm larger, of 3 mm allowed.", 0.667],
        ["Arms", "not known", "The chart has no measure for it.", ""],
        ["Legs", "not known", "The chart has no measure for it.", ""],
        ["Head", "not known", "The chart has no measure for it.", ""],
        ["Hands", "not known", "The chart has no measure for it.", ""],
        ["Feet", "not known", "The chart has no measure for it.", ""],
        ["Corset", "no", "On Dunnock: Waist 1 mm larger.", 2],
        ["Loose dress", "yes", "Differs most: Hip 2 mm larger, of 10 mm allowed.", 0.2],
      ],
    },
    {
      formula: 'FIT.SHARES(Figures[#All], "Linnet", , Tolerances[#All])',
      values: [exampleChart, "Linnet", "", exampleClasses],
      gives: [
        ["Figure", "Shares", "Body", "Corset", "Loose dress"],
        ["Dunnock", "the body", "yes", "no: Waist 1 mm larger", "yes"],
        [
          "Siskin",
          "nothing known",
          "no: Waist 54 mm larger",
          "no: Waist 54 mm larger",
          "no: Hip 61 mm larger",
        ],
        ["Teal", "nothing known", "no: Waist 55 mm larger", "no: Waist 55 mm larger", "no: Hip 60 mm larger"],
      ],
    },
  ],
  failures: [emptyChart, unknownFigure, badTolerances],
  compute: ({ chart: figures, figure, other, tolerances: allowed }) => {
    const place = figureIndex(figures, figure);
    const { tolerances, garments = [] } = allowed(figures);
    if (other === undefined)
      return withDoubts(figures, (on) => sharesOfAll(on, place, { tolerances, garments }), {
        ...{ keys: 1, about: [place] },
      });
    const second = figureIndex(figures, other);
    const tableOn = (on: Chart) => [
      ["Part or garment", "Share", "Why", "Of tolerance"],
      ...shares(on, place, second, { tolerances, garments }).map(({ what, answer, why, ofTolerance }) => [
        ...[what, answer, why, shown(ofTolerance)],
      ]),
    ];
    return withDoubts(figures, tableOn, { keys: 1, about: [place, second] });
  },
});
