import { measureById } from "../../measures/dictionary.ts";
import type { OpeningPlace } from "../../chart/garmentClass.ts";
import type { BodyPart, ChangeToMake, Reason, Words } from "./words.ts";

/** What has to pass an opening, by the measure that it is taken from. */
const passing: Readonly<Record<string, string>> = {
  neckGirth: "the neck",
  headGirth: "the head",
  wristGirth: "the wrist",
  handGirth: "the hand",
  ankleGirth: "the ankle",
  heelGirth: "the heel",
  footGirth: "the foot",
  hipGirth: "the hip",
  shoulderGirth: "the shoulders",
  bustGirth: "the bust",
  forearmGirth: "the forearm",
  elbowGirth: "the elbow",
  upperArmGirth: "the upper arm",
  calfGirth: "the calf",
  kneeGirth: "the knee",
  midThighGirth: "the middle of the thigh",
  thighGirth: "the thigh",
};
const openings: Readonly<Record<OpeningPlace, string>> = {
  neck: "neck opening",
  cuff: "sleeve opening",
  hem: "leg opening",
  waist: "waist opening",
};
const parts: Readonly<Record<BodyPart, string>> = { head: "heads", hands: "hands", feet: "feet" };

function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? "";
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

function reason(given: Reason): string {
  switch (given.kind) {
    case "measure": {
      const { measure, verdict, by } = given;
      if (verdict === "too close to call") return `${measure}: too close to call, measure it again`;
      if (verdict === "not known") return `${measure}: not known`;
      return `${measure}: ${verdict}${by === undefined ? "" : ` by ${by}`}`;
    }
    case "opening": {
      const { place, passes, verdict, by } = given;
      const what = passing[passes] ?? "the body";
      if (verdict === "too close to call")
        return `${openings[place]} over ${what}: too close to call, measure it again`;
      if (verdict === "not known") return `${openings[place]} over ${what}: not known`;
      return `${openings[place]} ${by === undefined ? "" : `${by} `}too small for ${what}`;
    }
    case "garment unknown":
      return `${given.measure}: the maker has not said what the garment measures there`;
    case "opening unknown":
      return `the maker has not said enough about the ${openings[given.place]}`;
    case "body unknown":
      return `not known: ${list(given.measures)}`;
    case "nothing to judge by":
      return "there is no rule to judge it by";
  }
}

function change(given: ChangeToMake): string {
  switch (given.kind) {
    case "girth": {
      const { measure, isMore, amounts } = given;
      const verb = isMore ? "let out" : "take in";
      if (!amounts) return `${verb} a little at the ${plain(measure)}`;
      const { total, edges, perEdge } = amounts;
      return `${verb} ${total} at the ${plain(measure)}, ${perEdge} at each of ${String(edges)} seam edges`;
    }
    case "length":
      return `${given.isMore ? "lengthen" : "shorten"} ${given.total === undefined ? "a little" : `by ${given.total}`} (${plain(given.measure)})`;
    case "opening":
      return `make the ${openings[given.place]} ${given.total ?? "a little"} larger`;
  }
}

function plain(term: string): string {
  return term.charAt(0).toLowerCase() + term.slice(1);
}

const comparatives = {
  girth: ["larger", "smaller"],
  length: ["longer", "shorter"],
  width: ["wider", "narrower"],
  height: ["taller", "shorter"],
} as const;

export const english: Words = {
  language: "English",
  tag: "en",
  decimalMark: ".",
  inch: "in",
  inchHeading: "in",
  measure: (id) => measureById(id)?.name,
  howToTake: (id) => measureById(id)?.definition,
  garmentClass: (name) => name,
  verdicts: {
    fits: "fits",
    snug: "snug",
    loose: "loose",
    "too close to call": "too close to call",
    "not known": "not known",
    "too long": "too long",
    "too short": "too short",
    "too loose": "too loose",
    "too tight": "too tight",
    "will not go on": "will not go on",
  },
  kinds: { fits: "Fits", change: "Fits with a change", unsure: "Measure first", not: "Does not fit" },
  reason,
  change,
  list,
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
    refused: (text) => `Not read: ${text}`,
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
  listing: {
    draftedFor: (figure) => `Drafted for ${figure}.`,
    fits: (names, isFirst) => `${isFirst ? "Fits" : "Also fits"} ${names}.`,
    change: (names) => `Fits with a change: ${names}.`,
    unsure: (names) => `Measure first: ${names}.`,
    not: (names) => `Does not fit ${names}.`,
    nothing: "Nobody in the chart can be judged yet.",
    measureYours: "Measure your own figure: editions differ.",
    headings: ["Pattern", "Figure", "Verdict", "Why, or what to change"],
  },
};
