import { readChart } from "../../../addin/chart/readChart.ts";
import type { Flag } from "../../../addin/checking/checkChart.ts";
import { checkChart } from "../../../addin/checking/checkChart.ts";
import { mmPerUnit } from "../../../addin/measures/units.ts";
import type { InventedChart } from "./inventedCharts.ts";
import { inventedChart } from "./inventedCharts.ts";
import type { PlantedSlip, SlipKind } from "./plantSlip.ts";
import { cellsOf, plantSlip, slipKinds } from "./plantSlip.ts";

/** What became of the planted slips of one kind. */
export interface SlipCount {
  planted: number;
  /** Something was flagged where the slip is. */
  found: number;
  /** The first flag there names a slip that turns the true reading into the written one. */
  rightFirst: number;
  /** Taking its suggestion gives the true readings, to within reading error. */
  rightValue: number;
  /** Flags elsewhere, of the cells that are right. */
  falseFlags: number;
  cleanCells: number;
}

/** Two readings of one measure may lie so far apart: 0.5 mm or 2 %. */
const readingErrorMm = 0.5;
const readingError = 0.02;

/** Notes that are true of figures that share a body and a head. */
const notCounted: ReadonlySet<Flag["kind"]> = new Set(["same readings, two names"]);

export type SlipTable = ReadonlyMap<SlipKind | "none", SlipCount>;

/** Plants a slip of each kind in each of the charts, one at a time, and looks at what the check says; and at each chart as it is. */
export function countSlips(seeds: readonly number[], kinds: readonly SlipKind[] = slipKinds): SlipTable {
  const counts = new Map<SlipKind | "none", SlipCount>();
  const countOf = (kind: SlipKind | "none") => {
    const known = counts.get(kind) ?? {
      ...{ planted: 0, found: 0, rightFirst: 0, rightValue: 0, falseFlags: 0, cleanCells: 0 },
    };
    counts.set(kind, known);
    return known;
  };
  for (const seed of seeds) {
    const chart = inventedChart(seed);
    const known = chart.readings.flat().filter((reading) => reading !== undefined).length;
    const clean = countOf("none");
    clean.falseFlags += flagsOf(cellsOf(chart)).length;
    clean.cleanCells += known;
    for (const kind of kinds) {
      const planted = plantSlip(chart, kind, seed);
      if (!planted) continue;
      const count = countOf(kind);
      const flags = flagsOf(planted.cells);
      const here = flags.filter((flag) => isHere(flag, planted));
      count.planted++;
      count.falseFlags += flags.length - here.length;
      count.cleanCells += known - planted.truth.length;
      const [first] = here;
      if (!first) continue;
      count.found++;
      if (isRight(first, planted, chart)) count.rightFirst++;
      if (kind === "out of proportion" || givesTruth(first, planted)) count.rightValue++;
    }
  }
  return counts;
}

function flagsOf(cells: PlantedSlip["cells"]): readonly Flag[] {
  return checkChart(readChart(cells)).filter(({ kind }) => !notCounted.has(kind));
}

function isHere(flag: Flag, { truth, kind }: PlantedSlip): boolean {
  if (kind === "whole row" && flag.measure === "") return truth.some(({ figure }) => figure + 1 === flag.row);
  if (kind === "whole column" && flag.figure === "")
    return truth.some(({ column }) => column + 1 === flag.column);
  return truth.some(({ figure, column }) => figure + 1 === flag.row && column + 1 === flag.column);
}

function isRight(flag: Flag, planted: PlantedSlip, chart: InventedChart): boolean {
  const kinds: Readonly<Record<SlipKind, Flag["kind"]>> = {
    "read in another unit": "wrong unit",
    "point slipped": "wrong unit",
    "half of the girth": "half of the girth",
    "twice the girth": "twice the girth",
    "digits swapped": "digits swapped",
    "digit doubled": "digit doubled",
    "digit missing": "digit missing",
    "columns swapped": "two readings swapped",
    "rows swapped": "two readings swapped",
    "out of proportion": "out of proportion",
    "whole row": "whole row in a wrong unit",
    "whole column": "whole column in a wrong unit",
  };
  if (flag.kind === kinds[planted.kind]) return true;
  // A reading that is wrong for no known reason may be called impossible beside another one.
  if (planted.kind === "out of proportion" && /than it can be/.test(flag.kind)) return true;
  // Two slips can make the same number of the same reading: 66.5 with its point lost is 65 with a digit doubled nearly, 50 of 500 exactly.
  return planted.truth.length === 1 && isExact(flag, planted, chart);
}

function isExact(flag: Flag, { truth }: PlantedSlip, chart: InventedChart): boolean {
  const [one] = truth;
  if (!one || flag.suggestedMm === undefined) return false;
  const written = flag.suggestedMm / mmPerUnit[chart.units[one.column]!];
  return Math.abs(written - chart.readings[one.figure]![one.column]!) < 1e-6;
}

function givesTruth(flag: Flag, { truth }: PlantedSlip): boolean {
  return truth.every(({ figure, column, mm }) => {
    const given = flag.corrections.find((one) => one.row === figure + 1 && one.column === column + 1);
    return given !== undefined && Math.abs(given.mm - mm) <= Math.max(readingErrorMm, readingError * mm);
  });
}
