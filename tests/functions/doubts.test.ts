import { describe, expect, it } from "vitest";
import { chartWith } from "../../addin/chart/doubt.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import { compareFunction } from "../../functions/compare.ts";
import type { Result } from "../../functions/descriptor.ts";
import { groupsFunction } from "../../functions/groups.ts";
import { doubtsOf, readingFlagsOf } from "../../functions/listed.ts";
import { reasonsFunction } from "../../functions/reasons.ts";
import { wardrobeFunction } from "../../functions/wardrobe.ts";
import { wearersFunction } from "../../functions/wearers.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";

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

describe("a table of verdicts", () => {
  const match = (waist: number | string) =>
    rowsOf(whatFitsFunction.compute([skirt, chartOf(waist), null, null]));

  it("says under the figure what its verdicts rest on, and what they would be", () => {
    const rows = match(13.4);
    const [doubtful = [], last = []] = rows.slice(-2);
    expect(rows).toHaveLength(4);
    expect([doubtful[0], last[0]]).toEqual(["Doubtful", "If mended"]);
    expect(last.map((cell) => cell !== "")).toEqual([true, false, false, false, true, false, false]);
    const right = match(134)[1]?.[4];
    expect(right).not.toBe(rows[1]?.[4]);
    expect(doubtful[4]).toBe("Waist 13.4 mm (wrong unit)");
    expect(last[4]).toBe(`S1 ${String(match(13.4 * 10)[1]?.[4])}`);
  });

  it("says where verdicts on others rest on the figure that a pattern was drafted for", () => {
    const drafted = [
      ["Pattern", "Garment class", "Drafted for", "Opens", "Opening length (mm)"],
      ["S2", "Skirt", "Figure 4", "back", 90],
    ];
    const rows = rowsOf(whatFitsFunction.compute([drafted, chartOf(13.4), null, null]));
    const sound = rowsOf(whatFitsFunction.compute([drafted, chartOf(134), null, null]));
    const turned = [1, 2, 3, 5, 6].filter((at) => rows[1]?.[at] !== sound[1]?.[at]).length;
    expect(turned).toBeGreaterThan(0);
    expect(rows.at(-1)?.[4]).toContain(`S2 on ${String(turned)} other`);
  });

  it("has no such row where no verdict rests on a doubtful reading", () => {
    expect(match(134)).toHaveLength(2);
    const odd = chartOf(134).map((row, i) => row.map((cell, j) => (i === 4 && j === 7 ? 4.4 : cell)));
    expect(rowsOf(whatFitsFunction.compute([skirt, odd, null, null]))).toHaveLength(2);
  });
});

describe("two figures side by side", () => {
  const compared = (waist: number | string) =>
    rowsOf(compareFunction.compute([chartOf(waist), "Figure 3", "Figure 4", null]));

  it("mark the measure whose reading is doubtful, with what FLAGS suggests", () => {
    const rows = compared(13.4);
    expect(rows[0]?.at(-1)).toBe("Doubtful");
    const marked = rows.slice(1).filter((row) => row.at(-1) !== "");
    expect(marked).toHaveLength(1);
    expect(marked[0]?.[0]).toBe("Waist (mm)");
    expect(marked[0]?.at(-1)).toBe("Figure 4: Waist 13.4 mm (wrong unit): 134 mm instead?");
    const estimate = compared("~ 134").find(([measure]) => measure === "Waist (mm)");
    expect(estimate?.at(-1)).toBe("Figure 4: Waist 134 mm (an estimate).");
  });

  it("have six columns where nothing is doubtful", () => {
    expect(compared(134).every((row) => row.length === 6)).toBe(true);
  });
});

describe("groups", () => {
  /** Figure 4 and a copy of it with another head, whose waist may be a slip. */
  const twins = (waist: number | string) => [
    ...chartOf(134),
    ["Copy", ...body.map((mm, j) => (j === 2 ? waist : mm))],
  ];
  const groups = (chart: readonly (readonly unknown[])[], estimates: string | null = null) =>
    rowsOf(groupsFunction.compute([chart, null, null, null, estimates]));
  const markOf = (rows: readonly (readonly unknown[])[], figure: string) =>
    rows.find(([name]) => name === figure)?.[5];

  it("say which doubtful reading they rest on, and who would share a body without the slip", () => {
    const rows = groups(twins(13.4));
    expect(rows[0]?.[5]).toBe("Doubtful");
    expect(markOf(rows, "Copy")).toBe(
      "Rests on a doubtful reading: Waist 13.4 mm (wrong unit). Mended, it would share a body with Figure 4.",
    );
    expect(markOf(rows, "Figure 4")).toBe("Another group if doubtful readings of Copy were mended.");
    expect(markOf(rows, "Figure 1")).toBe("");
    const group = (name: string, of: typeof rows) => of.find(([figure]) => figure === name)?.[1];
    expect(group("Copy", rows)).not.toBe(group("Figure 4", rows));
    const mended = groups(twins(134));
    expect(group("Copy", mended)).toBe(group("Figure 4", mended));
    expect(mended.every((row) => row.length === 5)).toBe(true);
  });

  it("mark an estimate only where it counts", () => {
    expect(groups(twins("~ 134")).every((row) => row.length === 5)).toBe(true);
    const counted = groups(twins("~ 134"), "count");
    expect(markOf(counted, "Copy")).toBe(
      "Rests on a doubtful reading: Waist 134 mm (an estimate). Measure again.",
    );
  });
});

it("a chart is checked once for all answers about it", () => {
  const chart = readChart(chartOf(13.4));
  expect(doubtsOf(chart)).toBe(doubtsOf(chart));
  expect(readingFlagsOf(chart)).toBe(readingFlagsOf(chart));
});

function rowsOf(result: Result): readonly (readonly unknown[])[] {
  if (!Array.isArray(result)) throw new Error("No table came out.");
  return result;
}
