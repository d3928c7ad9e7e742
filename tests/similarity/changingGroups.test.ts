import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { usualReadingError } from "../../addin/measures/readingError.ts";
import { certainty, groupCertainty, rangeProbability } from "../../addin/similarity/certainty/certainty.ts";
import { changingGroups, onTheFence, surelyNot } from "../../addin/similarity/certainty/changingGroups.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { linkageMethods } from "../../addin/similarity/linkage.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { chartOf, comparedOf } from "./chartOf.ts";
import { seeded } from "./condensedOf.ts";
import { anyShuffledChart, percentColumns } from "./shuffledChart.ts";
import { repeatedUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

const inMm = (chart: Chart, floorMm = 2): readonly ComparedColumn[] =>
  chart.measures.map((column) => ({ column, tolerance: { floorMm, percent: 0 }, required: false }));
const changesOf = (chart: Chart) => {
  const columns = inMm(chart);
  return changingGroups(chart, columns, sharedBodyGroups(chart, columns));
};

describe("changingGroups", () => {
  it("says that a group would split, each member with the nearer of the two", () => {
    const { pairs, figures } = changesOf(
      chartOf(["Tail"], { Wren: [100], Lark: [101.9], Teal: [101.6], Rook: [150] }),
    );
    expect(pairs[0]).toMatchObject({
      figure: "Lark",
      other: "Wren",
      places: [1, 0],
      areWithin: true,
      groups: [1, 1],
      change: { kind: "split", group: 1, parts: [["Lark", "Teal"], ["Wren"]] },
    });
    expect(figures.map(({ figure, pairs: count }) => [figure, count])).toEqual([
      ["Wren", 2],
      ["Lark", 1],
      ["Teal", 1],
    ]);
  });

  it("says that two groups could join", () => {
    const { pairs } = changesOf(chartOf(["Tail"], { Wren: [100], Lark: [102.1] }));
    expect(pairs).toMatchObject([{ areWithin: false, change: { kind: "join", groups: [1, 2] } }]);
  });

  it("says that a figure could move, and where", () => {
    // Crake keeps the groups apart, since it is far from Wren; Lark and Teal are not.
    const chart = chartOf(["Tail", "Crest"], {
      Wren: [100, 10],
      Crake: [100, 14.5],
      Teal: [101, 12.5],
      Lark: [100.5, 12.2],
    });
    const { pairs } = changesOf(chart);
    const moves = pairs.filter(({ change }) => change.kind === "move");
    expect(moves.length).toBeGreaterThan(0);
    for (const { change, groups } of moves) {
      if (change.kind !== "move") continue;
      for (const { from, to } of change.moves) expect([from, to].sort()).toEqual([...groups].sort());
    }
  });

  it("says nothing of pairs that others keep apart", () => {
    // C is as doubtful with A and B as with D and E, among whom it is; A and B keep each other from being joined to it.
    const { pairs } = changesOf(chartOf(["Tail"], { A: [100], B: [100], C: [102.1], D: [104], E: [104] }));
    const told = pairs.map(({ figure, other, change }) => [figure + other, change.kind]);
    expect(told.sort()).toEqual([
      ["AC", "none"],
      ["BC", "none"],
      ["CD", "split"],
      ["CE", "split"],
    ]);
  });

  it("takes the technical error where readings were repeated", () => {
    const chart = chartOf(["Tail"], { Wren: [100], Lark: [102.1] });
    const exact = repeatedUncertainty({ ...usualReadingError, ofMeasures: { tail: 0.01 } });
    const groups = sharedBodyGroups(chart, inMm(chart));
    expect(changingGroups(chart, inMm(chart), groups, { uncertainty: exact }).pairs).toEqual([]);
  });

  it("works out the changes of as many pairs as asked for, and counts all", () => {
    const chart = chartOf(["Tail"], { A: [100], B: [101.8], C: [103.6], D: [105.4] });
    const columns = inMm(chart);
    const found = changingGroups(chart, columns, sharedBodyGroups(chart, columns), { mostPairs: 1 });
    expect(found.pairs).toHaveLength(1);
    expect(found.pairCount).toBe(3);
  });

  it("is the same whatever the order of rows", () => {
    fc.assert(
      fc.property(anyShuffledChart, fc.constantFrom(...linkageMethods), ({ chart, shuffled }, method) => {
        const [one, other] = [chart, shuffled].map((each) => {
          const columns = percentColumns(each);
          const found = changingGroups(each, columns, sharedBodyGroups(each, columns, method));
          return {
            ...found,
            pairs: found.pairs.map(({ places, doubt, ...pair }) => ({
              ...pair,
              named: places.map((place) => each.figures[place]),
              doubt: doubt?.column.key,
            })),
            figures: found.figures.map(({ place, ...rest }) => ({ ...rest, named: each.figures[place] })),
          };
        });
        expect(other).toEqual(one);
      }),
    );
  });
});

describe("onTheFence", () => {
  it("passes over no pair that is in doubt", () => {
    fc.assert(
      fc.property(anyShuffledChart, ({ chart }) => {
        const columns = percentColumns(chart);
        const expected = chart.figures.flatMap((_, i) =>
          chart.figures.slice(i + 1).flatMap((__, after) => {
            const { probability } = certainty(columns, i, i + 1 + after);
            return probability > surelyNot && probability < 1 - surelyNot ? [probability] : [];
          }),
        );
        const found = onTheFence(chart, columns).map(({ probability }) => probability);
        expect(found.sort()).toEqual(expected.sort());
      }),
    );
  });
});

describe("groupCertainty", () => {
  it("is that of two figures for a pair", () => {
    const columns = comparedOf(
      [
        [100, 80],
        [101, 81.5],
      ],
      { floorMm: 2, percent: 0 },
    );
    expect(groupCertainty(columns, [0, 1])).toBeCloseTo(certainty(columns, 0, 1).probability, 6);
  });

  it("is 1 for a figure by itself, and yes or no where readings are exact", () => {
    const columns = comparedOf([[100], [101.5], [103]], { floorMm: 2, percent: 0 });
    expect(groupCertainty(columns, [1])).toBe(1);
    expect(groupCertainty(columns, [0, 1], () => 0)).toBe(1);
    expect(groupCertainty(columns, [0, 1, 2], () => 0)).toBe(0);
  });

  it("is what happens when true bodies vary about their readings", () => {
    const rows = [
      [100, 80],
      [101, 81.5],
      [100.2, 80.4],
      [99.6, 81],
    ];
    const tolerance = { floorMm: 2, percent: 2.2 };
    const random = seeded(11);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const draws = 20_000;
    let shared = 0;
    for (let draw = 0; draw < draws; draw++) {
      const bodies = rows.map((row) => row.map((mm) => mm + 0.5 * normal()));
      if (toleranceDistances(comparedOf(bodies, tolerance), 4).values.every((distance) => distance <= 1))
        shared++;
    }
    // Four standard errors of a share of 20,000.
    const probability = groupCertainty(comparedOf(rows, tolerance), [0, 1, 2, 3]);
    expect(Math.abs(probability - shared / draws)).toBeLessThan(4 * Math.sqrt(0.25 / draws));
  });

  it("leaves out figures that lack a measure", () => {
    const columns = comparedOf(
      [
        [100, 80],
        [101, Number.NaN],
        [100, 80],
      ],
      { floorMm: 2, percent: 0 },
    );
    const [first, second] = columns;
    expect(groupCertainty(columns, [0, 1, 2])).toBeCloseTo(
      groupCertainty([first!], [0, 1, 2]) * groupCertainty([second!], [0, 2]),
      12,
    );
  });

  it("stands an exact reading beside uncertain ones", () => {
    const mixed = rangeProbability([100, 100], [0, 1], { floorMm: 1, percent: 0 });
    expect(mixed).toBeCloseTo(0.6827, 2);
  });
});
