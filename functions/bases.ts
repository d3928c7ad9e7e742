import type { BaseFigure } from "../addin/similarity/fewest/answerWords.ts";
import { baseFigures, proofWords } from "../addin/similarity/fewest/answerWords.ts";
import { fewestBaseFigures } from "../addin/similarity/fewest/fewestShared.ts";
import { baseMarks } from "../addin/similarity/doubtfulBases.ts";
import { comparedDoubts, mendedColumns } from "../addin/similarity/doubtfulGroups.ts";
import { aboveZero, chart, tolerances } from "./arguments.ts";
import { columnsOf } from "./columnsOf.ts";
import type { Value } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { withMarks } from "./doubtMarks.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { badTolerances, emptyChart, nothingToCompare } from "./failures.ts";
import { doubtfulNote, doubtsBeside } from "./listed.ts";
import { shown, shownLength } from "./shown.ts";

export const basesFunction = defineFunction({
  name: "BASES",
  summary: "Which figures to keep as house models: the fewest that reach all, with the least alteration.",
  details:
    "Every figure is within reach of a base figure: no measure differs by more than reach times its tolerance. The first line " +
    "says whether fewer could do, and whether another choice of as few would need less alteration in all. Where that cannot be " +
    "settled in the time that a cell has, it says how many are needed at least; the section Groups of the pane can look " +
    "further.\n\nServes names the other figures that a base figure is for; each goes to its nearest. Worst for, Measure, " +
    "Alteration and Of tolerance say which of them needs most, and where: figure minus base figure, in the unit of the column. " +
    "A figure that lacks the readings to be compared stands alone, and Serves says which. The alteration " +
    "that is added up is the worst difference of each figure from its base figure, in tolerances. Of answers that are equal in both " +
    "the one found first stays; it does not depend on the order of rows.\n\n" +
    "Where flagged readings were compared, all is looked for anew with them mended: the first line then says how many base figures there " +
    "would be, and a last column Doubtful which figures would go to another one. " +
    doubtfulNote,
  parameters: {
    chart: chart(),
    tolerances: tolerances(),
    reach: aboveZero("How far a figure may be from its base figure, in tolerances.", 1),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.BASES(Figures[#All], Tolerances[#All])",
      values: [exampleChart, exampleTolerances],
      gives: [
        [
          "2 base figures reach every figure, and no fewer can. No other 2 need less alteration in all.",
          ...["", "", "", "", "", ""],
        ],
        ["Base figure", "Figures", "Serves", "Worst for", "Measure", "Alteration", "Of tolerance"],
        ["Dunnock", 2, "Linnet", "Linnet", "Hip", -2, 0.667],
        ["Siskin", 2, "Teal", "Teal", "Bust", -2, 0.667],
      ],
    },
  ],
  failures: [
    emptyChart,
    badTolerances,
    nothingToCompare,
    { when: "The reach is not a number above 0.", shows: "#VALUE!" },
  ],
  source: "Minimum set cover; of the smallest covers the p-median, Hakimi (1964).",
  compute: ({ chart: figures, tolerances: allowed, reach }) => {
    const columns = columnsOf(figures, allowed(figures));
    const answer = fewestBaseFigures(figures, columns, reach);
    const doubtful = comparedDoubts(figures, columns, doubtsBeside(figures));
    const after =
      doubtful.length > 0
        ? fewestBaseFigures(figures, mendedColumns(figures, columns, doubtful), reach)
        : answer;
    const found = baseFigures(figures, columns, answer);
    const marks = found.map(({ place: base }) =>
      baseMarks(figures, { base, baseOf: answer.baseOf, after: after.baseOf }, doubtful)
        .map(({ says }) => says)
        .join(" "),
    );
    const [words, others] = [proofWords(answer), proofWords(after)];
    const isOther = words !== others;
    const table = withMarks(
      [
        ["Base figure", "Figures", "Serves", "Worst for", "Measure", "Alteration", "Of tolerance"],
        ...found.map(row),
      ],
      marks,
    );
    return [
      [
        `${words}${isOther ? ` With doubtful readings mended: ${others}` : ""}`,
        ...table[0]!.slice(1).map(() => ""),
      ],
      ...table,
    ];
  },
});

function row({ base, serves, worst, lacking }: BaseFigure): readonly Value[] {
  const column = worst?.fromBase.worst?.column;
  return [
    base,
    serves.length + 1,
    lacking.length > 0
      ? `only itself: ${lacking.map((each) => each.column.heading).join(", ")} missing`
      : serves.join(", "),
    worst?.figure ?? "",
    column?.heading ?? "",
    worst && column ? shownLength(worst.fromBase.deltaMm ?? 0, column.unit) : "",
    worst ? shown(worst.fromBase.distance) : "",
  ];
}
