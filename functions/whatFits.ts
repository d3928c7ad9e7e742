import { matchAll } from "../addin/fit/match.ts";
import type { FigureMark } from "../addin/fit/restsOn.ts";
import { matchMarks } from "../addin/fit/restsOn.ts";
import { bodies, chart as chartRange } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { badTolerances, emptyChart } from "./failures.ts";
import { bodiesNote, doubtfulNote, doubtsBeside, worstOf } from "./listed.ts";
import {
  badClasses,
  badPatterns,
  badReadings,
  badRules,
  caution,
  easeRules,
  fittingOf,
  garmentClasses,
  howJudged,
  patternHeadings,
  patterns,
  repeats,
} from "./patterns.ts";

export const whatFitsFunction = defineFunction({
  name: "WHATFITS",
  summary: "Which garment goes on which figure: the verdict of every pattern on every figure.",
  details:
    "The verdicts, from best to worst: fits, snug, loose, too close to call, not known, too long, too short, too loose, " +
    "too tight, will not go on. A pattern whose row cannot be used says so in its first cell. Where verdicts on a figure rest on a flagged or estimated reading, the row " +
    `Doubtful says on which, and the row If mended what they would be then. ${doubtfulNote}\n\n${bodiesNote}\n\n${patternHeadings}\n\n${howJudged}\n\n${caution}`,
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
    bodies: bodies(),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.WHATFITS(Patterns[#All], Figures[#All])",
      values: [examplePatterns, exampleChart],
      gives: [
        ["Pattern", "Linnet", "Dunnock", "Teal", "Siskin"],
        ["P1", "fits", "fits", "will not go on", "will not go on"],
        ["P2", "will not go on", "will not go on", "will not go on", "will not go on"],
        ["P3", "too loose", "too loose", "fits", "fits"],
      ],
    },
    {
      formula: "FIT.WHATFITS(Patterns[#All], Figures[#All], , , , Tolerances[#All])",
      values: [examplePatterns, exampleChart, null, null, null, exampleTolerances],
      gives: [
        ["Pattern", "Linnet, Dunnock", "Teal, Siskin"],
        ["P1", "fits", "will not go on"],
        ["P2", "will not go on", "will not go on"],
        ["P3", "too loose", "fits"],
      ],
    },
  ],
  failures: [badPatterns, emptyChart, badRules, badClasses, badReadings, badTolerances],
  compute: (given) => {
    const chart = given.figures;
    const { table: read, fitting } = fittingOf(given);
    const match = matchAll(fitting);
    const marks = matchMarks(fitting, doubtsBeside(chart), given.rules(given.classes));
    const columns = given.bodies?.(chart) ?? chart.figures.map((_, place) => [place]);
    const named = (figure: number): string => (given.bodies ? `${chart.figures[figure]!}: ` : "");
    const marksOf = (key: keyof FigureMark): readonly string[] =>
      columns.map((column) =>
        column.flatMap((figure) => (marks[figure] ? [named(figure) + marks[figure][key]] : [])).join("; "),
      );
    return [
      ["Pattern", ...columns.map((figures) => figures.map((figure) => chart.figures[figure]).join(", "))],
      ...match.patterns.map(({ code }, p) => [
        code,
        ...columns.map((figures) => worstOf(figures.map((figure) => match.verdict(p, figure)))),
      ]),
      ...read.problems.map(({ code, message }) => [
        code,
        ...columns.map((_, f) => (f === 0 ? `cannot be read: ${message}` : "")),
      ]),
      ...(marks.some((mark) => mark !== undefined)
        ? [
            ["Doubtful", ...marksOf("doubtful")],
            ["If mended", ...marksOf("mended")],
          ]
        : []),
    ];
  },
});
