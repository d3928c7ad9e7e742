/** A call of every worksheet function, as a cell makes it, for `npm run bench`. */
import type { Cells } from "../../addin/chart/cell.ts";
import {
  figureCells,
  measureNames,
  patternCells,
  randomFigures,
  tolerancesMm,
  versionsOfBodies,
} from "./data.ts";

/** Functions of single cells, which stand in a column: the arguments in row i. */
export const cellCalls: Readonly<Record<string, (i: number) => readonly unknown[]>> = {
  LENGTH: (i) => [`${String(1 + (i % 40))} 3/8 in`, "mm"],
  TAPE: (i) => [100 + i / 8],
  OVER: (i) => [80 + i / 8, 0.5, 2],
  EASECHECK: (i) => [140 + (i % 10), 135, "Dress", "Bust"],
  CLEARANCE: (i) => [115 + (i % 10), 112],
  FLARE: (i) => [80 + i / 8],
  DARTS: (i) => [140 + i / 8, 100, 4, 6, 20],
  FIGURESCALE: (i) => [250 + i / 8],
};

/**
 * Functions of ranges: the arguments for so many figures, which differ from run to run in one name or reading, as after an edit,
 * so that nothing can be kept from the run before.
 */
export const rangeCalls: Readonly<Record<string, (count: number, run: number) => readonly unknown[]>> = {
  TEM: (count, run) => [column(count, run), column(count, run + 0.5)],
  FLAGS: (count, run) => [chart(count, run)],
  SCORE: (count, run) => [column(count, run)],
  EXPECTED: (count, run) => [chart(count, run), "Figure 1", "Waist"],
  DELTA: (count, run) => [column(count, run), column(count, run + 0.5)],
  COMPARE: (count, run) => [chart(count, run), "Figure 1", "Figure 2", tolerances],
  EASE: (count, run) => [column(count, run + 20), column(count, run)],
  WHATFITS: (count, run) => [patterns(count), judged(count, run)],
  REASONS: (count, run) => [patterns(count), judged(count, run), "P1", "Figure 1"],
  WEARERS: (count, run) => [patterns(count), judged(count, run), "P1"],
  WARDROBE: (count, run) => [patterns(count), judged(count, run), "Figure 1"],
  LISTINGWORDS: (count, run) => [patterns(count), judged(count, run), "P1", "table"],
  STEPS: (count, run) => [chart(count, run), "Bust, Waist, Hip", "yes", tolerances],
  GRADE: (count, run) => [
    chart(count, run),
    "Figure 1",
    Array.from({ length: 10 }, (_, i) => [`Figure ${String(i + 2)}`]),
    null,
    tolerances,
  ],
  RESIZE: (count, run) => [chart(count, run), "Figure 1", "Figure 2", "Bust, Waist, Hip", 6, tolerances],
  APART: (count, run) => [chart(count, run), "Figure 1", "Figure 2", tolerances],
  NEAREST: (count, run) => [chart(count, run), "Figure 1", 10, tolerances],
  SHARES: (count, run) => [chart(count, run), "Figure 1", "", tolerances],
  GROUPS: (count, run) => [chart(count, run), tolerances],
  TREE: (count, run) => [chart(count, run), tolerances],
  BASES: (count, run) => [chart(count, run), tolerances],
  MEASURENEXT: (count, run) => [chartWithGaps(count, run), tolerances, 20],
};

const tolerances: Cells = [
  ["Measure", "Tolerance"],
  ...measureNames.map((name, c) => [name, `${String(tolerancesMm[c]!)} mm`]),
];

/** Figures × 20 measures. */
function chart(count: number, run: number): Cells {
  return named([["Figure", ...measureNames], ...randomFigures(count).map((row) => ["", ...row])], run);
}

/** Versions of bodies, ten of each; one reading in eleven is missing. */
function chartWithGaps(count: number, run: number): Cells {
  const rows = versionsOfBodies(count, Math.ceil(count / 10)).map((row, i) => [
    "",
    ...row.map((mm, c) => ((7 * i + 3 * c) % 11 === 0 ? undefined : mm)),
  ]);
  return named([["Figure", ...measureNames], ...rows], run);
}

function judged(count: number, run: number): Cells {
  return named(figureCells(count), run);
}

/** One pattern for ten figures. */
function patterns(count: number): Cells {
  return patternCells(Math.ceil(count / 10), count - 1);
}

/** Figure 1, Figure 2 and so on; the last is another in each run. */
function named(cells: Cells, run: number): Cells {
  const name = (i: number): string =>
    `Figure ${i === cells.length - 1 ? `${String(i)} (${String(run)})` : String(i)}`;
  return cells.map((row, i) => (i === 0 ? row : [name(i), ...row.slice(1)]));
}

function column(count: number, run: number): Cells {
  return Array.from({ length: count }, (_, i) => [100 + run + (i % 37) / 4]);
}
