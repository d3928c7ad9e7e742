import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { TableColumn, TableRow } from "./tableRows.ts";
import { placeIn, textAt } from "./tableRows.ts";
import { endPlaces, sleeveKinds } from "./garmentTerms.ts";
import type { EndPlace, SleeveKind } from "./garmentTerms.ts";

/** “Sleeve” alone is the length of an arm. */
export const sleeveHeadings = ["Sleeves", "sleeve kind", "kind of sleeve"] as const;
export const endHeadings = ["Ends at", "end", "ends"] as const;

/** Other words for sleeves, in the form of `headingKey`. */
const sleeveWords: Readonly<Record<string, SleeveKind>> = {
  no: "none",
  sleeveless: "none",
  without: "none",
  cap: "short",
  "short sleeve": "short",
  "half length": "elbow",
  "long sleeve": "long",
  "three quarter": "elbow",
  wrist: "long",
  yes: "long",
};

/** Other words for where a garment ends. */
const endWords: Readonly<Record<string, EndPlace>> = {
  bust: "under the bust",
  "under bust": "under the bust",
  "mid thigh": "thigh",
  mini: "thigh",
  "mid calf": "calf",
  midi: "calf",
  maxi: "ankle",
  foot: "floor",
  ground: "floor",
  "full length": "floor",
};

/** @throws {InputError} naming row and column and the words that can stand there */
export function sleeveAt(row: TableRow, column: TableColumn | undefined): SleeveKind | undefined {
  return wordAt(row, column, sleeveKinds, sleeveWords, "a kind of sleeve");
}

/** @throws {InputError} naming row and column and the words that can stand there */
export function endAt(row: TableRow, column: TableColumn | undefined): EndPlace | undefined {
  return wordAt(row, column, endPlaces, endWords, "a place where a garment ends");
}

/** The kind of sleeve that a text names. */
export function sleeveNamed(text: string): SleeveKind | undefined {
  return named(text, sleeveKinds, sleeveWords);
}

/** The place where a garment ends that a text names. */
export function endNamed(text: string): EndPlace | undefined {
  return named(text, endPlaces, endWords);
}

function named<T extends string>(
  text: string,
  words: readonly T[],
  others: Readonly<Record<string, T>>,
): T | undefined {
  const key = headingKey(text);
  return (
    words.find((word) => headingKey(word) === key) ?? (Object.hasOwn(others, key) ? others[key] : undefined)
  );
}

function wordAt<T extends string>(
  row: TableRow,
  column: TableColumn | undefined,
  words: readonly T[],
  others: Readonly<Record<string, T>>,
  what: string,
): T | undefined {
  const said = textAt(row, column);
  if (headingKey(said) === "") return undefined;
  const found = named(said, words, others);
  if (found) return found;
  throw new InputError(
    `${placeIn(row, column)}: ${quote(said)} is not ${what}. Write ${words.join(", ")}.${didYouMean(said, words)}`,
  );
}
