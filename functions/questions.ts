import { descriptors } from "./all.ts";
import type { FunctionDescriptor } from "./descriptor.ts";

/** Something that people want to know, and the functions that answer it. */
export interface Question {
  readonly question: string;
  readonly names: readonly string[];
  /** Other words for it. */
  readonly also: readonly string[];
}

/** What people ask; every function stands under one question. Shown where functions are listed and searched. */
export const questions: readonly Question[] = [
  {
    question: "What does this reading say?",
    names: ["LENGTH", "TAPE", "FIGURESCALE"],
    also: [
      "convert inches to mm or cm",
      "fraction of an inch to decimals",
      "how small is she: scale, size, one to six",
    ],
  },
  {
    question: "Can I trust this chart?",
    names: ["FLAGS", "SCORE", "TEM", "EXPECTED"],
    also: [
      "mistakes, wrong or doubtful readings, slips, typing errors",
      "how well do I measure: second round, repeat",
      "what should it measure: missing reading, estimate, guess",
    ],
  },
  {
    question: "What differs between two figures?",
    names: ["COMPARE", "DELTA", "STEPS"],
    also: ["difference, side by side, larger or smaller than", "from one size to the next"],
  },
  {
    question: "Who shares a body?",
    names: ["GROUPS", "SHARES", "APART", "NEAREST", "TREE"],
    also: [
      "same body, same size, alike, twins, similar figures",
      "who can share clothes",
      "which figure is closest or most like her",
    ],
  },
  {
    question: "Which figures do I keep as house models, and what do I measure next?",
    names: ["BASES", "MEASURENEXT"],
    also: ["fewest figures to draft or fit on, base sizes, fit models", "which reading is worth taking"],
  },
  {
    question: "Which garment goes on which figure?",
    names: ["WHATFITS", "WEARERS", "WARDROBE", "EASECHECK"],
    also: [
      "will it fit, does this fit, who can wear it",
      "what can she wear, clothes, dress, pattern, wardrobe",
      "is there enough ease",
    ],
  },
  {
    question: "Why not, and what do I change?",
    names: ["REASONS", "EASE", "OVER", "CLEARANCE"],
    also: [
      "too tight, too loose, will not go on: alter, alteration, let out, take in",
      "does it go over the head, hand, hip: opening",
      "layers worn underneath",
    ],
  },
  {
    question: "What do I tell my buyers?",
    names: ["LISTINGWORDS"],
    also: ["description, words for my shop, listing, fits these dolls"],
  },
  {
    question: "How do I get from one figure to the other?",
    names: ["GRADE", "RESIZE", "FLARE", "DARTS"],
    also: [
      "print larger or smaller, scale in percent, copier, enlarge",
      "grading, move the points",
      "circle skirt, gathered skirt",
      "shape the bust or waist",
    ],
  },
];

/** Words that say nothing of what is asked. */
const emptyWords = new Set(
  "a an and are at be can could do does for from get has have her how i if in into is it its me my of on one or she that the their them they this to two what when where which who whom whose why will with would you".split(
    " ",
  ),
);

function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}

/** How much a place tells that a word is found in. */
const weights = { name: 8, question: 4, summary: 3, parameters: 1, details: 1 } as const;

interface Searched {
  readonly descriptor: FunctionDescriptor;
  readonly words: Readonly<Record<keyof typeof weights, readonly string[]>>;
}

function searched(descriptor: FunctionDescriptor): Searched {
  const { name, summary, details = "", parameters } = descriptor;
  const asked = questions.filter(({ names }) => names.includes(name));
  return {
    descriptor,
    words: {
      name: [name.toLowerCase()],
      question: asked.flatMap(({ question, also }) => wordsOf([question, ...also].join(" "))),
      summary: wordsOf(summary),
      parameters: parameters.flatMap((parameter) => wordsOf(parameter.name)),
      details: wordsOf(details),
    },
  };
}

/**
 * The functions that answer what is asked, in the user’s words or by a name, the likeliest first; every one where nothing is
 * asked. A word may be the beginning of one: “grad” finds grading.
 */
export function functionsFor(asked: string): readonly FunctionDescriptor[] {
  const all = wordsOf(asked.replace(/^\s*=?\s*FIT\./iu, ""));
  const telling = all.filter((word) => !emptyWords.has(word));
  const wanted = telling.length > 0 ? telling : all;
  if (wanted.length === 0) return descriptors;
  return descriptors
    .map(searched)
    .map((each) => ({ descriptor: each.descriptor, found: wanted.map((word) => weightOf(word, each)) }))
    .filter(({ found }) => found.every((weight) => weight > 0))
    .map(({ descriptor, found }) => ({ descriptor, weight: found.reduce((sum, weight) => sum + weight, 0) }))
    .sort((a, b) => b.weight - a.weight)
    .map(({ descriptor }) => descriptor);
}

function weightOf(word: string, { words }: Searched): number {
  const stem = word.length > 4 ? word.replace(/(?:ies|es|s|ing|ed)$/u, "") : word;
  const isMeant = (each: string): boolean =>
    each.startsWith(stem) || (each.length > 3 && word.startsWith(each));
  const found: Readonly<Record<keyof typeof weights, boolean>> = {
    // The words of a name stand without spaces: WHATFITS.
    name: words.name.some((each) => each.includes(stem)),
    question: words.question.some(isMeant),
    summary: words.summary.some(isMeant),
    parameters: words.parameters.some(isMeant),
    details: words.details.some(isMeant),
  };
  return (Object.keys(weights) as (keyof typeof weights)[]).reduce(
    (sum, place) => sum + (found[place] ? weights[place] : 0),
    0,
  );
}
