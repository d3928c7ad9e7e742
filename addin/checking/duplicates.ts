import type { Chart, MeasureColumn } from "../chart/chart.ts";
import { amount } from "./amount.ts";
import { figureKey } from "../chart/find.ts";
import type { Flag } from "./flag.ts";
import { rowFlag } from "./readings.ts";

/** Two rows can only be called the same when so many measures were taken on both. */
const fewestShared = 8;
/** How far apart rounding to the divisions of a tape leaves equal lengths: half a division, 0.5 mm or 1/32 in. */
const halfDivisionMm: Readonly<Record<MeasureColumn["unit"], number>> = { mm: 0.5, cm: 0.5, in: 25.4 / 32 };
const rounding = 1e-6;

/** One name on two rows, at the later row. */
export function findNameTwice(chart: Chart): readonly Flag[] {
  const first = new Map<string, number>();
  return chart.figures.flatMap((name, figure) => {
    const before = first.get(figureKey(name));
    if (before === undefined) {
      first.set(figureKey(name), figure);
      return [];
    }
    return [rowFlag(chart, figure, { kind: "one name, two rows", why: whyTwice(chart, before, figure) })];
  });
}

function whyTwice(chart: Chart, before: number, figure: number): string {
  const rows = `rows ${String(chart.rows[before]! + 1)} and ${String(chart.rows[figure]! + 1)} of the chart`;
  const different = chart.measures.filter((column) => differ(column, before, figure));
  if (different.length === 0)
    return `${chart.figures[figure]!} stands in ${rows} with the same readings. Delete one of them.`;
  const examples = different
    .slice(0, 3)
    .map(
      ({ heading, mm, unit }) => `${heading} ${amount(mm[before]!, unit)} and ${amount(mm[figure]!, unit)}`,
    );
  return `${chart.figures[figure]!} stands in ${rows} with different readings (${examples.join(", ")}). Give each figure a name of its own, or delete the older row.`;
}

/**
 * Rows that are the same to within rounding in every measure taken on both, head and hands among them, under
 * different names. Figures that share only a body are not meant: that is usual.
 */
export function findTwins(chart: Chart): readonly Flag[] {
  const told = new Set<number>();
  const twinOf = new Map<number, number>();
  const candidates = nearInOne(chart);
  for (let i = 0; i < chart.figures.length; i++) {
    if (told.has(i)) continue;
    for (const k of candidates(i)) {
      if (k <= i || told.has(k) || !areTwins(chart, i, k)) continue;
      told.add(k);
      twinOf.set(k, i);
    }
  }
  return [...twinOf].map(([k, i]) =>
    rowFlag(chart, k, {
      kind: "same readings, two names",
      why: `Every reading of ${chart.figures[k]!} is that of ${chart.figures[i]!}, head and hands too. If they come from one mould, nothing is wrong; else one may be a copy that was not changed.`,
    }),
  );
}

/**
 * The figures that may be twins of one: those that agree with it in the measure that most figures have, and those without a
 * reading of it.
 */
function nearInOne({ figures, measures }: Chart): (figure: number) => Iterable<number> {
  const known = measures.map(({ mm }) => mm.reduce((sum, reading) => sum + (reading > 0 ? 1 : 0), 0));
  const column = measures[known.indexOf(Math.max(...known))];
  const all = [...figures.keys()];
  if (!column) return () => all;
  const { mm, unit } = column;
  const within = halfDivisionMm[unit] + rounding;
  const unread = all.filter((figure) => Number.isNaN(mm[figure]!));
  const order = all.filter((figure) => !Number.isNaN(mm[figure]!)).sort((a, b) => mm[a]! - mm[b]!);
  const rank = new Map(order.map((figure, place) => [figure, place]));
  return (figure) => {
    const place = rank.get(figure);
    if (place === undefined) return all;
    const near = [...unread];
    for (let k = place - 1; k >= 0 && mm[figure]! - mm[order[k]!]! <= within; k--) near.push(order[k]!);
    for (let k = place + 1; k < order.length && mm[order[k]!]! - mm[figure]! <= within; k++)
      near.push(order[k]!);
    return near.sort((a, b) => a - b);
  };
}

function areTwins({ figures, measures }: Chart, i: number, k: number): boolean {
  let shared = 0;
  const zones = new Set<string | undefined>();
  for (const column of measures) {
    if (differ(column, i, k)) return false;
    if (Number.isNaN(column.mm[i]! - column.mm[k]!)) continue;
    shared++;
    zones.add(column.zone);
  }
  return (
    shared >= fewestShared &&
    zones.has("head") &&
    zones.has("hands") &&
    figureKey(figures[i]!) !== figureKey(figures[k]!)
  );
}

function differ({ mm, unit }: MeasureColumn, i: number, k: number): boolean {
  return Math.abs(mm[i]! - mm[k]!) > halfDivisionMm[unit] + rounding;
}
