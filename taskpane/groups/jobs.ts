import type { Chart } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import type { GarmentTolerances, ToleranceTable } from "../../addin/chart/tolerances.ts";
import type { ChangingGroups } from "../../addin/similarity/certainty/changingGroups.ts";
import type { ReadingError } from "../../addin/measures/readingError.ts";
import { changingGroups } from "../../addin/similarity/certainty/changingGroups.ts";
import type { Sharing } from "../../addin/similarity/certainty/sharing.ts";
import { sharingOf } from "../../addin/similarity/certainty/sharing.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { groupMarks } from "../../addin/similarity/doubtfulGroups.ts";
import type { FigureMap } from "../../addin/similarity/map/figureMap.ts";
import type { GroupCard } from "../../addin/similarity/cards.ts";
import { groupCards } from "../../addin/similarity/cards.ts";
import type { GroupSilhouette } from "../../addin/similarity/silhouette.ts";
import { groupSilhouette } from "../../addin/similarity/silhouette.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import type { LinkageMethod } from "../../addin/similarity/linkage.ts";
import type { NextReading } from "../../addin/similarity/next.ts";
import { nextReadings } from "../../addin/similarity/next.ts";
import type { DoubtfulPair, PairInAWord } from "./allPairs.ts";
import { allPairs, doubtfulPairs } from "./allPairs.ts";
import { nearMap } from "./nearMap.ts";
import type { GroupTree } from "./grouping.ts";
import { groupingAt, groupTree } from "./grouping.ts";
import { repeatedUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

/** Figures and the measures by which they are compared. */
interface Compared {
  readonly chart: Chart;
  readonly columns: readonly ComparedColumn[];
}

/** Work of the section Groups, see `Job`. */
export type GroupJob =
  | (Compared & { readonly kind: "tree"; readonly method: LinkageMethod })
  | (Compared & { readonly kind: "cards"; readonly groupOf: Int32Array })
  | (Compared & { readonly kind: "seats"; readonly groupOf: Int32Array })
  | (Compared & { readonly kind: "map"; readonly withoutFar: boolean })
  | (Compared & { readonly kind: "next" })
  | (Compared & {
      readonly kind: "pairs";
      readonly garments: readonly GarmentTolerances[];
      readonly tolerances: ToleranceTable | undefined;
      /** Of the figures that are paired, in the chart. */
      readonly places: readonly number[];
    })
  | (Compared & {
      readonly kind: "doubtfulPairs";
      readonly garments: readonly GarmentTolerances[];
      readonly tolerances: ToleranceTable | undefined;
      readonly places: readonly number[];
      /** The doubts about the chart. */
      readonly doubtful: readonly Doubt[];
    })
  | (Compared & {
      readonly kind: "marks";
      readonly groupOf: Int32Array;
      readonly doubtful: readonly Doubt[];
      /** How the groups were made; without a method nobody is told what would become of them. */
      readonly method: LinkageMethod | undefined;
      readonly cut: number;
      /** The groups with the doubtful readings mended, where they were made in another way. */
      readonly after?: Int32Array | undefined;
    })
  | (Compared & {
      readonly kind: "sharing" | "doubt";
      /** Of the readings of the chart. */
      readonly errors: ReadingError;
    });

/** What came out of it. */
export type GroupAnswer =
  | { readonly kind: "tree"; readonly tree: GroupTree }
  | { readonly kind: "cards"; readonly cards: readonly GroupCard[] }
  | { readonly kind: "seats"; readonly silhouette: GroupSilhouette }
  | { readonly kind: "map"; readonly map: FigureMap; readonly far: readonly string[] }
  | { readonly kind: "pairs"; readonly pairs: readonly PairInAWord[] }
  | { readonly kind: "doubtfulPairs"; readonly pairs: readonly DoubtfulPair[] }
  | { readonly kind: "marks"; readonly marks: readonly string[] }
  | { readonly kind: "next"; readonly readings: readonly NextReading[] }
  | { readonly kind: "sharing"; readonly sharing: Sharing }
  | { readonly kind: "doubt"; readonly doubt: ChangingGroups };

/** @throws {InputError} when there are too many figures */
export function doGroupJob(job: GroupJob): GroupAnswer {
  const { chart, columns } = job;
  switch (job.kind) {
    case "tree":
      return { kind: "tree", tree: groupTree(chart, columns, job.method) };
    case "cards":
      return { kind: "cards", cards: groupCards(chart, columns, job.groupOf) };
    case "seats":
      return { kind: "seats", silhouette: groupSilhouette(chart, columns, job.groupOf) };
    case "map":
      return { kind: "map", ...nearMap(chart, columns, job.withoutFar) };
    case "pairs":
      return { kind: "pairs", pairs: allPairs(chart, columns, job.garments, job.tolerances, job.places) };
    case "doubtfulPairs": {
      const { garments, tolerances, places, doubtful } = job;
      return {
        kind: "doubtfulPairs",
        pairs: doubtfulPairs(chart, columns, garments, tolerances, places, doubtful),
      };
    }
    case "marks": {
      const { groupOf, doubtful, method, cut, after } = job;
      const groupedBy = after
        ? () => after
        : method && ((by: typeof columns) => groupingAt(groupTree(chart, by, method), cut));
      return { kind: "marks", marks: groupMarks(chart, columns, groupOf, doubtful, groupedBy) };
    }
    case "next":
      return { kind: "next", readings: nextReadings(chart, columns) };
    case "sharing":
      return { kind: "sharing", sharing: sharingOf(chart, columns, repeatedUncertainty(job.errors)) };
    case "doubt":
      return {
        kind: "doubt",
        doubt: changingGroups(chart, columns, sharedBodyGroups(chart, columns), {
          uncertainty: repeatedUncertainty(job.errors),
        }),
      };
  }
}
