import { defaultGarmentClasses } from "../addin/chart/garmentClass.ts";
import type { ListingForm } from "../addin/publish/listing.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import type { LinkageMethod } from "../addin/similarity/linkage.ts";
import type { ZoneChoice } from "../addin/similarity/columns.ts";

/** Words that a host offers while an argument is typed, each with what it means. */
export interface Choices<T extends string = string> {
  /** Letters and underscores; the same wherever the same words are offered. */
  readonly id: string;
  readonly values: readonly { readonly word: T; readonly says: string }[];
}

export const unitChoices = choices<LengthUnit>("LENGTH_UNIT", {
  mm: "Millimetres",
  cm: "Centimetres",
  in: "Inches",
});

/** A class of garments that heads a column of the tolerances is known too. */
export const zoneChoices = choices<ZoneChoice>("BODY_PART", {
  body: "Torso, arms and legs: what decides whether a fitted garment can be shared",
  torso: "What decides the fit on the torso",
  arms: "What decides the fit on the arms",
  legs: "What decides the fit on the legs",
  head: "Every measure of the head",
  hands: "Every measure of the hands",
  feet: "Every measure of the feet",
  all: "Every measure of the chart, height too",
});

export const methodChoices = choices<LinkageMethod>("JOIN_METHOD", {
  complete: "Every pair in a group is within tolerance",
  average: "Groups are as far apart as their pairs are on average",
  single: "Each figure in a group is within tolerance of another, perhaps not of all",
  ward: "Groups as alike within as can be",
});

const fewest = choices("GROUP_METHOD", { fewest: "Every pair within tolerance, in as few groups as can be" });

export const groupMethodChoices: Choices<LinkageMethod | "fewest"> = {
  ...fewest,
  values: [...methodChoices.values, ...fewest.values],
};

export const estimateChoices = choices("ESTIMATES", {
  "leave out": "Estimates are no readings",
  count: "Estimates count as if they were readings",
});

export const yesOrNo = choices("YES_OR_NO", { no: "Leave it out", yes: "Say it" });

export const listingChoices = choices<ListingForm>("LISTING_FORM", {
  short: "Whom it fits, and whom not",
  long: "Why not, and what to change, too",
  table: "A row for each figure",
});

export const languageChoices = choices("BUYERS_LANGUAGE", { english: "English", german: "German" });

/** The classes that come with Measure Book; those of a table of one’s own are known too. */
export const garmentClassChoices = choices(
  "GARMENT_CLASS",
  Object.fromEntries(defaultGarmentClasses.map(({ name, note }) => [name, note])),
);

function choices<T extends string>(id: string, words: Readonly<Record<T, string>>): Choices<T> {
  const values = Object.entries<string>(words).map(([word, says]) => ({ word: word as T, says }));
  return { id, values };
}
