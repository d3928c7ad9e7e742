import type { GroupedFigure } from "./groups.ts";

/** A grouping of the figures of a chart: a group number for each, in the order of the chart. */
export type Grouping = Int32Array | readonly Pick<GroupedFigure, "group">[];

/** The group number of the figure that stands at a place in the chart, from 0. */
export function numberOf(grouping: Grouping, place: number): number {
  const given = grouping[place];
  return typeof given === "number" ? given : (given?.group ?? 0);
}
