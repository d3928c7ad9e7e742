import type { Chart } from "../../addin/chart/chart.ts";
import type { GroupSilhouette } from "../../addin/similarity/silhouette.ts";
import { compareNames } from "../../addin/similarity/nameOrder.ts";
import { count } from "../ui/words.ts";
import { sizesOf } from "./words.ts";

/** How a figure sits in its group. */
export interface Seat {
  /** Where it stands in the chart, from 0. */
  readonly place: number;
  readonly group: number;
  readonly kind: "well" | "between" | "nearer" | "not known";
  /** From −1 to 1; NaN where it is not known. */
  readonly width: number;
  /** The nearest other group; 0 where none is known. */
  readonly neighbour: number;
}

/**
 * Figures that sit no better than this lie between two groups. L. Kaufman & P. J. Rousseeuw, Finding Groups in Data (1990):
 * no substantial structure at 0.25 or below; said there of the mean of a grouping, and taken over from memory.
 */
const leastWell = 0.25;

/** The figures of all groups of two or more, those that sit worst first; of equals the first by name. */
export function seatsOf(
  chart: Chart,
  groupOf: Int32Array,
  { widths, neighbours }: GroupSilhouette,
): readonly Seat[] {
  const sizes = sizesOf(groupOf);
  return chart.figures
    .map((_, place): Seat => {
      const width = widths[place] ?? Number.NaN;
      return {
        place,
        group: groupOf[place] ?? 0,
        kind: kindOf(width),
        width,
        neighbour: neighbours[place] ?? 0,
      };
    })
    .filter(({ group }) => (sizes[group - 1] ?? 0) > 1)
    .sort((a, b) => byWidth(a.width, b.width) || compareNames(chart, a.place, b.place));
}

function kindOf(width: number): Seat["kind"] {
  if (Number.isNaN(width)) return "not known";
  if (width < 0) return "nearer";
  return width > leastWell ? "well" : "between";
}

/** NaN comes last. */
function byWidth(a: number, b: number): number {
  if (Number.isNaN(a) || Number.isNaN(b)) return Number(Number.isNaN(a)) - Number(Number.isNaN(b));
  return a - b;
}

/** “sits well”, “between its group and group 3”, “nearer to Wren” where Wren is by itself. */
export function seatWords(chart: Chart, groupOf: Int32Array, { kind, neighbour }: Seat): string {
  switch (kind) {
    case "well":
      return "sits well";
    case "between":
      return `between its group and ${groupName(chart, groupOf, neighbour)}`;
    case "nearer":
      return `nearer to ${groupName(chart, groupOf, neighbour)}`;
    case "not known":
      return "not known";
  }
}

function groupName({ figures }: Chart, groupOf: Int32Array, group: number): string {
  const first = groupOf.indexOf(group);
  const isAlone = first === groupOf.lastIndexOf(group);
  return isAlone ? (figures[first] ?? "another figure") : `group ${String(group)}`;
}

/** “18 of 21 figures sit well; 2 lie between two groups; 1 is nearer to another.” */
export function seatsWords(seats: readonly Seat[]): string {
  const of = (kind: Seat["kind"]): number => seats.filter((seat) => seat.kind === kind).length;
  const [well, between, nearer, unknown] = [of("well"), of("between"), of("nearer"), of("not known")];
  return `${[
    `${well.toLocaleString("en-GB")} of ${count(seats.length, "figure")} ${well === 1 ? "sits" : "sit"} well`,
    ...(between > 0 ? [`${count(between, "lies", "lie")} between two groups`] : []),
    ...(nearer > 0 ? [`${count(nearer, "is", "are")} nearer to another`] : []),
    ...(unknown > 0 ? [`of ${unknown.toLocaleString("en-GB")} nobody can say`] : []),
  ].join("; ")}.`;
}
