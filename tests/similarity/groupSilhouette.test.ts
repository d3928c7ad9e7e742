import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { groupSilhouette } from "../../addin/similarity/silhouette.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { chartOf } from "./chartOf.ts";
import { anyShuffledChart, percentColumns } from "./shuffledChart.ts";

describe("groupSilhouette", () => {
  it("is by figure in the order of the chart, and by group", () => {
    // Distances in tolerances of 1 mm: Lark–Wren 1, Lark–Owl 4, Wren–Owl 5.
    const chart = chartOf(["Tail"], { Owl: [105], Wren: [100], Lark: [101] });
    const columns = chart.measures.map((column) => ({
      column,
      tolerance: { floorMm: 1, percent: 0 },
      required: false,
    }));
    const { widths, neighbours, ofGroup, mean } = groupSilhouette(chart, columns, Int32Array.of(2, 1, 1));
    expect([...widths]).toEqual([0, 0.8, 0.75]);
    expect([...neighbours]).toEqual([1, 2, 2]);
    expect(ofGroup.get(1)).toBeCloseTo(0.775, 12);
    expect(ofGroup.get(2)).toBe(0);
    expect(mean).toBeCloseTo(1.55 / 3, 12);
  });

  it("is the same whatever the order of rows", () => {
    fc.assert(
      fc.property(anyShuffledChart, ({ chart, shuffled }) => {
        const [one, other] = [chart, shuffled].map((each) => {
          const columns = percentColumns(each);
          const { widths, neighbours, ...rest } = groupSilhouette(
            each,
            columns,
            sharedBodyGroups(each, columns),
          );
          const seats = new Map(each.figures.map((figure, i) => [figure, [widths[i], neighbours[i]]]));
          return { ...rest, seats };
        });
        expect(other).toEqual(one);
      }),
    );
  });
});
