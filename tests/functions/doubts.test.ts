import { describe, expect, it } from "vitest";
import { chartWith } from "../../addin/chart/doubt.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import type { Result } from "../../functions/descriptor.ts";
import { reasonsFunction } from "../../functions/reasons.ts";
import { wardrobeFunction } from "../../functions/wardrobe.ts";
import { wearersFunction } from "../../functions/wearers.ts";

const headings = ["Bust", "Under-bust", "Waist", "Hip", "Thigh", "Knee", "Ankle", "Back waist length"];
const body = [182, 152, 134, 194, 108, 72, 44, 88];
const chartOf = (waist: number | string) => [
  ["Figure", ...headings.map((name) => `${name} (mm)`)],
  ...[0.7, 0.8, 0.9, 1, 1.1, 1.2].map((size, i) => [
    `Figure ${String(i + 1)}`,
    ...body.map((mm, j) => (size === 1 && j === 2 ? waist : Math.round(mm * size * 2) / 2)),
  ]),
];
const skirt = [
  ["Pattern", "Garment class", "Finished waist (mm)", "Finished hip (mm)", "Opens", "Opening length (mm)"],
  ["S1", "Skirt", 140, 206, "back", 90],
];
const notes = (waist: number | string) => {
  const table = reasonsFunction.compute([skirt, chartOf(waist), "S1", "Figure 4", null, null]);
  return Array.isArray(table)
    ? table.filter((row) => String(row[4]).startsWith("Rests on")).map((row) => row[4])
    : table;
};

it("an answer that rests on a slip says so, and what it would be without it", () => {
  const slips = doubts(readChart(chartOf(13.4)));
  expect(slips).toMatchObject([{ says: "Waist 13.4 mm (wrong unit)", cells: [{ row: 4, column: 3 }] }]);
  expect(notes(13.4)).toEqual([
    expect.stringMatching(
      /^Rests on a doubtful reading: Waist 13\.4 mm \(wrong unit\)\. Mended as FLAGS suggests, the verdict would be “.+”\.$/,
    ),
  ]);
});

it("an answer that rests on an estimate says so", () => {
  expect(notes("~ 134")).toEqual([
    "Rests on a doubtful reading: Waist 134 mm (an estimate). Measure it again.",
  ]);
});

it("an answer without doubts says nothing of them", () => {
  expect(notes(134)).toEqual([]);
});

it("nor does one that a doubtful reading has no part in", () => {
  const chart = readChart(chartOf(134));
  const [first] = chart.measures;
  expect([...(chartWith(chart, [{ row: 1, column: 1 }]).measures[0]?.mm ?? [])].slice(0, 2)).toEqual([
    NaN,
    first?.mm[1],
  ]);
  const odd = chartOf(134).map((row, i) => row.map((cell, j) => (i === 4 && j === 7 ? 4.4 : cell)));
  expect(doubts(readChart(odd)).length).toBeGreaterThan(0);
  const table = reasonsFunction.compute([skirt, odd, "S1", "Figure 4", null, null]);
  expect(JSON.stringify(table)).not.toContain("Rests on");
});

describe("a list of verdicts", () => {
  const wearers = (waist: number | string) =>
    rowsOf(wearersFunction.compute([skirt, chartOf(waist), "S1", null, null]));
  const toDo = (rows: readonly (readonly unknown[])[]) => rows.map((row) => String(row.at(-1)));

  it("of figures marks those that rest on a slip, and keeps its order and verdicts", () => {
    const rows = wearers(13.4);
    const marked = rows.filter((row) => String(row.at(-1)).includes("Rests on"));
    expect(marked.map(([figure]) => figure)).toEqual(["Figure 4"]);
    expect(marked[0]?.at(-1)).toMatch(/Rests on a doubtful reading: Waist 13\.4 mm \(wrong unit\)\.$/);
    const reasons = rowsOf(reasonsFunction.compute([skirt, chartOf(13.4), "S1", "Figure 4", null, null]));
    expect(marked[0]?.[1]).toBe(reasons[1]?.[4]);
  });

  it("of patterns marks the same", () => {
    const rows = rowsOf(wardrobeFunction.compute([skirt, chartOf("~ 134"), "Figure 4", null, null]));
    expect(toDo(rows.slice(1))).toEqual([
      expect.stringMatching(/Rests on a doubtful reading: Waist 134 mm \(an estimate\)\.$/),
    ]);
  });

  it("marks nothing where no reading is doubtful", () => {
    expect(toDo(wearers(134)).join(" ")).not.toContain("Rests on");
  });
});

function rowsOf(result: Result): readonly (readonly unknown[])[] {
  if (!Array.isArray(result)) throw new Error("No table came out.");
  return result;
}
