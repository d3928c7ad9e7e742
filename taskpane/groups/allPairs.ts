import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import type { GarmentTolerances, ToleranceTable } from "../../addin/chart/tolerances.ts";
import { scalesWithin } from "../../addin/grading/mostInside.ts";
import { printScale } from "../../addin/grading/printScale.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { columnsNamed, columnsOfPart } from "../../addin/similarity/columns.ts";
import { pairDoubts } from "../../addin/similarity/doubtfulPairs.ts";
import { differenceWords } from "../../addin/similarity/differenceWords.ts";
import { count } from "../ui/words.ts";
import { differMostWords } from "./words.ts";
import { figureAt, relate } from "./sharing.ts";

/** What two figures have in common, in a word; from most to least. */
export const pairWords = ["same body", "only some clothes", "same shape", "nothing", "not known"] as const;
export type PairWord = (typeof pairWords)[number];

/** Two figures by their places in the chart, and what they have in common. */
export interface PairInAWord {
  readonly place: number;
  readonly other: number;
  readonly word: PairWord;
  /** Which clothes, at which scale, or what keeps them apart; in words. */
  readonly says: string;
  /** Percent at which a pattern of the first is printed for the other, and back; where they have the same shape. */
  readonly scale?: { readonly there: number; readonly back: number };
}

/** More pairs nobody looks through, and no sheet shows side by side. */
export const mostPaired = 600;

/**
 * Every two of some figures in a word: the same body; else clothes that can be shared by the tolerances of their class; else the
 * same shape at another print scale, at which every measure that decides comes within its tolerance.
 *
 * @param columns the measures of the body, see `comparedColumns`
 * @param places of the figures, from 0
 * @throws {InputError} when there are too many figures
 */
export function allPairs(
  chart: Chart,
  columns: readonly ComparedColumn[],
  garments: readonly GarmentTolerances[],
  tolerances: ToleranceTable | undefined,
  places: readonly number[] = chart.figures.map((_, place) => place),
): readonly PairInAWord[] {
  if (places.length > mostPaired)
    throw new InputError(
      `${count(places.length, "figure")} make too many pairs. Give a part of the chart, with at most ${String(mostPaired)} figures, or look at bodies in place of figures.`,
    );
  const inAWord = pairInAWord(chart, columns, garments, tolerances);
  return places.flatMap((place, i) => places.slice(i + 1).map((other) => inAWord(place, other)));
}

/** What doubtful readings do to the words of two figures. */
export interface DoubtfulPair {
  readonly place: number;
  readonly other: number;
  /** “Rests on …”, see `pairDoubts` */
  readonly says: string;
}

/**
 * The pairs among the same whose words rest on doubtful readings.
 *
 * @param doubtful the doubts about the chart, see `doubts`
 */
export function doubtfulPairs(
  chart: Chart,
  columns: readonly ComparedColumn[],
  garments: readonly GarmentTolerances[],
  tolerances: ToleranceTable | undefined,
  places: readonly number[],
  doubtful: readonly Doubt[],
): readonly DoubtfulPair[] {
  if (places.length > mostPaired) return [];
  const rows = new Set(doubtful.flatMap(({ cells }) => cells.map(({ row }) => row)));
  const isDoubted = (place: number) => rows.has(chart.rows[place] ?? -1);
  const pairs = places.flatMap((place, i) =>
    places
      .slice(i + 1)
      .flatMap((other) => (isDoubted(place) || isDoubted(other) ? [[place, other] as const] : [])),
  );
  const compared = [...columns, ...garments.flatMap((each) => columnsNamed(chart, each.tolerances))];
  const found = pairDoubts(chart, pairs, compared, doubtful, (as) => {
    const inAWord = pairInAWord(
      as,
      columnsOfPart(as, "body", { tolerances, garments }),
      garments,
      tolerances,
    );
    return (place, other) => {
      const { word, says } = inAWord(place, other);
      return [{ what: "", answer: word, why: says }];
    };
  });
  return pairs.flatMap(([place, other], i) => {
    const says = found[i];
    return says === undefined ? [] : [{ place, other, says }];
  });
}

function pairInAWord(
  chart: Chart,
  columns: readonly ComparedColumn[],
  garments: readonly GarmentTolerances[],
  tolerances: ToleranceTable | undefined,
): (place: number, other: number) => PairInAWord {
  const classes = garments.map((each) => ({
    name: each.garment,
    columns: columnsNamed(chart, each.tolerances),
  }));
  const measures = columns.map(({ column }) => column);
  return (place, other) => {
    const body = relate(columns, place, other);
    if (body.answer === "yes")
      return {
        place,
        other,
        word: "same body",
        says: body.worst ? `Differ most: ${differMostWords(body.worst)}.` : "No difference.",
      };
    const shared = classes.filter((each) => relate(each.columns, place, other).answer === "yes");
    const scale =
      body.answer === "no" && mayBeScaled(columns, place, other)
        ? scalesBetween(place, other, measures, tolerances)
        : undefined;
    const shape = scale
      ? `Same shape: print for ${figureAt(chart, other)} at ${String(scale.there)} %, back at ${String(scale.back)} %.`
      : "";
    if (shared.length > 0) {
      const says = `${shared.map(({ name }) => name).join(", ")}. ${shape}`.trim();
      return { place, other, word: "only some clothes", says, ...(scale && { scale }) };
    }
    if (scale) return { place, other, word: "same shape", says: shape, scale };
    if (body.answer === "not known")
      return { place, other, word: "not known", says: "Readings are missing." };
    return { place, other, word: "nothing", says: body.worst ? `${differenceWords(body.worst)}.` : "" };
  };
}

/** The percents at which a print goes from one figure to the other and back, where it does with every measure. */
function scalesBetween(
  place: number,
  other: number,
  measures: readonly MeasureColumn[],
  tolerances: ToleranceTable | undefined,
): PairInAWord["scale"] {
  const [there, back] = [
    printScale(place, other, measures, tolerances),
    printScale(other, place, measures, tolerances),
  ];
  return there.verdict === "one scale" && back.verdict === "one scale"
    ? { there: there.one.across.percent, back: back.one.across.percent }
    : undefined;
}

/** False where no scale brings every measure within its tolerance: far quicker than looking for the best one. */
function mayBeScaled(columns: readonly ComparedColumn[], place: number, other: number): boolean {
  let least = 0;
  let most = Infinity;
  let known = 0;
  for (const { column, tolerance, required } of columns) {
    const baseMm = column.mm[place] ?? Number.NaN;
    const targetMm = column.mm[other] ?? Number.NaN;
    if (!(baseMm > 0 && targetMm > 0)) {
      if (required) return false;
      continue;
    }
    known++;
    const within = scalesWithin({ baseMm, targetMm, tolerance });
    least = Math.max(least, within.least);
    most = Math.min(most, within.most);
    if (least > most) return false;
  }
  return known * 2 >= columns.length;
}

/** How often each word is said, from most in common to least; words that are not said are left out. */
export function countPairs(
  pairs: readonly PairInAWord[],
): readonly (readonly [word: PairWord, times: number])[] {
  return pairWords
    .map((word) => [word, pairs.filter((each) => each.word === word).length] as const)
    .filter(([, times]) => times > 0);
}

/**
 * The words as a table: a row and a column for each figure; a blank where a figure meets itself.
 *
 * @param inDoubt the pairs whose words rest on doubtful readings
 */
export function pairsTable(
  chart: Chart,
  places: readonly number[],
  pairs: readonly PairInAWord[],
  inDoubt: readonly DoubtfulPair[] = [],
): string[][] {
  const at = new Map(places.map((place, i) => [place, i + 1]));
  const table = [
    ["", ...places.map((place) => figureAt(chart, place))],
    ...places.map((place) => [figureAt(chart, place), ...places.map(() => "")]),
  ];
  for (const { place, other, word, scale } of pairs) {
    const [i = 0, j = 0] = [at.get(place), at.get(other)];
    const [row, column] = [table[i], table[j]];
    if (!row || !column) continue;
    const isShape = word === "same shape" && scale;
    row[j] = isShape ? `${word}, ${String(scale.there)} %` : word;
    column[i] = isShape ? `${word}, ${String(scale.back)} %` : word;
  }
  for (const { place, other } of inDoubt) {
    const [i = 0, j = 0] = [at.get(place), at.get(other)];
    for (const [r, c] of [
      [i, j],
      [j, i],
    ] as const) {
      const row = table[r];
      if (row?.[c]) row[c] += ", doubtful";
    }
  }
  return table;
}
