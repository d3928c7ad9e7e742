import { expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { readTolerances } from "../../addin/chart/tolerances.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { figures } from "../../addin/demo/figures.ts";
import { figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";
import { comparedColumns } from "../../addin/similarity/columns.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";

it("groups the true chart by the mould of the body, whatever the heads, hands and feet", () => {
  const chart = readChart([figureHeadings, ...trueRows().map((row) => row.map(({ value }) => value))]);
  const tolerances = readTolerances(tableCells(demoWorkbook(), "Tolerances"), chart);
  const groups = sharedBodyGroups(chart, comparedColumns(chart, { tolerances }), "complete");
  const byGroup = new Map<number, Set<string>>();
  for (const { figure, group } of groups) {
    const body = figures.find(({ name }) => name === figure)?.body ?? "";
    byGroup.set(group, (byGroup.get(group) ?? new Set()).add(body));
  }
  const bodies = [...byGroup.values()].map((set) => [...set]);
  expect(bodies.every((set) => set.length === 1)).toBe(true);
  expect(new Set(bodies.flat()).size).toBe(bodies.length);
  expect(bodies.length).toBe(new Set(figures.map(({ body }) => body)).size);
});
