import { expect, it } from "vitest";
import { chartWith } from "../../addin/chart/doubt.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import { reasonsFunction } from "../../functions/reasons.ts";

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
