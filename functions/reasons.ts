import { figureIndex } from "../addin/chart/find.ts";
import { patternNamed } from "../addin/chart/readPatterns.ts";
import type { Check } from "../addin/fit/check.ts";
import type { Explanation } from "../addin/fit/explainPair.ts";
import { briefly, explainPair } from "../addin/fit/explainPair.ts";
import { restsOn, restWords } from "../addin/fit/restsOn.ts";
import { isWearable } from "../addin/fit/verdict.ts";
import { chart as chartRange, figureName, patternCode } from "./arguments.ts";
import type { Table } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { emptyChart, unknownFigure } from "./failures.ts";
import {
  badClasses,
  badPatterns,
  badReadings,
  badRules,
  easeRules,
  fittingOf,
  garmentClasses,
  howJudged,
  patterns,
  repeats,
  unknownPattern,
} from "./patterns.ts";
import { doubtsOf } from "./listed.ts";
import { shownLength } from "./shown.ts";

export const reasonsFunction = defineFunction({
  name: "REASONS",
  summary:
    "Why a pattern fits a figure or not: every check, with what is needed, what is there, and what to change.",
  details:
    "Lengths are in the unit of the measure’s column. Needs is the least that the garment must measure, or where " +
    "it is too large the most. Has is what it measures there, stretched as far as is comfortable beside the least. Difference is Has " +
    "less Needs. Notes at the end name the flagged or estimated readings that the answer " +
    `rests on, and what it would be if they were mended.\n\n${howJudged}`,
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    pattern: patternCode("The code of the pattern."),
    figure: figureName("The figure."),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.REASONS(Patterns[#All], Figures[#All], "P1", "Teal")',
      values: [examplePatterns, exampleChart, "P1", "Teal"],
      gives: [
        ["Check", "Needs", "Has", "Difference", "Says", "Alteration"],
        ["Verdict", "", "", "", "will not go on", ""],
        ["Best put on", "", "", "", "stepped into", ""],
        ["Waist girth", 156.275, 104, -52.275, "too tight by 52.3 mm", ""],
        [
          "Hip girth",
          207,
          200,
          -7,
          "too tight by 7 mm",
          "Let out 7 mm in all: 1.8 mm at each of 4 seam edges.",
        ],
        [
          "stepped into: waist over the hip",
          200,
          164,
          -36,
          "will not go on: 36 mm too small",
          "Make the opening 36 mm larger, or make its placket 18 mm longer.",
        ],
        ["over the head: waist over the head", "", 164, "", "not known: measure Head girth of Teal", ""],
        [
          "over the head: waist over the bust",
          190,
          164,
          -26,
          "will not go on: 26 mm too small (the shoulders are not measured)",
          "Make the opening 26 mm larger, or make its placket 13 mm longer.",
        ],
        ["Note", "", "", "", "Length not judged: give Length, or Drafted for and Ends at.", ""],
      ],
    },
  ],
  failures: [badPatterns, emptyChart, unknownPattern, unknownFigure, badRules, badClasses, badReadings],
  compute: (given) => {
    const { figures: chart, pattern, figure } = given;
    const { table: read, fitting } = fittingOf(given);
    const row = read.patterns.indexOf(patternNamed(read, pattern));
    const at = figureIndex(chart, figure);
    const judged = explainPair(fitting, row, at);
    const doubtful = restsOn(fitting, row, at, doubtsOf(chart), given.rules(given.classes));
    return [
      ...reasons(judged),
      ...doubtful.map((each) => ["Note", "", "", "", restWords(each, "FLAGS"), ""]),
    ];
  },
});

/** An explanation in cells, headings first. */
export function reasons({ verdict, routes, take, checks, notes, unjudged }: Explanation): Table {
  const [best] = routes;
  const todo =
    take.length > 0
      ? `Measure ${take.join(" and ")}.`
      : isWearable(verdict)
        ? briefly(unjudged).join(" ")
        : "";
  return [
    ["Check", "Needs", "Has", "Difference", "Says", "Alteration"],
    ["Verdict", "", "", "", verdict, todo],
    ...(best ? [["Best put on", "", "", "", best.name, ""]] : []),
    ...checks.map(checkRow),
    ...notes.map((note) => ["Note", "", "", "", note, ""]),
  ];
}

function checkRow(check: Check): Table[number] {
  const { place, route, differenceMm, says, alteration, unit } = check;
  const { needsMm, hasMm } = limitOf(check);
  return [
    route === undefined ? place : `${route}: ${place.toLowerCase()}`,
    shownLength(needsMm, unit),
    shownLength(hasMm, unit),
    shownLength(differenceMm, unit),
    says,
    alteration?.words ?? "",
  ];
}

/** The limit that the difference is about: where the garment is beyond the most, that, and what it measures unstretched. */
function limitOf({ needsMm, mostMm, hasMm, differenceMm }: Check): Pick<Check, "needsMm" | "hasMm"> {
  const isAboutLeast = Math.abs(hasMm - needsMm - differenceMm) < 1e-9;
  return isAboutLeast || mostMm === undefined || Number.isNaN(differenceMm)
    ? { needsMm, hasMm }
    : { needsMm: mostMm, hasMm: mostMm + differenceMm };
}
