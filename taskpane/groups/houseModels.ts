import type { Cell } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { doubtSays, doubtsByRow, restsOnWords } from "../../addin/chart/doubt.ts";
import { baseMarks } from "../../addin/similarity/doubtfulBases.ts";
import { comparedDoubts, mendedColumns } from "../../addin/similarity/doubtfulGroups.ts";
import { apart, isWithin } from "../../addin/similarity/pair.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { Difference } from "../../addin/similarity/differenceWords.ts";
import type { BasesAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import { shown } from "../../functions/shown.ts";
import { worstMeasure } from "../../functions/worstMeasure.ts";
import { figureAt } from "./sharing.ts";
import { compareNames } from "../../addin/similarity/nameOrder.ts";

/** A figure to draft for, and the figures that its patterns are altered for. Places in the chart, from 0. */
export interface HouseModel {
  readonly base: number;
  /** By name, without the house model itself. */
  readonly served: readonly number[];
  /** The figure that needs the largest alteration, of equals the first; absent when none needs any. */
  readonly farthest?: { readonly place: number; readonly difference: Difference };
}

/** The house models of an answer, those that serve most first, equals by name. */
export function houseModels(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { baseOf }: BasesAnswer,
): readonly HouseModel[] {
  const servedBy = new Map<number, number[]>();
  for (const base of baseOf) if (!servedBy.has(base)) servedBy.set(base, []);
  baseOf.forEach((base, place) => {
    if (base !== place) servedBy.get(base)?.push(place);
  });
  return [...servedBy]
    .map(([base, places]) => {
      const served = places.sort((a, b) => compareNames(chart, a, b));
      const farthest = farthestOf(columns, base, served);
      return { base, served, ...(farthest && { farthest }) };
    })
    .sort((a, b) => b.served.length - a.served.length || compareNames(chart, a.base, b.base));
}

/** What the house model of a figure rests on. */
export interface ModelDoubt {
  readonly place: number;
  /** “Rests on a doubtful reading: …”, and which model would serve it then. */
  readonly says: string;
}

/**
 * The figures whose house model rests on doubtful readings, of their own or of the model, with the model that each would have then.
 * Until that is known: whether the figure stays near enough to its own, and where it serves itself whether another one could serve it.
 *
 * @param reach how far a model may be from the figures that it serves, in tolerances
 * @param doubtful the doubts about the chart, see `doubts`
 * @param after the models with all of them mended
 */
export function modelDoubts(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { baseOf }: BasesAnswer,
  reach: number,
  doubtful: readonly Doubt[],
  after?: BasesAnswer,
): readonly ModelDoubt[] {
  const concerned = comparedDoubts(chart, columns, doubtful);
  if (concerned.length === 0) return [];
  if (after)
    return [...new Set(baseOf)].flatMap((base) =>
      baseMarks(chart, { base, baseOf, after: after.baseOf }, concerned).map(({ places, says }) => ({
        place: places.length === 1 ? places[0]! : base,
        says,
      })),
    );
  const ofRow = doubtsByRow(concerned);
  const sound = mendedColumns(chart, columns, concerned);
  const bases = [...new Set(baseOf)];
  const isNear = (base: number, place: number): boolean =>
    isWithin(apart(sound, base, place).distance, reach);
  return [...baseOf].flatMap((base, place) => {
    const own = [...new Set([place, base].flatMap((each) => ofRow.get(chart.rows[each] ?? -1) ?? []))];
    if (own.length === 0) return [];
    const rests = restsOnWords(own.map((doubt) => doubtSays(doubt, chart.figures[place])));
    const how = own.every(({ corrections }) => corrections.length > 0) ? "If mended" : "Without";
    const name = (at: number | undefined): string => chart.figures[at ?? -1] ?? "";
    const another = bases.find((each) => each !== place && isNear(each, place));
    if (base === place) {
      const could =
        another === undefined ? "no other model could serve it" : `${name(another)} could serve it`;
      return [{ place, says: `${rests} ${how}: ${could}.` }];
    }
    const stays = isNear(base, place) ? "still near enough to" : "not near enough to";
    return [{ place, says: `${rests} ${how}: ${stays} ${name(base)}.` }];
  });
}

function farthestOf(
  columns: readonly ComparedColumn[],
  base: number,
  served: readonly number[],
): HouseModel["farthest"] {
  let farthest: HouseModel["farthest"];
  for (const place of served) {
    const { worst, deltaMm = 0, distance } = apart(columns, base, place);
    if (worst && distance > (farthest?.difference.ofTolerance ?? 0)) {
      farthest = { place, difference: { column: worst.column, deltaMm, ofTolerance: distance } };
    }
  }
  return farthest;
}

/** The figures with their models as a table, headings first; with a last column Doubtful where some rest on doubtful readings. */
export function modelRows(
  chart: Chart,
  columns: readonly ComparedColumn[],
  { baseOf }: BasesAnswer,
  inDoubt: readonly ModelDoubt[],
): readonly (readonly Cell[])[] {
  const isMarked = inDoubt.length > 0;
  const marks = (place: number): string =>
    inDoubt.flatMap((each) => (each.place === place ? [each.says] : [])).join(" ");
  return [
    ["Figure", "House model", "Worst measure", "Of tolerance", ...(isMarked ? ["Doubtful"] : [])],
    ...chart.figures.map((figure, place) => {
      const base = baseOf[place] ?? place;
      const fromBase = apart(columns, base, place);
      return [
        ...[figure, figureAt(chart, base), worstMeasure(fromBase), shown(fromBase.distance)],
        ...(isMarked ? [marks(place)] : []),
      ];
    }),
  ];
}
