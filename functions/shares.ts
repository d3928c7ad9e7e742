import { figureIndex } from "../addin/chart/find.ts";
import { shares, sharesOfAll } from "../addin/similarity/shares.ts";
import { chart, figureName, garmentTolerances, optionalFigureName } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { shown } from "./shown.ts";

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
    "missing: Why then says which to take. Of tolerance is the worst difference: at most 1 is within tolerance.",
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
      values: [
        exampleChart,
        "Linnet",
        "Dunnock",
        [
          ["Measure", "Tolerance", "Corset", "Loose dress"],
          ["Bust", 3, 2, 10],
          ["Waist", 2, 0.5, ""],
          ["Hip", 3, "", 10],
        ],
      ],
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
      values: [
        exampleChart,
        "Linnet",
        "",
        [
          ["Measure", "Tolerance", "Corset", "Loose dress"],
          ["Bust", 3, 2, 10],
          ["Waist", 2, 0.5, ""],
          ["Hip", 3, "", 10],
        ],
      ],
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
    if (other === undefined) return sharesOfAll(figures, place, { tolerances, garments });
    return [
      ["Part or garment", "Share", "Why", "Of tolerance"],
      ...shares(figures, place, figureIndex(figures, other), { tolerances, garments }).map(
        ({ what, answer, why, ofTolerance }) => [what, answer, why, shown(ofTolerance)],
      ),
    ];
  },
});
