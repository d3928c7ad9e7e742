import { figureIndex } from "../addin/chart/find.ts";
import { explainPair } from "../addin/fit/explainPair.ts";
import { restMarks } from "../addin/fit/restsOn.ts";
import { chart as chartRange, figureName } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { emptyChart, unknownFigure } from "./failures.ts";
import { bestFirst, doubtsOf, told, toldHeadings } from "./listed.ts";
import {
  badClasses,
  badPatterns,
  badReadings,
  badRules,
  easeRules,
  fittingOf,
  garmentClasses,
  patterns,
  repeats,
} from "./patterns.ts";

export const wardrobeFunction = defineFunction({
  name: "WARDROBE",
  summary: "What a figure can wear: every pattern with its verdict, best first.",
  details:
    "Where and Difference give the check that decides, in the unit of its measure; What to do gives the alteration, or what to " +
    "measure, and ends with the flagged or estimated reading that the verdict rests on, if any. Patterns whose rows cannot be used come last, with the reason. How verdicts are reached stands under WHATFITS.",
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    figure: figureName("The figure."),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.WARDROBE(Patterns[#All], Figures[#All], "Teal")',
      values: [examplePatterns, exampleChart, "Teal"],
      gives: [
        ["Pattern", "Title", "Verdict", "Where", "Difference", "What to do"],
        [
          "P3",
          "Fireside gown",
          "fits",
          "",
          "",
          "Length not judged: give Length, or Drafted for and Ends at.",
        ],
        [
          "P1",
          "Meadow skirt",
          "will not go on",
          "Waist over the hip",
          -36,
          "Make the opening 36 mm larger, or make its placket 18 mm longer.",
        ],
        [
          "P2",
          "Harbour skirt",
          "will not go on",
          "Waist over the hip",
          -96,
          "Make the opening 96 mm larger, or give it a placket of 48 mm.",
        ],
      ],
    },
  ],
  failures: [badPatterns, emptyChart, unknownFigure, badRules, badClasses, badReadings],
  compute: (given) => {
    const { figures: chart, figure } = given;
    const { table: read, fitting } = fittingOf(given);
    const index = figureIndex(chart, figure);
    const pairs = read.patterns.map(({ title }, pattern) => ({
      ...{ title, pattern, figure: index },
      explanation: explainPair(fitting, pattern, index),
    }));
    const marks = restMarks(fitting, pairs, doubtsOf(chart), given.rules(given.classes));
    const explained = pairs
      .map(({ title, explanation }, i) => ({ title, explanation, mark: marks[i] ?? "" }))
      .sort((a, b) => bestFirst(a.explanation, b.explanation));
    return [
      ["Pattern", "Title", ...toldHeadings],
      ...explained.map(({ title, explanation, mark }) => [
        explanation.pattern,
        title,
        ...told(explanation, mark),
      ]),
      ...read.problems.map(({ code, message }) => [code, "", "cannot be read", "", "", message]),
    ];
  },
});
