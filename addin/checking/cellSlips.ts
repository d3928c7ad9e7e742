import type { Chart } from "../chart/chart.ts";
import { groupedBy } from "../chart/groupedBy.ts";
import { usualReadingError } from "../measures/readingError.ts";
import { chartModel, type ChartModel } from "./chartModel.ts";
import { evidenceOf, explain } from "./explain.ts";
import type { Flag } from "./flag.ts";
import { proportions, type Proportions } from "./proportions.ts";
import { cellFlag, keyOf, logReadings, rowFlag, usualLogs, type Place } from "./readings.ts";

/** Beyond this many spreads a reading is out of proportion (Iglewicz & Hoaglin 1993). */
const limit = 3.5;
/** The fit is repeated without what stood out, until nothing new stands out; not in a large chart, where that changes little. */
const mostRounds = 4;
const mostForRounds = 1000;
/** A reading is let be when it strays by less than this, in spreads, even where a chart happens to agree better. */
const leastSpread = 0.025;
/** Builds do not differ by more than a factor 2 in one measure: what is farther off, no figure of like build excuses. */
const mostByBuild = Math.log(2);
/** What is so many times off is looked at even where twins share it: one who reads the wrong unit once may do so twice. */
export const mostTimesByAnything = 3;
const mostByAnything = Math.log(mostTimesByAnything);
/** A figure with so many unexplained readings, and this share of all its readings, is of another build. */
const fewestOfAnotherBuild = 4;
const shareOfAnotherBuild = 0.25;
/** On such a figure only what is off by more than this factor is still told as a slip. */
const slipOnAnotherBuild = 6;

/** What was found in single readings. */
export interface CellFindings {
  /** Worst first. */
  readonly flags: readonly Flag[];
  /** The readings that a slip explains, or that belong to a figure of another build. */
  readonly flagged: readonly Place[];
  /** The readings that are out of proportion, and no slip explains it. */
  readonly unexplained: readonly Place[];
  /** What is to be expected without the flagged readings; `undefined` when the chart is too small. */
  readonly model: ChartModel | undefined;
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
  if (!usual) return { flags: [], flagged: [], unexplained: [], model: undefined };
  const logs = logReadings(chart);
  const { model, places } = findOutOfProportion(logs, usualLogs(chart), usual);
  const evidence = evidenceOf(chart, model);
  const told = new Set<string>();
  const found: Found[] = [];
  for (const place of places) {
    if (told.has(keyOf(place))) continue;
    const explanation = explain(evidence, place);
    for (const one of explanation.places) told.add(keyOf(one));
    const [at = place] = explanation.places;
    found.push({ flag: cellFlag(chart, at, explanation), place: at, places: explanation.places });
  }
  const { flags, others } = gatherOtherBuilds(chart, model, logs, found);
  const isLeft = ({ flag, place }: Found) => flag.kind === "out of proportion" && !others.has(place.figure);
  return {
    flags,
    flagged: found.filter((one) => !isLeft(one)).flatMap((one) => one.places),
    unexplained: found.filter(isLeft).map(({ place }) => place),
    model,
  };
}

/** Readings beyond the limit, worst first, and what is to be expected without them. */
function findOutOfProportion(
  logs: readonly (readonly number[])[],
  start: readonly number[],
  usual: Proportions,
): { readonly model: ChartModel; readonly places: readonly Place[] } {
  let fit = usual;
  let model = chartModel(fit);
  let places = beyondLimit(fit, model, logs);
  for (let round = 1; round < mostRounds && logs.length <= mostForRounds && places.length > 0; round++) {
    const kept = logs.map((row) => [...row]);
    for (const { figure, column } of places) kept[figure]![column] = Number.NaN;
    const next = proportions(kept, start, fit);
    if (!next) break;
    fit = next;
    model = chartModel(fit);
    const before = new Set(places.map(keyOf));
    places = beyondLimit(fit, model, logs);
    if (places.length === before.size && places.every((one) => before.has(keyOf(one)))) break;
  }
  return { model, places };
}

function beyondLimit(
  fit: Proportions,
  model: ChartModel,
  logs: readonly (readonly number[])[],
): readonly Place[] {
  const found: (Place & { readonly off: number })[] = [];
  logs.forEach((row, figure) => {
    row.forEach((ln, column) => {
      const expected = model.expected(figure, column);
      const least = leastSpread + usualReadingError.mm / Math.exp(expected);
      const spread = Math.max(least, model.spread(figure, column));
      const off = Math.abs(ln - expected) / spread;
      const beyondUsual = Math.abs(ln - fit.usual(figure, column));
      if (
        beyondUsual > mostByAnything ||
        (off > limit && !isSharedBuild(fit, { figure, column }, ln, spread))
      )
        found.push({ figure, column, off: Math.max(off, beyondUsual / spread) });
    });
  });
  return found.sort((a, b) => b.off - a.off);
}

/** True where a figure of like build has the same there: hardly anybody makes one slip twice. */
function isSharedBuild(fit: Proportions, { figure, column }: Place, ln: number, spread: number): boolean {
  const beyondUsual = ln - fit.usual(figure, column);
  if (Math.abs(beyondUsual) > mostByBuild) return false;
  return fit
    .mates(figure, column)
    .some((mate) => Math.abs(beyondUsual - fit.residuals[mate]![column]!) < limit * spread);
}

/** One note in place of many flags for a figure that simply has another build. */
function gatherOtherBuilds(
  chart: Chart,
  model: ChartModel,
  logs: readonly (readonly number[])[],
  found: readonly Found[],
): { readonly flags: readonly Flag[]; readonly others: ReadonlySet<number> } {
  const unexplained = groupedBy(
    found.filter(({ flag }) => flag.kind === "out of proportion"),
    ({ place }) => place.figure,
  );
  const others = new Map<number, Flag[]>();
  for (const [figure, { length: count }] of unexplained) {
    const readings = logs[figure]!.filter((ln) => !Number.isNaN(ln)).length;
    if (count >= fewestOfAnotherBuild && count >= shareOfAnotherBuild * readings) others.set(figure, []);
  }
  const single = found.filter(({ flag, place: { figure, column } }) => {
    const gathered = others.get(figure);
    const off = Math.abs(logs[figure]![column]! - model.expected(figure, column));
    if (!gathered || !(off < Math.log(slipOnAnotherBuild))) return true;
    gathered.push(flag);
    return false;
  });
  const notes = [...others].map(([figure, flags]) =>
    rowFlag(chart, figure, otherBuild(chart, figure, flags)),
  );
  return { flags: [...single.map(({ flag }) => flag), ...notes], others: new Set(others.keys()) };
}

function otherBuild(chart: Chart, figure: number, flags: readonly Flag[]): Pick<Flag, "kind" | "why"> {
  const measures = flags.slice(0, 4).map(({ measure }) => measure);
  const more = flags.length > measures.length ? ` and ${String(flags.length - measures.length)} more` : "";
  return {
    kind: "unlike the other figures",
    why: `${chart.figures[figure]!} is built unlike the other figures: ${measures.join(", ")}${more} are out of proportion. If the figure is like that, nothing is wrong.`,
  };
}
