import { expect, it } from "vitest";
import { sourceCellReader } from "../../addin/chart/import/readSourceCell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { readWritten } from "../../addin/measures/parseReading.ts";
import { comparedColumns, countingEstimates } from "../../addin/similarity/columns.ts";
import { nextReadings } from "../../addin/similarity/next.ts";
import { groupsFunction } from "../../functions/groups.ts";

const cells = [
  ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
  ["Ardwen", 180, 134, 194],
  ["Belsory", 180, "~ 134", 194],
  ["Cattrin", 181, "134 (list)", 194],
];
const chart = readChart(cells);

it("keeps where each length comes from", () => {
  expect(chart.measures.map(({ mm }) => [...mm])).toEqual([
    [180, 180, 181],
    [134, 134, 134],
    [194, 194, 194],
  ]);
  expect([...(chart.measures[1]?.origins ?? [])]).toEqual([
    [1, "estimated"],
    [2, "from a list"],
  ]);
  expect(chart.measures[0]?.origins).toBeUndefined();
});

it("stays what it is when it is imported into another unit", () => {
  const read = sourceCellReader("cm", "mm", undefined, readWritten);
  expect(["~ 13,4", "13.4 (list)", "13.4"].map((text) => read(text, undefined))).toEqual([
    { kind: "length", value: "~ 134" },
    { kind: "length", value: "134 (list)" },
    { kind: "length", value: 134 },
  ]);
});

it("estimates take no part in groups unless they are asked for", () => {
  const groupOf = (estimates: string | null) => {
    const table = groupsFunction.compute([cells, null, null, null, estimates]);
    return Array.isArray(table) ? table.slice(1).map((row) => [row[0], row[1]]) : table;
  };
  expect(groupOf(null)).toEqual(groupOf("leave out"));
  expect(new Map(groupOf(null) as [string, number][]).get("Belsory")).not.toBe(
    new Map(groupOf(null) as [string, number][]).get("Ardwen"),
  );
  expect(groupOf("count")).toEqual([
    ["Ardwen", 1],
    ["Belsory", 1],
    ["Cattrin", 1],
  ]);
});

it("an estimate is a reading to take next", () => {
  expect(nextReadings(chart, comparedColumns(chart))[0]).toMatchObject({ figure: "Belsory" });
  expect(nextReadings(countingEstimates(chart), comparedColumns(countingEstimates(chart)))).toEqual([]);
});

it("is said in the flags", () => {
  expect(checkChart(chart)).toMatchObject([
    { kind: "estimates", measure: "Waist", why: expect.stringContaining("for Belsory.") as string },
  ]);
});
