import { InputError } from "../../measures/inputError.ts";
import { headingKey } from "../../measures/headingKey.ts";
import { didYouMean, nearNames } from "../../measures/nearNames.ts";
import { quote } from "../../measures/quote.ts";
import type { Chart } from "../chart.ts";
import { figureIndex } from "../find.ts";
import type { GarmentClass } from "../garmentClass.ts";
import { endPlaces, sleeveKinds } from "../garmentTerms.ts";
import type { PatternKey } from "../patternKeys.ts";
import { isClosure, opensWords } from "../readClosure.ts";
import { endNamed, sleeveNamed } from "../readParts.ts";

/** Columns whose cells are words out of a list. */
export const wordKeys = ["garmentClass", "draftedFor", "opens", "sleeve", "endsAt"] as const;
export type WordKey = (typeof wordKeys)[number];

export function isWordKey(key: PatternKey | undefined): key is WordKey {
  return wordKeys.some((each) => each === key);
}

/** What a word of a list means in the table: what is written, or why it is not understood. */
export type Meaning = { readonly value: string } | { readonly reason: string };

export interface Words {
  meaningOf(key: WordKey, text: string): Meaning;
  /** True where nothing but the user can tell what it means. */
  isAsked(key: WordKey, text: string): boolean;
  /** What can be chosen for a word: the likeliest first. */
  choicesFor(key: WordKey, text: string): readonly string[];
}

/** A word of a column, and what the user says that it means; `""` leaves the cell empty. */
export type ChosenWords = ReadonlyMap<string, string>;

/** The form in which words that were chosen are kept. */
export function wordId(key: WordKey, text: string): string {
  return `${key} ${text.trim().toLowerCase()}`;
}

/**
 * Reads the words of a list of patterns: by the readers of the table, then by the words that a text holds.
 *
 * @param chosen what the user says that words mean; it goes before everything else
 */
export function patternWords(
  classes: readonly GarmentClass[],
  chart: Chart,
  chosen: ChosenWords = new Map(),
): Words {
  const known = new Map<string, Meaning>();
  const all: Readonly<Record<WordKey, readonly string[]>> = {
    garmentClass: classes.map(({ name }) => name),
    draftedFor: [...new Set(chart.figures)],
    opens: opensWords,
    sleeve: sleeveKinds,
    endsAt: endPlaces,
  };
  const read: Readonly<Record<WordKey, (text: string) => Meaning>> = {
    garmentClass: (text) => {
      const found = classByWords(text, classes);
      if (found) return { value: found.name };
      const names = classes.flatMap(({ name, synonyms }) => [name, ...synonyms]);
      return { reason: `${quote(text)} is no kind of garment that is known.${didYouMean(text, names)}` };
    },
    draftedFor: (text) => {
      try {
        return { value: chart.figures[figureIndex(chart, text)] ?? text };
      } catch (error) {
        if (error instanceof InputError) return { reason: error.message };
        throw error;
      }
    },
    opens: (text) => orReason(opensByWords(text), text, "a place where a garment opens", opensWords),
    sleeve: (text) =>
      orReason(
        sleeveNamed(text) ?? sleeveNamed(text.replace(/\bsleeves?\b/giu, " ")),
        text,
        "a kind of sleeve",
        sleeveKinds,
      ),
    endsAt: (text) =>
      orReason(
        endNamed(text) ?? endNamed(text.replace(/\b(length|to|the|at|down)\b/giu, " ").replace(/-/gu, " ")),
        text,
        "a place where a garment ends",
        endPlaces,
      ),
  };
  const own = (key: WordKey, text: string): Meaning => {
    const id = wordId(key, text);
    const before = known.get(id);
    if (before) return before;
    const meaning = read[key](text);
    known.set(id, meaning);
    return meaning;
  };
  return {
    meaningOf(key, text) {
      const said = chosen.get(wordId(key, text));
      return said === undefined ? own(key, text) : { value: said };
    },
    isAsked: (key, text) => "reason" in own(key, text),
    choicesFor(key, text) {
      const near = nearNames(text, all[key]);
      return [...near, ...all[key].filter((each) => !near.includes(each))];
    },
  };
}

function orReason(value: string | undefined, text: string, what: string, words: readonly string[]): Meaning {
  return value === undefined
    ? { reason: `${quote(text)} is not ${what}.${didYouMean(text, words)}` }
    : { value };
}

/**
 * The class of a garment out of an everyday name: the class or other name whose words all stand in the text and that ends
 * where the noun does, “satin pencil skirt, lined” as “pencil skirt”. What is said after a comma, or with “with”, “for”, “in”
 * or “over”, tells only how it is made; of two garments joined by “and”, nobody can tell.
 */
export function classByWords(text: string, classes: readonly GarmentClass[]): GarmentClass | undefined {
  const whole = words(text);
  const names = classes.flatMap((garmentClass) =>
    [garmentClass.name, ...garmentClass.synonyms].map((name) => ({ garmentClass, words: words(name) })),
  );
  const exact = names.find((each) => each.words.join(" ") === whole.join(" "));
  if (exact) return exact.garmentClass;
  if (/\b(and|or)\b|[&+/]/iu.test(text)) return undefined;
  const noun = words(text.split(/[,;:()]|\b(?:with|for|in|over|from)\b/iu)[0] ?? "");
  const found = names
    .filter((each) => each.words.every((word) => noun.includes(word)))
    .map((each) => ({ ...each, ends: noun.lastIndexOf(each.words.at(-1) ?? "") }))
    .sort((a, b) => b.ends - a.ends || b.words.length - a.words.length);
  return found[0]?.garmentClass;
}

/** Words in one form for one and many. */
function words(text: string): readonly string[] {
  return headingKey(text)
    .split(" ")
    .filter((word) => word !== "")
    .map((word) =>
      word.length > 3 && word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word,
    );
}

const opensNowhere =
  /\b(none|no|nothing|nowhere|pull(s|ed)?[ -]?(on|over)|slips?[ -]?on|elastic(ated)?|stretch)\b/iu;
const opensAll = /\b(full|whole|all)\b|\bwraps?\b/iu;

/** The place that a description of a closure names: “zip at the back” as “back”. */
function opensByWords(text: string): string | undefined {
  const listed = opensWords.find((word) => headingKey(word) === headingKey(text));
  if (listed !== undefined) return listed;
  if (opensAll.test(text)) return "full length";
  const places = (["back", "front", "side", "shoulder"] as const).filter((place) =>
    new RegExp(`\\b${place}s?\\b`, "iu").test(text),
  );
  if (places.length === 1) return places[0];
  if (places.length > 1) return undefined;
  if (/\bfly\b/iu.test(text)) return "front";
  if (opensNowhere.test(text)) return "none";
  return isClosure(text) ? text.trim() : undefined;
}
