import type { PublishedLanguage } from "../publication.ts";
import { english } from "./english.ts";
import { german } from "./german.ts";
import type { Words } from "./words.ts";

const all: Readonly<Record<PublishedLanguage, Words>> = { English: english, German: german };

/** What buyers read in a language. */
export function wordsOf(language: PublishedLanguage): Words {
  return all[language];
}
