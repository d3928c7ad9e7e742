import { measureById } from "../../measures/dictionary.ts";
import type { Verdict } from "../../fit/verdict.ts";
import type { ChangeToMake, LengthName, OpeningName, Reason, VerdictWords } from "./words.ts";

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
const openings: Readonly<Record<OpeningName, string>> = {
  neck: "neck opening",
  waist: "waist opening",
  narrowest: "narrowest place",
  sleeve: "sleeve opening",
  wrist: "wrist opening",
  hem: "hem",
  leg: "leg opening",
  ankle: "ankle opening",
};
const lengths = { hem: "Length", sleeve: "Sleeve length", leg: "Leg length" } as const;
const lengthsToChange: Readonly<Record<LengthName, (verb: string, by: string) => string>> = {
  hem: (verb, by) => `${verb} ${by} at the hem`,
  sleeve: (verb, by) => `${verb} the sleeves ${by}`,
  leg: (verb, by) => `${verb} the legs ${by}`,
};
/** What heights are instead of short and long. */
const heights: Readonly<Partial<Record<Verdict, string>>> = {
  "too short": "too low",
  "too long": "too high",
};

function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? "";
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

function reason(given: Reason): string {
  switch (given.kind) {
    case "measure": {
      const { measure, of, verdict, by } = given;
      if (verdict === "too close to call") return `${measure}: too close to call, measure it again`;
      if (verdict === "not known") return `${measure}: not known`;
      const place = placeOf(measure);
      if (verdict === "will not go on")
        return `${place}: ${by === undefined ? "" : `${by} `}too ${of === "length" ? "short" : "small"}, ${verdict}`;
      const how = of === "height" ? (heights[verdict] ?? verdict) : verdict;
      return `${place}: ${how}${by === undefined ? "" : ` by ${by}`}`;
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
      return `missing: ${list(given.measures)}`;
    case "nothing to judge by":
      return "there is no rule to judge it by";
  }
}

function change(given: ChangeToMake): string {
  switch (given.kind) {
    case "girth": {
      const { measure, isMore, amounts } = given;
      const verb = isMore ? "let out" : "take in";
      const place = plain(placeOf(measure));
      if (!amounts) return `${verb} a little at the ${place}`;
      const { total, edges, perEdge } = amounts;
      return `${verb} ${total} at the ${place}, ${perEdge} at each of ${String(edges)} seam edges`;
    }
    case "length": {
      const { at, isMore, total, measure } = given;
      const verb = isMore ? "lengthen" : "shorten";
      const by = total === undefined ? "a little" : `by ${total}`;
      return at === undefined ? `${verb} ${by} (${plain(measure)})` : lengthsToChange[at](verb, by);
    }
    case "width":
      return `make it ${given.total ?? "a little"} ${given.isMore ? "wider" : "narrower"} (${plain(given.measure)})`;
    case "height":
      return `make it ${given.total ?? "a little"} ${given.isMore ? "higher" : "lower"} (${plain(given.measure)})`;
    case "opening":
      return `make the ${openings[given.place]} ${given.total ?? "a little"} larger`;
  }
}

/** The bust of a garment, rather than its bust girth. */
function placeOf(term: string): string {
  return term.replace(/ girth$/u, "");
}

function plain(term: string): string {
  return term.charAt(0).toLowerCase() + term.slice(1);
}

export const englishVerdicts: VerdictWords = {
  language: "English",
  decimalMark: ".",
  inch: "in",
  measure: (id) => measureById(id)?.name,
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
  lengths,
  littleShort: "a little short",
  littleLong: "a little long",
  reason,
  change,
  list,
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
