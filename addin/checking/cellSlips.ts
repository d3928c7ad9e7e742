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

/** Readings that are out of proportion, each with the slip that explains it, if one does. */
export function findCellSlips(chart: Chart): CellFindings {
  const logs = logReadings(chart);
  const { fit, places } = findOutOfProportion(logs, usualLogs(chart));
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
): {
  readonly fit: Proportions | undefined;
  readonly places: readonly Place[];
} {
  let places: readonly Place[] = [];
  let out: ReadonlySet<string> = new Set();
  let fit = proportions(logs, start);
  for (let round = 0; fit && round < mostRounds; round++) {
    const next = beyondLimit(fit, logs);
    const same = next.length === places.length && next.every((one) => out.has(keyOf(one)));
    if (same) break;
    places = next;
    const leftOut = new Set(places.map(keyOf));
    out = leftOut;
    fit = proportions(
      logs.map((row, figure) =>
        row.map((ln, column) => (leftOut.has(keyOf({ figure, column })) ? Number.NaN : ln)),
      ),
      start,
    );
  }
  return { fit, places };
}

function beyondLimit(fit: Proportions, logs: readonly (readonly number[])[]): readonly Place[] {
  return logs
    .flatMap((row, figure) =>
      row.flatMap((ln, column) => {
        if (!(Math.abs(fit.deviationFromChart(figure, column, ln)) > limit)) return [];
        return [{ figure, column, off: Math.abs(fit.deviation(figure, column, ln)) }];
      }),
    )
    .filter(({ off }) => off > limit)
    .sort((a, b) => b.off - a.off);
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
  const isOut = ({ flag }: Found) => flag.kind === "out of proportion";
  const others = [...new Set(found.filter(isOut).map(({ place }) => place.figure))].filter((figure) => {
    const unexplained = found.filter((one) => one.place.figure === figure && isOut(one)).length;
    const readings = logs[figure]!.filter((ln) => !Number.isNaN(ln)).length;
    return unexplained >= fewestOfAnotherBuild && unexplained >= shareOfAnotherBuild * readings;
  });
  const gathered = found.filter(({ place: { figure, column } }) => {
    const off = Math.abs(logs[figure]![column]! - fit.expected(figure, column));
    return others.includes(figure) && off < Math.log(slipOnAnotherBuild);
  });
  return [
    ...found.filter((one) => !gathered.includes(one)).map(({ flag }) => flag),
    ...others.map((figure) => {
      const flags = gathered.filter(({ place }) => place.figure === figure).map(({ flag }) => flag);
      return rowFlag(chart, figure, otherBuild(chart, figure, flags));
    }),
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
