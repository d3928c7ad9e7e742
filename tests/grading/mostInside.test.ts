import { describe, expect, it } from "vitest";
import type { MeasureColumn } from "../../addin/chart/chart.ts";
import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { readTolerances, toleranceOf } from "../../addin/chart/tolerances.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { columnsMoving } from "../../addin/grading/columnsMoving.ts";
import type { Print } from "../../addin/grading/printScale.ts";
import { isAcross, printScale } from "../../addin/grading/printScale.ts";
import { columnsOfZone } from "../../addin/similarity/columns.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";
import { seeded } from "../similarity/condensedOf.ts";

/*
 * Every scale of a fine grid is tried, and every measure held against its tolerance as the tolerance is defined: max(floor,
 * percent of the mean of the two). Nothing of the engine’s own search is used.
 */

interface Wanted {
  readonly baseMm: number;
  readonly targetMm: number;
  readonly floorMm: number;
  readonly percent: number;
  readonly isAcross: boolean;
}

function wantedOf(
  columns: readonly MeasureColumn[],
  base: number,
  target: number,
  table?: ToleranceTable,
): readonly Wanted[] {
  return columns.flatMap((column) => {
    const [baseMm, targetMm] = [column.mm[base]!, column.mm[target]!];
    const tolerance = toleranceOf(column, table);
    if (Number.isNaN(baseMm + targetMm) || !tolerance) return [];
    return [{ baseMm, targetMm, ...tolerance, isAcross: isAcross(column) }];
  });
}

/** Lets pass what a double cannot tell from the limit. */
const hair = 1e-8;

function isMet({ baseMm, targetMm, floorMm, percent }: Wanted, factor: number, slack: number): boolean {
  const printed = baseMm * factor;
  const allowed = Math.max(floorMm, ((percent / 100) * (printed + targetMm)) / 2);
  return Math.abs(targetMm - printed) <= allowed * (1 + slack);
}

/** The most measures that any scale of the grid from 50 to 200 % meets. */
function mostByGrid(wanted: readonly Wanted[], steps: number): number {
  let most = 0;
  for (let step = 0; step <= steps; step++) {
    const factor = 0.5 + (1.5 * step) / steps;
    let met = 0;
    for (const each of wanted) if (isMet(each, factor, -hair)) met++;
    if (met > most) most = met;
    if (most === wanted.length) break;
  }
  return most;
}

/** How many measures a print meets, by the definition of the tolerance. */
function metBy({ across, along }: Print, wanted: readonly Wanted[]): number {
  return wanted.filter((each) => isMet(each, (each.isAcross ? across : along).percent / 100, hair)).length;
}

/** How often the engine was wrong, and how many pairs it said could be printed, altered or drafted anew. */
function tried(
  pairs: readonly {
    readonly columns: readonly MeasureColumn[];
    readonly base: number;
    readonly target: number;
  }[],
  steps: number,
  table?: ToleranceTable,
) {
  const count = { pairs: 0, fewer: 0, falselyNone: 0, falselyWithin: 0 };
  for (const { columns, base, target } of pairs) {
    const wanted = wantedOf(columns, base, target, table);
    if (wanted.length === 0) continue;
    count.pairs++;
    const { one, two, best, verdict } = printScale(base, target, columns, table);
    const across = wanted.filter((each) => each.isAcross);
    const along = wanted.filter((each) => !each.isAcross);
    const byOne = mostByGrid(wanted, steps);
    const byTwo = mostByGrid(across, steps) + mostByGrid(along, steps);
    if (metBy(one, wanted) < byOne || metBy(two, wanted) < byTwo) count.fewer++;
    if (Math.max(byOne, byTwo) === wanted.length && verdict !== "one scale" && verdict !== "two scales") {
      count.falselyNone++;
    }
    const saidWithin = best.measures.filter(({ ofTolerance }) => ofTolerance <= 1 + 1e-9).length;
    if (saidWithin !== metBy(best, wanted)) count.falselyWithin++;
  }
  return count;
}

const right = { fewer: 0, falselyNone: 0, falselyWithin: 0 };

describe("the scale that keeps most measures within tolerance", () => {
  const workbook = demoWorkbook();
  const chart = readChart(tableCells(workbook, "Figures"));
  const tolerances = readTolerances(tableCells(workbook, "Tolerances"), chart);
  const pairsBy = (columns: readonly MeasureColumn[]) =>
    chart.figures.flatMap((_, base) =>
      chart.figures.flatMap((__, target) => (base === target ? [] : [{ columns, base, target }])),
    );

  it("is never beaten by a scale of a grid: all pairs of the demo, whole bodies", () => {
    const columns = columnsOfZone(chart, "body", tolerances).map(({ column }) => column);
    const found = tried(pairsBy(columns), 1500, tolerances);
    expect(found).toMatchObject(right);
    expect(found.pairs).toBeGreaterThan(1000);
  });

  it.each([...new Set(gradePieces.map(({ garment }) => garment))])("nor for a garment: %s", (garment) => {
    const pieces = gradePieces.filter((piece) => piece.garment === garment);
    const columns = columnsMoving(chart, defaultGradeRules, pieces);
    expect(tried(pairsBy(columns), 1500, tolerances)).toMatchObject(right);
  });

  it("nor for bodies at random, near each other and far, on a finer grid", () => {
    const random = seeded(14);
    const headings = ["Bust", "Waist", "Hip", "Upper arm", "Back waist", "Arm length", "Inside leg"];
    const usual = [200, 160, 220, 60, 95, 140, 190];
    const rows = Array.from({ length: 600 }, (_, i) => {
      const spread = [0.005, 0.02, 0.06][i % 3]!;
      const size = i % 2 === 0 ? 1 : 0.45 + 1.7 * random();
      return [
        `Figure ${String(i)}`,
        ...usual.map((mm) => mm * size * (1 + spread * (2 * random() - 1) * Math.sqrt(3))),
      ];
    });
    const bodies = readChart([["Figure", ...headings], ...rows]);
    const pairs = rows.flatMap((_, i) =>
      i % 2 === 0 ? [{ columns: bodies.measures, base: i, target: i + 1 }] : [],
    );
    expect(tried(pairs, 15_000)).toEqual({ pairs: 300, ...right });
  });

  it("is exact where all measures share one scale only", () => {
    // Bust may be 98 to 102 mm, waist 102 to 106 mm of printed 100 each: 102 % alone meets both.
    const narrow = readChart([
      ["Figure", "Bust", "Waist"],
      ["Wren", 100, 100],
      ["Rook", 100, 104],
    ]);
    const two = new Map(narrow.measures.map(({ key }) => [key, { floorMm: 2, percent: 0 }]));
    const { factor, verdict } = printScale(0, 1, narrow.measures, two);
    expect(factor).toBeCloseTo(1.02, 9);
    expect(verdict).toBe("one scale");
  });
});
