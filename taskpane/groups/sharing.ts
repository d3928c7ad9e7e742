import type { Chart } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { toleranceMm } from "../../addin/measures/toleranceMm.ts";
import { apart, isWithin, roundDistance } from "../../addin/similarity/pair.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { columnsNamed, columnsOfZone } from "../../addin/similarity/columns.ts";
import { pairDoubts } from "../../addin/similarity/doubtfulPairs.ts";
import type { Difference } from "../../addin/similarity/differenceWords.ts";
import { differenceWords, isBeyond } from "../../addin/similarity/differenceWords.ts";
import { compareNames } from "../../addin/similarity/nameOrder.ts";
import type { Share } from "../../addin/similarity/shares.ts";
import { shares } from "../../addin/similarity/shares.ts";
import type { FiguresToGroup } from "./readGroups.ts";

type Answer = Share["answer"];

/** Whether something can be shared, and what most speaks against it. */
export interface Related {
  readonly answer: Answer;
  /** The worst difference of the other figure; absent when none is known, or nothing differs. */
  readonly worst?: Difference;
}

/** What one figure shares with another. */
export interface SharedWith {
  /** Where the other figure stands in the chart, from 0. */
  readonly place: number;
  readonly body: Related;
  /** By class of garments, in the order of the tolerances. */
  readonly classes: readonly Related[];
}

/** What one figure shares with all others. */
export interface Sharing {
  readonly classes: readonly string[];
  /** Those that share the body. */
  readonly body: readonly SharedWith[];
  /** Those that do not, or not for sure, but share at least one class of garments; most classes first. */
  readonly looser: readonly SharedWith[];
  /** Those that share nothing, as far as is known. */
  readonly nothing: readonly SharedWith[];
}

/**
 * Sorts all other figures by what they share with one. Equals by name.
 *
 * @param place where the figure stands in the chart, from 0
 */
export function sharingOf({ chart, tolerances, garments }: FiguresToGroup, place: number): Sharing {
  const body = columnsOfZone(chart, "body", tolerances);
  const classes = garments.map((each) => columnsNamed(chart, each.tolerances));
  const found = chart.figures
    .map((_, other): SharedWith => ({
      place: other,
      body: relate(body, place, other),
      classes: classes.map((columns) => relate(columns, place, other)),
    }))
    .filter((each) => each.place !== place)
    .sort((a, b) => shared(b) - shared(a) || compareNames(chart, a.place, b.place));
  const isOfBody = (each: SharedWith): boolean => each.body.answer === "yes";
  return {
    classes: garments.map(({ garment }) => garment),
    body: found.filter(isOfBody),
    looser: found.filter((each) => !isOfBody(each) && shared(each) > 0),
    nothing: found.filter((each) => !isOfBody(each) && shared(each) === 0),
  };
}

/**
 * What the sharing of one figure with others rests on, by the place of the other; see `pairDoubts`.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 */
export function sharingDoubts(
  { chart, garments }: FiguresToGroup,
  place: number,
  doubtful: readonly Doubt[],
): ReadonlyMap<number, string> {
  const others = chart.figures.flatMap((_, other) => (other === place ? [] : [other]));
  const columnsOn = (as: Chart) => garments.map((each) => columnsNamed(as, each.tolerances));
  const found = pairDoubts(
    chart,
    others.map((other) => [place, other] as const),
    columnsOn(chart).flat(),
    doubtful,
    (as) => {
      const classes = columnsOn(as);
      return (one, other) =>
        classes.map((columns, c) => {
          const { answer, worst } = relate(columns, one, other);
          return { what: garments[c]!.garment, answer, why: worst ? differenceWords(worst) : "" };
        });
    },
  );
  return new Map(others.flatMap((other, i) => (found[i] === undefined ? [] : [[other, found[i]] as const])));
}

/** What the answers about two figures rest on, part by part of the body and class by class; see `pairDoubts`. */
export function shareDoubt(
  { chart, tolerances, garments }: FiguresToGroup,
  place: number,
  other: number,
  doubtful: readonly Doubt[],
): string | undefined {
  const compared = columnsOfZone(chart, "all", tolerances);
  const [says] = pairDoubts(
    chart,
    [[place, other]],
    compared,
    doubtful,
    (as) => (one, two) => shares(as, one, two, { tolerances, garments }),
  );
  return says;
}

function shared({ classes }: SharedWith): number {
  return classes.filter(({ answer }) => answer === "yes").length;
}

/** What two figures share, by the measures that count for it. As `shares` answers: no as soon as one measure is beyond its tolerance, whatever else is missing. */
export function relate(columns: readonly ComparedColumn[], i: number, j: number): Related {
  let worst: Difference | undefined;
  for (const { column, tolerance } of columns) {
    const a = column.mm[i] ?? Number.NaN;
    const b = column.mm[j] ?? Number.NaN;
    if (Number.isNaN(a - b) || a === b) continue;
    const ofTolerance = roundDistance(Math.abs(a - b) / toleranceMm(tolerance, a, b));
    if (ofTolerance > (worst?.ofTolerance ?? 0)) worst = { column, deltaMm: b - a, ofTolerance };
  }
  if (worst && isBeyond(worst)) return { answer: "no", worst };
  const answer = isWithin(apart(columns, i, j).distance, 1) ? "yes" : "not known";
  return { answer, ...(worst && { worst }) };
}

/** The answers in one sentence: “Fitted clothes no, Waist 5 mm larger; Loose clothes yes; Hats no, Head 6 mm larger” */
export function sharingWords(classes: readonly string[], answers: readonly Related[]): string {
  return answers
    .map(({ answer, worst }, i) => {
      const why = answer === "no" && worst ? `, ${differenceWords(worst)}` : "";
      return `${classes[i] ?? ""} ${answer}${why}`;
    })
    .join("; ");
}

/** The name of a figure at a place. */
export function figureAt({ figures }: Pick<Chart, "figures">, place: number): string {
  return figures[place] ?? "";
}
