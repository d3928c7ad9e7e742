import type { Chart } from "../chart/chart.ts";
import { amount, roughAmount } from "./amount.ts";
import { explain } from "./explain.ts";
import type { Flag } from "./flag.ts";
import { limit, proportions, type Proportions } from "./proportions.ts";
import { cellFlag, columnAt, logReadings, rowFlag, usualLogs, type Place } from "./readings.ts";

/** The fit is repeated without what stood out, until nothing new stands out. */
const mostRounds = 6;
/** A figure with so many unexplained readings, and this share of all its readings, is of another build. */
const fewestOfAnotherBuild = 4;
const shareOfAnotherBuild = 0.25;
/** On such a figure only what is off by more than this factor is still told as a slip. */
const slipOnAnotherBuild = 6;

/** What was found in single readings. */
export interface CellFindings {
  /** Worst first. */
  readonly flags: readonly Flag[];
  /** The readings that were flagged, or belong to a figure of another build. */
  readonly flagged: readonly Place[];
  /** What is usual in the chart without the flagged readings; `undefined` when the chart is too small. */
  readonly fit: Proportions | undefined;
}

interface Found {
  readonly flag: Flag;
  readonly place: Place;
  /** The place and, for a swap, the other one. */
  readonly places: readonly Place[];
}

/**
 * Readings that are out of proportion, each with the slip that explains it, if one does.
 *
 * @param usual what is usual in the chart; `undefined` where it is too small
 */
export function findCellSlips(chart: Chart, usual: Proportions | undefined): CellFindings {
  const logs = logReadings(chart);
  const { fit, places } = findOutOfProportion(logs, usualLogs(chart), usual);
  if (!fit) return { flags: [], flagged: [], fit };
  const told = new Set<string>();
  const found: Found[] = [];
  for (const place of places) {
    if (told.has(keyOf(place))) continue;
    const explanation = explain(chart, fit, logs, place);
    const about = explanation?.places ?? [place];
    for (const one of about) told.add(keyOf(one));
    const [at = place] = about;
    const flag = explanation
      ? cellFlag(chart, at, explanation)
      : cellFlag(chart, place, { kind: "out of proportion", why: whyOut(chart, fit, place) });
    found.push({ flag, place: at, places: about });
  }
  return {
    flags: gatherOtherBuilds(chart, fit, logs, found),
    flagged: [...places, ...found.flatMap((one) => one.places)],
    fit,
  };
}

/** Readings beyond the limit, worst first, and the fit without them. */
function findOutOfProportion(
  logs: readonly (readonly number[])[],
  start: readonly number[],
  usual: Proportions | undefined,
): {
  readonly fit: Proportions | undefined;
  readonly places: readonly Place[];
} {
  let places: readonly Place[] = [];
  let fit = usual;
  for (let round = 0; fit && round < mostRounds; round++) {
    const next = beyondLimit(fit, logs);
    const before = new Set(places.map(keyOf));
    if (next.length === before.size && next.every((one) => before.has(keyOf(one)))) break;
    places = next;
    const kept = logs.map((row) => [...row]);
    for (const { figure, column } of places) kept[figure]![column] = Number.NaN;
    fit = proportions(kept, start, fit);
  }
  // Without what stood out, too little may be left of a figure or a measure to say what would be in proportion.
  return {
    fit,
    places: places.filter((place) => fit && !Number.isNaN(fit.expected(place.figure, place.column))),
  };
}

function beyondLimit(fit: Proportions, logs: readonly (readonly number[])[]): readonly Place[] {
  const found: (Place & { readonly off: number })[] = [];
  logs.forEach((row, figure) => {
    row.forEach((ln, column) => {
      if (!(Math.abs(fit.deviationFromChart(figure, column, ln)) > limit)) return;
      const off = Math.abs(fit.deviation(figure, column, ln));
      if (off > limit) found.push({ figure, column, off });
    });
  });
  return found.sort((a, b) => b.off - a.off);
}

function whyOut(chart: Chart, fit: Proportions, place: Place): string {
  const { heading, unit, mm } = columnAt(chart, place.column);
  const reading = mm[place.figure]!;
  const expected = Math.exp(fit.expected(place.figure, place.column));
  return `${heading} ${amount(reading, unit)} is ${reading > expected ? "large" : "small"} for this figure: about ${roughAmount(expected, unit)} would be in proportion. Measure again; if it is right, leave it.`;
}

/** One note in place of many flags for a figure that simply has another build. */
function gatherOtherBuilds(
  chart: Chart,
  fit: Proportions,
  logs: readonly (readonly number[])[],
  found: readonly Found[],
): readonly Flag[] {
  const unexplained = new Map<number, number>();
  for (const { flag, place } of found)
    if (flag.kind === "out of proportion")
      unexplained.set(place.figure, (unexplained.get(place.figure) ?? 0) + 1);
  const others = new Map<number, Flag[]>();
  for (const [figure, count] of unexplained) {
    const readings = logs[figure]!.filter((ln) => !Number.isNaN(ln)).length;
    if (count >= fewestOfAnotherBuild && count >= shareOfAnotherBuild * readings) others.set(figure, []);
  }
  const single = found.filter(({ flag, place: { figure, column } }) => {
    const gathered = others.get(figure);
    const off = Math.abs(logs[figure]![column]! - fit.expected(figure, column));
    if (!gathered || !(off < Math.log(slipOnAnotherBuild))) return true;
    gathered.push(flag);
    return false;
  });
  return [
    ...single.map(({ flag }) => flag),
    ...[...others].map(([figure, flags]) => rowFlag(chart, figure, otherBuild(chart, figure, flags))),
  ];
}

function otherBuild(chart: Chart, figure: number, flags: readonly Flag[]): Pick<Flag, "kind" | "why"> {
  const measures = flags.slice(0, 4).map(({ measure }) => measure);
  const more = flags.length > measures.length ? ` and ${String(flags.length - measures.length)} more` : "";
  return {
    kind: "unlike the other figures",
    why: `${chart.figures[figure]!} is built unlike the other figures: ${measures.join(", ")}${more} are out of proportion. If the figure is like that, nothing is wrong.`,
  };
}

function keyOf({ figure, column }: Place): string {
  return `${String(figure)} ${String(column)}`;
}
