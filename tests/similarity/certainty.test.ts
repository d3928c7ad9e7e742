import { describe, expect, it } from "vitest";
import { usualReadingError } from "../../addin/measures/readingError.ts";
import { certainty } from "../../addin/similarity/certainty/certainty.ts";
import { onTheFence } from "../../addin/similarity/certainty/changingGroups.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { chartOf, comparedOf } from "./chartOf.ts";
import { seeded } from "./condensedOf.ts";
import { repeatedUncertainty, usualUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

const none = () => 0;

describe("certainty", () => {
  const rows = [
    [100, 80, 60],
    [101, 81.5, 60],
    [104, 80, Number.NaN],
    [100, Number.NaN, Number.NaN],
  ];
  const columns = comparedOf(rows, { floorMm: 2, percent: 0 });

  it("is what happens when true bodies vary about their readings", () => {
    const random = seeded(7);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const draws = 20_000;
    let shared = 0;
    for (let draw = 0; draw < draws; draw++) {
      const bodies = rows.slice(0, 2).map((row) => row.map((mm) => mm + 0.5 * normal()));
      const distance = toleranceDistances(comparedOf(bodies, { floorMm: 2, percent: 0 }), 2).values[0]!;
      if (distance <= 1) shared++;
    }
    const { probability, doubt } = certainty(columns, 0, 1);
    // Four standard errors of a share of 20,000.
    expect(Math.abs(probability - shared / draws)).toBeLessThan(4 * Math.sqrt(0.25 / draws));
    expect(doubt?.column.heading).toBe("Measure 2");
  });

  it("is yes or no where readings are exact", () => {
    expect(certainty(columns, 0, 1, none)).toEqual({ probability: 1 });
    expect(certainty(columns, 0, 2, none)).toEqual({ probability: 0, doubt: columns[0] });
  });

  it("is the same either way round, and sure of a figure and itself", () => {
    expect(certainty(columns, 1, 0)).toEqual(certainty(columns, 0, 1));
    expect(certainty(columns, 2, 2).probability).toBe(1);
  });

  it("is not known where the distance is not known", () => {
    expect(certainty(columns, 0, 3)).toEqual({ probability: Number.NaN });
  });

  it("takes the technical error where readings were repeated", () => {
    const exact = repeatedUncertainty({ ...usualReadingError, ofMeasures: { "measure 2": 0 } });
    expect(exact(columns[1]!, 80)).toBe(0);
    expect(exact(columns[0]!, 400)).toBe(usualUncertainty(columns[0]!, 400));
    expect(usualUncertainty(columns[0]!, 100)).toBe(0.5);
    expect(usualUncertainty(columns[0]!, 400)).toBe(1);
    expect(certainty(columns, 0, 1, exact).doubt?.column.heading).toBe("Measure 1");
  });
});

describe("onTheFence", () => {
  it("lists the pairs in doubt, the most doubtful first, whatever the order of rows", () => {
    const bodies: (readonly [string, readonly number[]])[] = [
      ["Wren", [100]],
      ["Tit", [102]], // on the limit: about one half
      ["Jay", [101.2]],
      ["Owl", [150]],
    ];
    const pairs = (rows: typeof bodies) => {
      const chart = chartOf(["Tail"], rows);
      const columns = chart.measures.map((column) => ({
        column,
        tolerance: { floorMm: 2, percent: 0 },
        required: false,
      }));
      return onTheFence(chart, columns).map(({ figure, other }) => [figure, other]);
    };
    expect(pairs(bodies)).toEqual([
      ["Tit", "Wren"],
      ["Jay", "Wren"],
    ]);
    expect(pairs([...bodies].reverse())).toEqual(pairs(bodies));
  });
});
