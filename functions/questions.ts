import { descriptors } from "./all.ts";
import type { FunctionDescriptor } from "./descriptor.ts";

/** Something that people want to know, and the functions that answer it. */
export interface Question {
  readonly question: string;
  readonly names: readonly string[];
  /** The functions by name, each with what people say who look for it. */
  readonly asked: Readonly<Record<string, string>>;
}

/** What people ask; every function stands under one question. Shown where functions are listed and searched. */
export const questions: readonly Question[] = (
  [
    {
      question: "What does this reading say?",
      asked: {
        LENGTH: "convert inches to mm or cm; a fraction of an inch as a decimal number; change the unit",
        TAPE: "mm or cm as inches with fractions, eighths, sixteenths; write or show it as the tape says",
        FIGURESCALE: "how small is she: what scale, one to six; her height and that of a person",
      },
    },
    {
      question: "Can I trust this chart?",
      asked: {
        FLAGS:
          "mistakes, errors, typos, slips; wrong or doubtful readings; did I measure wrong; is this right; check it",
        SCORE: "does a value stand out; odd, strange, unusual",
        TEM: "how well, how exactly do I measure; second round, twice, again, repeat; accurate, precise",
        EXPECTED: "what should it measure; a missing, unknown reading; guess, estimate, fill the gap",
      },
    },
    {
      question: "What differs between two figures?",
      asked: {
        COMPARE:
          "the difference between two figures; how do they differ; compare side by side; larger or smaller",
        DELTA: "how much larger or smaller one is than the other; subtract",
        STEPS: "from one size to the next in a size chart; steps between sizes",
      },
    },
    {
      question: "Who shares a body?",
      asked: {
        GROUPS: "same body, same size, same figures; alike, twins; sort my figures; who shares",
        SHARES: "can two figures share, swap, lend, borrow their clothes; wear the same",
        APART: "how far apart, how different",
        NEAREST: "which other figure is closest, nearest, most like her, most similar",
        TREE: "family tree, how they join",
      },
    },
    {
      question: "Which figures do I keep as house models, and what do I measure next?",
      asked: {
        BASES:
          "the fewest figures or patterns to draft; how many do I have to draft for all; which one to draft for; base sizes, fit models",
        MEASURENEXT:
          "what do I measure next, first; which readings are missing, do I still need; is it worth taking",
      },
    },
    {
      question: "Which garment goes on which figure?",
      asked: {
        WHATFITS: "will it fit, does this pattern fit; which patterns fit which figures; all at a glance",
        WEARERS: "who can wear it; which figures can wear this garment; whom else it fits; who else wears it",
        WARDROBE:
          "what can she wear; what fits her, what have I for her; her clothes, garments, patterns, wardrobe",
        EASECHECK: "is there enough ease, enough room; is the ease right, too much, too little",
      },
    },
    {
      question: "Why not, and what do I change?",
      asked: {
        REASONS:
          "why does it not fit; too tight, loose, long, short; what to change; alter, let out, take in, lengthen, shorten",
        EASE: "how much ease; how much room is in it; garment less body",
        OVER: "does it go over what is worn underneath; layers, lining, padding; what thick cloth adds",
        CLEARANCE:
          "does it go over the head, hand, foot, heel, hips; get it on, pull it on; is the opening, neckline, zip large enough",
      },
    },
    {
      question: "What do I tell my buyers?",
      asked: { LISTINGWORDS: "description, words or text for my shop, listing, cover; fits these figures" },
    },
    {
      question: "How do I get from one figure to the other?",
      asked: {
        GRADE: "grading, grade up or down a size; move the points; make the pieces for another figure",
        RESIZE: "print larger or smaller, at how many percent; copier; enlarge, shrink, reduce; print scale",
        FLARE: "circle skirt, full, half, quarter circle; flared; waist radius",
        DARTS: "how wide is the dart; shape the bust or waist",
      },
    },
  ] as const
).map(({ question, asked }) => ({ question, names: Object.keys(asked), asked }));

/** Words that say nothing of what is asked. */
const emptyWords = new Set(
  "a an and are as at be been by can could did do does for from get got had has have her here how i if in into is it its me my of off on one or our please s she should so t that the their them then there these they this those to two want was we what when where which who whom whose why will with would you your don doesn didn isn aren won couldn ll re ve d m".split(
    " ",
  ),
);

/** Words for the same thing, where it is said in different ways. */
const sameMeaning: readonly (readonly string[])[] = [
  ["figure", "figures", "doll", "dolls", "mannequin", "girl", "boy", "lady", "puppet", "character"],
  ["larger", "large", "big", "bigger", "wider", "taller"],
  ["smaller", "small", "little", "tiny", "narrower", "shorter"],
  [
    "garment",
    "garments",
    "clothes",
    "clothing",
    "outfit",
    "dress",
    "coat",
    "blouse",
    "shirt",
    "jacket",
    "bodice",
    "trousers",
    "pants",
    "skirt",
  ],
  ["mm", "cm", "inch", "inches", "millimetres", "millimeters", "centimetres", "centimeters", "unit"],
  ["mistakes", "errors", "typos", "slips", "wrong", "incorrect"],
  ["change", "alter", "adjust", "fix", "alterations"],
  ["measure", "measurement", "reading", "measured"],
  ["same", "identical", "equal", "alike", "similar"],
  ["listing", "shop", "sell", "advertise", "customers", "buyers"],
  ["fabric", "cloth", "thickness", "layers"],
  ["room", "ease", "roomy"],
  ["enlarge", "larger", "upsize"],
  ["percent", "percentage", "scale"],
];

function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}

/** The beginning that the forms of a word share. */
const stemOf = (word: string): string =>
  word.length > 4 ? word.replace(/(?:ies|es|s|ing|ed|er|e)$/u, "") : word;

/** Whether a word of a description is the one that is asked for, another form of it, or begins with it. */
const isForm = (wanted: string, each: string): boolean =>
  each.startsWith(stemOf(wanted)) || (each.length > 3 && wanted.startsWith(each));

/** How much a place tells that a word is found in. */
const weights = { name: 6, asked: 4, summary: 2, question: 1, parameters: 1, details: 0.5 } as const;
type Place = keyof typeof weights;
const places = Object.keys(weights) as readonly Place[];

interface Searched {
  readonly descriptor: FunctionDescriptor;
  readonly words: Readonly<Record<Place, readonly string[]>>;
}

function searched(descriptor: FunctionDescriptor): Searched {
  const { name, summary, details = "", parameters } = descriptor;
  const own = questions.find(({ names }) => names.includes(name));
  return {
    descriptor,
    words: {
      name: [name.toLowerCase()],
      asked: wordsOf(own?.asked[name] ?? ""),
      summary: wordsOf(summary),
      question: wordsOf(own?.question ?? ""),
      parameters: parameters.flatMap((parameter) => wordsOf(parameter.name)),
      details: wordsOf(details),
    },
  };
}

/** How much a word tells for a function: the place that tells most, somewhat less for another word of the same meaning. */
function weightOf(wanted: string, { words }: Searched): number {
  const others = sameMeaning.filter((alike) => alike.includes(wanted)).flat();
  const inPlace = (place: Place): number => {
    // The words of a name stand without spaces: WHATFITS.
    if (place === "name")
      return words.name.some((name) => name === wanted || name.includes(stemOf(wanted))) ? 1 : 0;
    if (words[place].some((each) => isForm(wanted, each))) return 1;
    return words[place].some((each) => others.includes(each)) ? 0.7 : 0;
  };
  return Math.max(...places.map((place) => weights[place] * inPlace(place)));
}

/**
 * The functions that answer what is asked, in a whole sentence of the user’s words or by a name, the likeliest first; every one
 * where nothing is asked. A word may be the beginning of one: “grad” finds grading. A word that few functions know tells
 * more than one that many do (inverse document frequency: K. Spärck Jones, 1972); one that none knows, such as the name
 * of a figure, tells nothing.
 */
export function functionsFor(asked: string): readonly FunctionDescriptor[] {
  const all = wordsOf(asked.replace(/^\s*=?\s*FIT\./iu, ""));
  const telling = all.filter((word) => !emptyWords.has(word));
  const wanted = [...new Set(telling.length > 0 ? telling : all)];
  if (wanted.length === 0) return descriptors;
  const found = descriptors.map(searched).map((each) => ({
    descriptor: each.descriptor,
    weights: wanted.map((word) => weightOf(word, each)),
  }));
  const rarity = wanted.map((_, i) => {
    const known = found.filter((each) => (each.weights[i] ?? 0) > 0).length;
    return known === 0 ? 0 : Math.log(1 + found.length / known);
  });
  const ranked = found
    .map(({ descriptor, weights: each }) => ({
      descriptor,
      weight: each.reduce((sum, weight, i) => sum + weight * (rarity[i] ?? 0), 0),
    }))
    .sort((a, b) => b.weight - a.weight);
  // What is told by far fewer words than the likeliest is no answer.
  const least = (ranked[0]?.weight ?? 0) / 3;
  return ranked.filter(({ weight }) => weight > 0 && weight >= least).map(({ descriptor }) => descriptor);
}
