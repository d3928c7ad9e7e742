import { expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { onceFor } from "../../addin/chart/workOnce.ts";
import { expectations, expectedValue } from "../../addin/checking/expectedValue.ts";
import { figureCells } from "../bench/data.ts";

it("one model serves all readings that a chart lacks, and says of each what a model for it alone says", () => {
  const chart = readChart(figureCells(40));
  let models = 0;
  const lacking = onceFor((of: typeof chart) => {
    models++;
    return expectations(of);
  });
  const places = chart.measures.flatMap(({ mm }, column) =>
    [...mm.keys()].flatMap((figure) => (Number.isNaN(mm[figure]) ? [{ figure, column }] : [])),
  );
  expect(places.length).toBeGreaterThan(5);
  const shared = places.map(({ figure, column }) => expectedValue(chart, figure, column, lacking));
  expect(shared).toEqual(places.map(({ figure, column }) => expectedValue(chart, figure, column)));
  expect(shared.some((expected) => expected !== undefined)).toBe(true);
  expect(models).toBe(1);
  // A reading takes no part in what is expected of it: that needs a model without it.
  const known = chart.measures[2]!.mm.findIndex((mm) => !Number.isNaN(mm));
  const own = expectedValue(chart, known, 2, lacking);
  expect(own).toBeDefined();
  expect(own).not.toEqual(lacking(chart)(known, 2));
});
