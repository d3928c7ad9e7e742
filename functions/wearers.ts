import { patternNamed } from "../addin/chart/readPatterns.ts";
import { explainPair } from "../addin/fit/explainPair.ts";
import { restMarks } from "../addin/fit/restsOn.ts";
import { bodies, chart as chartRange, patternCode } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart, exampleTolerances } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { badTolerances, emptyChart } from "./failures.ts";
import { bestFirst, bodiesNote, doubtsOf, told, toldHeadings } from "./listed.ts";
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
  unknownPattern,
} from "./patterns.ts";

export const wearersFunction = defineFunction({
  name: "WEARERS",
  summary: "Which figures wear a pattern: every figure with its verdict, best first.",
  details:
    "Where and Difference give the check that decides, in the unit of its measure; What to do gives the alteration, or what to " +
    "measure, and ends with the flagged or estimated reading that the verdict rests on, if any. How verdicts are reached stands under WHATFITS.\n\n" +
    `${bodiesNote} Decided by is that figure.`,
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    pattern: patternCode("The code of the pattern."),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
    bodies: bodies(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.WEARERS(Patterns[#All], Figures[#All], "P1")',
      values: [examplePatterns, exampleChart, "P1"],
      gives: [
        ["Figure", "Verdict", "Where", "Difference", "What to do"],
        ["Linnet", "fits", "", "", "Length not judged: give Length, or Drafted for and Ends at."],
        ["Dunnock", "fits", "", "", "Length not judged: give Length, or Drafted for and Ends at."],
        [
          "Teal",
          "will not go on",
          "Waist over the hip",
          -36,
          "Make the opening 36 mm larger, or make its placket 18 mm longer.",
        ],
        [
          "Siskin",
          "will not go on",
          "Waist over the hip",
          -37,
          "Make the opening 37 mm larger, or make its placket 18.5 mm longer.",
        ],
      ],
    },
    {
      formula: 'FIT.WEARERS(Patterns[#All], Figures[#All], "P1", , , , Tolerances[#All])',
      values: [examplePatterns, exampleChart, "P1", null, null, null, exampleTolerances],
      gives: [
        ["Body", "Verdict", "Where", "Difference", "What to do", "Decided by"],
        [
          "Linnet, Dunnock",
          "fits",
          "",
          "",
          "Length not judged: give Length, or Drafted for and Ends at.",
          "Dunnock",
        ],
        [
          "Teal, Siskin",
          "will not go on",
          "Waist over the hip",
          -37,
          "Make the opening 37 mm larger, or make its placket 18.5 mm longer.",
          "Siskin",
        ],
      ],
    },
  ],
  failures: [badPatterns, emptyChart, unknownPattern, badRules, badClasses, badReadings, badTolerances],
  compute: (given) => {
    const { figures: chart, pattern } = given;
    const { table: read, fitting } = fittingOf(given);
    const row = read.patterns.indexOf(patternNamed(read, pattern));
    const pairs = chart.figures.map((_, figure) => ({
      pattern: row,
      figure,
      explanation: explainPair(fitting, row, figure),
    }));
    const marks = restMarks(fitting, pairs, doubtsOf(chart), given.rules(given.classes));
    const explained = pairs
      .map(({ figure, explanation }, i) => ({ figure, explanation, mark: marks[i] ?? "" }))
      .sort((a, b) => bestFirst(a.explanation, b.explanation));
    const bodies = given.bodies?.(chart) ?? chart.figures.map((_, place) => [place]);
    const bodyOf = new Map(bodies.flatMap((body) => body.map((place) => [place, body])));
    // The last of a body is the one that it is as good as.
    const last = new Map(explained.map((each) => [bodyOf.get(each.figure), each]));
    const decides = (figure: string): readonly string[] => (given.bodies ? [figure] : []);
    return [
      [given.bodies ? "Body" : "Figure", ...toldHeadings, ...decides("Decided by")],
      ...explained
        .filter((each) => last.get(bodyOf.get(each.figure)) === each)
        .map(({ figure, explanation, mark }) => [
          (bodyOf.get(figure) ?? []).map((place) => chart.figures[place]).join(", "),
          ...told(explanation, mark),
          ...decides(explanation.figure),
        ]),
    ];
  },
});
