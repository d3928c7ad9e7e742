import { describe, expect, test } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { sharedBodyGroups } from "../../../addin/similarity/groups.ts";
import { linkageMethods } from "../../../addin/similarity/linkage.ts";
import { groupingAt, groupTree, scaledColumns } from "../../../taskpane/groups/grouping.ts";
import { groupingWords, sizesOf } from "../../../taskpane/groups/words.ts";
import { figures, grouped } from "./grouped.ts";

describe("the groups at a cut", () => {
  test.each(linkageMethods)("are those of the worksheet function at 1, with %s linkage", async (method) => {
    const { figures: read, columns } = await grouped();
    const rows = sharedBodyGroups(read.chart, columns, method);
    const groupOf = groupingAt(groupTree(read.chart, columns, method), 1);
    expect([...groupOf]).toEqual(rows.map(({ group }) => group));
  });

  test("are those of tolerances so many times larger, at any cut", async () => {
    const { figures: read, columns } = await grouped();
    const tree = groupTree(read.chart, columns, "complete");
    for (const cut of [0.3, 0.5, 0.7, 1, 2, 30]) {
      const rows = sharedBodyGroups(read.chart, scaledColumns(columns, cut));
      expect([...groupingAt(tree, cut)], String(cut)).toEqual(rows.map(({ group }) => group));
    }
  });

  test("have the same numbers whatever the order of rows", async () => {
    const { columns, figures: read } = await grouped();
    const numberOf = (chart: typeof read.chart, of: typeof columns): ReadonlyMap<string, number> => {
      const groupOf = groupingAt(groupTree(chart, of, "complete"), 1);
      return new Map(chart.figures.map((name, place) => [name, groupOf[place] ?? 0]));
    };
    const backwards = readChart([figures[0] ?? [], ...figures.slice(1).reverse()]);
    const reversed = columns.map((compared) => ({
      ...compared,
      column: backwards.measures.find(({ key }) => key === compared.column.key) ?? compared.column,
    }));
    const before = numberOf(read.chart, columns);
    expect(numberOf(backwards, reversed)).toEqual(new Map([...before].reverse()));
    expect(before.get("Linnet")).toBe(1);
    expect(before.get("Siskin")).toBe(2);
    expect(before.get("Dipper"), "a figure that cannot be compared joins nobody").toBe(3);
  });

  test("are counted in words", () => {
    expect(groupingWords(Int32Array.of(1, 1, 2, 2, 3))).toBe(
      "2 groups, holding 4 figures; 1 figure is in none.",
    );
    expect(groupingWords(Int32Array.of(1, 1))).toBe("1 group, holding 2 figures; no figure is left over.");
    expect(groupingWords(Int32Array.of(1, 2))).toBe("No two of the 2 figures share.");
    expect(sizesOf(Int32Array.of(2, 1, 1))).toEqual([2, 1]);
  });
});
