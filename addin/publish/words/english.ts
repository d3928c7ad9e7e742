import { measureById } from "../../measures/dictionary.ts";
import type { BodyPart, Words } from "./words.ts";
import { englishVerdicts } from "./englishVerdicts.ts";

const { list } = englishVerdicts;

const parts: Readonly<Record<BodyPart, string>> = { head: "heads", hands: "hands", feet: "feet" };

const comparatives = {
  girth: ["larger", "smaller"],
  length: ["longer", "shorter"],
  width: ["wider", "narrower"],
  height: ["taller", "shorter"],
} as const;

export const english: Words = {
  ...englishVerdicts,
  tag: "en",
  inchHeading: "in",
  howToTake: (id) => measureById(id)?.definition,
  garmentClass: (name) => name,
  kinds: { fits: "Fits", change: "Fits with a change", unsure: "Measure first", not: "Does not fit" },
  sameBody: (names, differ, alike) => {
    const tail = [
      differ.length > 0 ? `; their ${list(differ.map((part) => parts[part]))} differ` : "",
      alike.length > 0 ? `; their ${list(alike.map((part) => parts[part]))} are alike too` : "",
    ];
    return `These wear the same body: ${names}${tail.join("")}.`;
  },
  differs: (measure, kind, isMore, by) => `${measure} ${by} ${comparatives[kind][isMore ? 0 : 1]}`,
  notMeasured: "not measured",
  inQuestion: "being checked, so not given",
  estimatedHere: "only estimated, so not given",
  markedDoubtful: "to be checked",
  markedEstimated: "estimated",
  markedListed: "from a list, not measured",
  partlyInQuestion: "without one that is being checked",
  partlyEstimated: "without one that is only estimated",
  rounded: (units) => `All measures are about: rounded to ${list(units)}.`,
  cautions: [
    "Measure your own figure: editions and castings differ.",
    "For a figure that a child plays with, leave out small parts that come off, cords, and long ties, above all around the neck.",
    "Rules for toys differ from place to place. These words judge fit, not safety.",
  ],
  page: {
    chart: "The chart",
    figure: "Figure",
    bodies: "Who wears the same body",
    outlines: "Drawn from the measures of this chart, all to one scale: diagrams, not likenesses.",
    patterns: "Which pattern fits whom",
    contents: "On this page",
    cautions: "Please note",
    find: "Find a figure",
    findHint: "Part of a name",
    sortHint: "Press a heading to sort by it.",
    sortedUp: "sorted, smallest first",
    sortedDown: "sorted, largest first",
    shown: (shown, of) => `${String(shown)} of ${String(of)} rows`,
    noneFound: "No figure of that name is in this chart.",
    draftedFor: "Drafted for",
    noPatterns: "No patterns are named in this chart.",
    notJudged: (pattern) => `${pattern} cannot be judged yet.`,
    madeWith: "Made with Measure Book from the maker’s own readings.",
    allMeasures: "How each measure is taken",
  },
  buyer: {
    title: "Will it fit mine?",
    intro:
      "Choose your figure, or type what you measured. Nothing that you type leaves this page: it has no way to send it.",
    choose: "Your figure",
    chooseNone: "It is not in the list",
    orType: "What you measured",
    unit: "A number without a unit is in",
    units: { in: "inches", mm: "millimetres", cm: "centimetres" },
    moreMeasures: "More measures",
    aboutFigure: "What your figure is like",
    notSaid: "not said",
    yes: "yes",
    no: "no",
    traits: {
      handsOff: "Do its hands come off?",
      headOff: "Does its head come off?",
      feetOff: "Do its feet come off?",
      softBody: "Is its body soft?",
      jointed: "Are its arms jointed?",
      heeledFoot: "Are its feet shaped for heels?",
    },
    clear: "Start again",
    nothingYet: "Type at least one measure, such as 5 3/8 or 136 mm, or choose a figure.",
    like: "Figures like yours",
    noneLike: "In what you typed, no figure of the chart is the same within what a tape can tell.",
    alike: (figure) => `${figure}: the same within tolerance in all that you typed`,
    nearest: (figure, differs) => `${figure} comes near. Yours differs: ${differs}.`,
    takeNext: "To be sure, measure next",
    takeFor: (measure, patterns) =>
      `${measure}, for ${String(patterns)} ${patterns === 1 ? "pattern" : "patterns"}`,
    refused: (text) => `Not read: ${text}. Write it like 5 3/8 in, 13.6 cm or 136 mm.`,
    counted: (kind, patterns) => {
      const what = {
        fits: "fit",
        change: "fit with a change",
        unsure: "to be measured first",
        not: "do not fit",
      };
      return `${String(patterns)} ${what[kind]}`;
    },
    needsScript: "With scripts allowed, this page can also answer for a figure that is not in the chart.",
  },
};
