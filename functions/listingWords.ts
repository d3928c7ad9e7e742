import { patternNamed } from "../addin/chart/readPatterns.ts";
import { answerPair } from "../addin/publish/answers.ts";
import { listingTable, listingText } from "../addin/publish/listing.ts";
import { tellingOf } from "../addin/publish/telling.ts";
import { englishVerdicts } from "../addin/publish/words/englishVerdicts.ts";
import { germanVerdicts } from "../addin/publish/words/germanVerdicts.ts";
import { chart as chartRange, choice, patternCode } from "./arguments.ts";
import { languageChoices, listingChoices } from "./choices.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { examplePatterns } from "./examplePatterns.ts";
import { emptyChart } from "./failures.ts";
import {
  badClasses,
  badPatterns,
  badReadings,
  badRules,
  caution,
  easeRules,
  fittingOf,
  garmentClasses,
  patterns,
  repeats,
  unknownPattern,
} from "./patterns.ts";

export const listingWordsFunction = defineFunction({
  name: "LISTINGWORDS",
  summary:
    "The words under a pattern, for its listing or its cover: drafted for whom, whom else it fits, whom not.",
  details:
    "Verdicts are those of WHATFITS. “With a change” is a garment that is wrong by no more than a tenth wherever it is wrong, with " +
    "nothing left to measure. Amounts are in the unit of the chart’s first measure, inches to a sixteenth. The section Publish gives " +
    `the same words, but leaves out readings that the check of the chart doubts.\n\n${caution}`,
  parameters: {
    patterns: patterns(),
    figures: chartRange(),
    pattern: patternCode("The code of the pattern."),
    form: choice(
      "short, long (with reasons and changes) or table (a row for each figure).",
      listingChoices,
      "short",
    ),
    language: choice("The language of the buyers: english or german.", languageChoices, "english"),
    rules: easeRules(),
    classes: garmentClasses(),
    readings: repeats(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.LISTINGWORDS(Patterns[#All], Figures[#All], "P3")',
      values: [examplePatterns, exampleChart, "P3"],
      gives: [
        ["Fits Teal and Siskin. Does not fit Linnet and Dunnock. Measure your own figure: editions differ."],
      ],
    },
    {
      formula: 'FIT.LISTINGWORDS(Patterns[#All], Figures[#All], "P1", "long", "german")',
      values: [examplePatterns, exampleChart, "P1", "long", "german"],
      gives: [
        [
          "Passt: Linnet und Dunnock. Passt nicht: Teal und Siskin (Taillenöffnung zu eng für die Hüfte). Bitte die eigene Figur nachmessen: Ausgaben unterscheiden sich.",
        ],
      ],
    },
  ],
  failures: [badPatterns, emptyChart, unknownPattern, badRules, badClasses, badReadings],
  compute: (given) => {
    const { figures: chart, form, language } = given;
    const { table, fitting } = fittingOf(given);
    const pattern = patternNamed(table, given.pattern);
    const words = language === "german" ? germanVerdicts : englishVerdicts;
    const unit = chart.measures[0]?.unit ?? "mm";
    const units = [unit === "in" ? ("inches in sixteenths" as const) : unit];
    const telling = tellingOf(words, { units }, () => true);
    const row = table.patterns.indexOf(pattern);
    const told = {
      code: pattern.code,
      draftedFor: pattern.draftedFor === undefined ? undefined : chart.figures[pattern.draftedFor],
      answers: chart.figures.map((_, figure) => answerPair(fitting, row, figure, telling)),
    };
    return form === "table"
      ? listingTable(told, chart.figures, words)
      : [[listingText(told, chart.figures, words, form)]];
  },
});
