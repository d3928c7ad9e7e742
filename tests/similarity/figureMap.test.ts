import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import { figureMap } from "../../addin/similarity/map/figureMap.ts";
import { inTolerances } from "../../addin/similarity/map/inTolerances.ts";
import { chartOf } from "./chartOf.ts";
import { anyShuffledChart, percentColumns } from "./shuffledChart.ts";

const missing = Number.NaN;
const headings = ["bustGirth", "waistGirth", "insideLeg"];
const inMm = (chart: Chart, floorMm = 2) =>
  chart.measures.map((column) => ({ column, tolerance: { floorMm, percent: 0 }, required: false }));

describe("inTolerances", () => {
  it("counts in tolerances of a fixed length", () => {
    expect(inTolerances({ floorMm: 2, percent: 0 }, 100)).toBe(50);
  });

  it("goes over into percentages without a jump or a bend", () => {
    const tolerance = { floorMm: 2, percent: 2 }; // 2 % of 100 mm are 2 mm
    const slope = (mm: number) => (inTolerances(tolerance, mm + 0.01) - inTolerances(tolerance, mm)) / 0.01;
    expect(inTolerances(tolerance, 100)).toBeCloseTo(50, 9);
    expect(inTolerances(tolerance, 100 + 1e-9)).toBeCloseTo(50, 8);
    expect(slope(99)).toBeCloseTo(1 / 2, 4);
    expect(slope(100)).toBeCloseTo(1 / 2, 4);
    expect(slope(200)).toBeCloseTo(1 / 4, 4);
  });

  it("gives the difference of two readings as the distance does, nearly", () => {
    for (const [floorMm, percent, a, b] of [
      [2, 2, 150, 158],
      [0, 3, 80, 84],
      [1, 2, 30, 32],
    ] as const) {
      const steps = inTolerances({ floorMm, percent }, b) - inTolerances({ floorMm, percent }, a);
      const distance = (b - a) / Math.max(floorMm, (percent / 100) * ((a + b) / 2));
      expect(Math.abs(steps / distance - 1)).toBeLessThan(0.001);
    }
  });
});

describe("figureMap", () => {
  const chart = chartOf(headings, { Wren: [100, 80, 200], Lark: [104, 84, 200], Teal: [102, 82, 206] });

  it("lays figures out so that their distances in tolerances are kept", () => {
    const { points } = figureMap(chart, inMm(chart));
    expect(points.map(({ figure, place }) => [figure, place])).toEqual([
      ["Wren", 0],
      ["Lark", 1],
      ["Teal", 2],
    ]);
    const far = (i: number, j: number) =>
      Math.hypot(points[i]!.x - points[j]!.x, points[i]!.y - points[j]!.y);
    // Three figures lie in one plane. In tolerances of 2 mm: √(2² + 2²), √(1² + 1² + 3²), the same.
    expect(far(0, 1)).toBeCloseTo(Math.sqrt(8), 9);
    expect(far(0, 2)).toBeCloseTo(Math.sqrt(11), 9);
    expect(far(1, 2)).toBeCloseTo(Math.sqrt(11), 9);
  });

  it("says what its directions mean, and how much of the spread they show", () => {
    const { axes } = figureMap(chart, inMm(chart));
    expect(axes.map(({ words }) => words)).toEqual(["Longer: insideLeg", "Larger: bustGirth, waistGirth"]);
    expect(axes[0].share + axes[1].share).toBeCloseTo(1, 9);
    expect(axes[0].measures[0]).toMatchObject({ column: chart.measures[2], weight: 1 });
    const against = chartOf(headings, { A: [100, 80, 200], B: [104, 84, 196], C: [106, 86, 194] });
    expect(figureMap(against, inMm(against)).axes[0].words).toBe(
      "Larger: bustGirth, waistGirth, against shorter: insideLeg",
    );
  });

  it("fills in what is missing, counts it for each figure, and says so", () => {
    const rows = Object.fromEntries(
      Array.from({ length: 8 }, (_, i) => {
        const size = 1 + i / 20;
        return [`F${String(i)}`, [135, 100, 140, 60, 180, 90].map((mm) => mm * size)];
      }),
    );
    const ids = ["bustGirth", "waistGirth", "hipGirth", "neckGirth", "insideLeg", "armLength"];
    const whole = chartOf(ids, rows);
    const gaps = chartOf(ids, {
      ...rows,
      F3: rows["F3"]!.map((mm, c) => (c === 1 || c === 4 ? missing : mm)),
    });
    const map = figureMap(gaps, inMm(gaps));
    expect(map.points.map(({ estimated }) => estimated)).toEqual([0, 0, 0, 2, 0, 0, 0, 0]);
    expect(map.notes).toEqual([
      expect.stringMatching(/^These figures lie on one line/),
      "1 figure has missing readings. Estimates from the proportions of the chart stand in for them here.",
    ]);
    // Everybody is in proportion, so the estimate is the reading.
    expect(map.points[3]!.x).toBeCloseTo(figureMap(whole, inMm(whole)).points[3]!.x, 6);
    expect(map.axes[0].words).toBe("Mostly longer: insideLeg; larger: hipGirth, bustGirth");
  });

  it("leaves out a figure with nothing, by name", () => {
    const gaps = chartOf(headings, { A: [100, 80, 200], B: [missing, missing, missing], C: [104, 84, 203] });
    const map = figureMap(gaps, inMm(gaps));
    expect(map.leftOut).toEqual(["B"]);
    expect(map.points.map(({ figure }) => figure)).toEqual(["A", "C"]);
    expect(map.notes.at(-1)).toBe("Left out, since no reading of these measures is known: B.");
  });

  it.each<readonly [string, Chart, string]>([
    [
      "two figures",
      chartOf(headings, { A: [100, 80, 200], B: [104, 84, 203] }),
      "Two figures always lie on one line",
    ],
    [
      "one measure",
      chartOf(["Tail"], { A: [1], B: [5], C: [9] }),
      "With one measure all figures lie on one line",
    ],
    [
      "figures that differ by one thing",
      chartOf(headings, { A: [1, 2, 3], B: [2, 3, 4], C: [4, 5, 6] }),
      "These figures lie on one line",
    ],
  ])("says that up and down mean nothing with %s", (_, of, words) => {
    const { points, axes, notes } = figureMap(of, inMm(of));
    expect(points.every(({ y }) => y === 0)).toBe(true);
    expect(axes[0].share).toBeCloseTo(1, 12);
    expect(axes[1]).toEqual({ share: 0, measures: [], words: "No difference" });
    expect(notes[0]).toContain(words);
  });

  it("puts identical figures on one point, and one figure in the middle", () => {
    const same = chartOf(headings, { A: [100, 80, 200], B: [100, 80, 200] });
    const map = figureMap(same, inMm(same));
    expect(map.points.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(map.notes).toEqual([
      "All figures have the same readings of these measures, so they lie on one point.",
    ]);
    const one = chartOf(headings, { A: [100, 80, 200] });
    expect(figureMap(one, inMm(one)).notes).toEqual([
      "There is only one figure to show; a map needs at least two.",
    ]);
    const none = chartOf(headings, { A: [missing, missing, missing] });
    expect(figureMap(none, inMm(none))).toMatchObject({ points: [], leftOut: ["A"] });
  });

  it("has room for a reading of 0 with a tolerance in percent", () => {
    const flat = chartOf(["heelHeight", "footLength"], { A: [0, 40], B: [20, 40], C: [30, 45] });
    const columns = flat.measures.map((column) => ({
      column,
      tolerance: { floorMm: 0, percent: 5 },
      required: false,
    }));
    expect(figureMap(flat, columns).points.every(({ x, y }) => Number.isFinite(x + y))).toBe(true);
  });

  it("is the same whatever the order of rows", () => {
    fc.assert(
      fc.property(anyShuffledChart, ({ chart: given, shuffled }) => {
        const [one, other] = [given, shuffled].map((each) => {
          const { points, axes, ...rest } = figureMap(each, percentColumns(each));
          const byName = points.map(({ place, ...point }) => ({ ...point, at: each.figures[place] }));
          return {
            ...rest,
            points: byName.sort((a, b) => (a.figure < b.figure ? -1 : 1)),
            axes: axes.map(({ share, words, measures }) => ({
              share,
              words,
              measures: measures.map(({ column, weight }) => [column.key, weight]),
            })),
          };
        });
        expect(other).toEqual(one);
      }),
    );
  });
});
