import { matchAll } from "../addin/fit/match.ts";
import { matchMarks } from "../addin/fit/restsOn.ts";
import { chart as chartRange } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { emptyChart } from "./failures.ts";
import { doubtfulNote, doubtsBeside } from "./listed.ts";
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
    "too tight, will not go on. A pattern whose row cannot be used says so in its first cell. Where verdicts on a figure rest on a flagged or estimated reading, a last row " +
    `says on which, and what they would be if it were mended. ${doubtfulNote}\n\n${patternHeadings}\n\n${howJudged}\n\n${caution}`,
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
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
  ],
  failures: [badPatterns, emptyChart, badRules, badClasses, badReadings],
  compute: (given) => {
    const chart = given.figures;
    const { table: read, fitting } = fittingOf(given);
    const match = matchAll(fitting);
    const marks = matchMarks(fitting, doubtsBeside(chart), given.rules(given.classes));
    return [
      ["Pattern", ...chart.figures],
      ...match.patterns.map(({ code }, p) => [code, ...chart.figures.map((_, f) => match.verdict(p, f))]),
      ...read.problems.map(({ code, message }) => [
        code,
        ...chart.figures.map((_, f) => (f === 0 ? `cannot be read: ${message}` : "")),
      ]),
      ...(marks.some((mark) => mark !== "") ? [["Doubtful", ...marks]] : []),
    ];
  },
});
