import { arms } from "./dictionary/arms.ts";
import { feet } from "./dictionary/feet.ts";
import { hands } from "./dictionary/hands.ts";
import { head } from "./dictionary/head.ts";
import { legs } from "./dictionary/legs.ts";
import { torso } from "./dictionary/torso.ts";
import { germanTerms } from "./germanTerms.ts";
import { headingKey } from "./headingKey.ts";
import type { Measure } from "./measure.ts";

/**
 * The measure dictionary, from head to foot within each zone.
 *
 * Terms follow ISO 8559-1 where it has one; definitions are in our own words. Tolerances are the project’s own
 * starting values, for want of a published table for small figures; a tolerances table in the workbook replaces them.
 */
export const measures: readonly Measure[] = [...torso, ...arms, ...hands, ...legs, ...feet, ...head];

const byId: ReadonlyMap<string, Measure> = new Map(measures.map((measure) => [measure.id, measure]));
const byHeading: ReadonlyMap<string, Measure> = new Map(
  measures.flatMap((measure) => headingsOf(measure).map((heading) => [lookupKey(heading), measure] as const)),
);

/** Characters beyond which a text is taken to be no heading of a measure. */
export const longestHeading = 200;

export function measureById(id: string): Measure | undefined {
  return byId.get(id);
}

/**
 * The measure that a heading without its unit names: any case, spacing and punctuation, usual abbreviations, with or
 * without a side (`Left thigh`) or a remark in brackets (`Bust (fullest part)`).
 */
export function findMeasure(heading: string): Measure | undefined {
  if (heading.length > longestHeading) return undefined;
  const withoutRemark = heading.replace(/[([{][^)\]}]*[)\]}]/gu, " ");
  return (
    byHeading.get(lookupKey(heading)) ??
    byHeading.get(lookupKey(withoutRemark)) ??
    byHeading.get(lookupKey(splitSide(heading).rest)) ??
    byHeading.get(lookupKey(splitSide(withoutRemark).rest))
  );
}

/**
 * Every heading that means the measure: its names, its term, its synonyms, a girth also with “girth” behind it, and its
 * German terms, also where ä is written ae.
 */
export function headingsOf(measure: Measure): readonly string[] {
  const headings = [
    measure.id,
    measure.name,
    measure.shortName,
    ...(measure.isoTerm === undefined ? [] : [measure.isoTerm]),
    ...measure.synonyms,
  ];
  const girths = measure.kind === "girth" ? headings.map((heading) => `${heading} girth`) : [];
  const german = (germanTerms[measure.id] ?? []).flatMap((term) => [term, withoutUmlauts(term)]);
  return [...headings, ...girths, ...german];
}

function withoutUmlauts(term: string): string {
  return term.replace(/[äöü]/giu, (letter) => `${letter.normalize("NFD").charAt(0)}e`);
}

/** Takes `left`, `right`, `L`, `R`, `links` or `rechts` off the begin or the end of a heading. */
export function splitSide(heading: string): { readonly rest: string; readonly side?: "left" | "right" } {
  const words = headingKey(heading).split(" ");
  const at = [0, words.length - 1].find((i) => sides[words[i] ?? ""] !== undefined);
  const side = at === undefined ? undefined : sides[words[at] ?? ""];
  if (!side || words.length < 2) return { rest: heading };
  return { rest: words.filter((_, i) => i !== at).join(" "), side };
}

const sides: Readonly<Record<string, "left" | "right" | undefined>> = {
  left: "left",
  l: "left",
  lh: "left",
  ...{ links: "left", linke: "left", linker: "left", linkes: "left" },
  right: "right",
  r: "right",
  rh: "right",
  ...{ rechts: "right", rechte: "right", rechter: "right", rechtes: "right" },
};

/** Spaces do not count: `underbust` is `under bust`. */
function lookupKey(heading: string): string {
  return headingKey(heading).replaceAll(" ", "");
}
