import { figureIndex } from "../addin/chart/find.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { quote, someOf } from "../addin/measures/quote.ts";
import { apart } from "../addin/similarity/pair.ts";
import { chart, figureName, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare, unknownFigure } from "./failures.ts";
import { shown } from "./shown.ts";

export const apartFunction = defineFunction({
  name: "APART",
  summary:
    "How far two figures are apart: their worst difference, in tolerances. At most 1 means the same body.",
  details:
    "The measures of torso, arms and legs take part that decide whether a fitted garment can be shared, and every measure " +
    "of yours that the tolerances name. Height is left out.\n\n" +
    "The result is a number and nothing else, so that formulas can go on with it. Whether it rests on a reading that FLAGS doubts, and what " +
    "it would be with that mended, NEAREST says beside it, SHARES measure by measure.",
  parameters: {
    chart: chart(),
    figure: figureName("One figure."),
    other: figureName("The other figure."),
    tolerances: tolerances(),
  },
  result: "number",
  examples: [
    {
      formula: 'FIT.APART(Figures[#All], "Linnet", "Dunnock", Tolerances[#All])',
      values: [exampleChart, "Linnet", "Dunnock", exampleTolerances],
      gives: 0.667,
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "Too few measures are known of both figures to say.", shows: "#N/A" },
    badTolerances,
    nothingToCompare,
  ],
  compute: ({ chart: figures, figure, other, tolerances: allowed }) => {
    const columns = columnsOf(figures, allowed(figures));
    const { distance, compared, of, lacking } = apart(
      columns,
      figureIndex(figures, figure),
      figureIndex(figures, other),
    );
    if (Number.isNaN(distance)) {
      const missing = someOf(
        lacking.map(({ column }) => quote(column.heading)),
        40,
      );
      throw new InputError(
        `The figures ${quote(figure)} and ${quote(other)} cannot be compared yet: ${String(compared)} of ${String(of)} measures are ` +
          `known of both${missing && `; take ${missing} first`}.`,
        "absent",
      );
    }
    return shown(distance);
  },
});
