import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { certainty, groupCertainty } from "../../addin/similarity/certainty/certainty.ts";
import { onTheFence, surelyNot } from "../../addin/similarity/certainty/changingGroups.ts";
import type { Sharing } from "../../addin/similarity/certainty/sharing.ts";
import { posteriorOf, sharingOf } from "../../addin/similarity/certainty/sharing.ts";
import { comparedOf } from "./chartOf.ts";
import { anyShuffledChart, percentColumns } from "./shuffledChart.ts";
import { calibration, doShare } from "./sureness/calibration.ts";
import type { SharingKind } from "./sureness/sharedBodies.ts";
import { sharedBodies } from "./sureness/sharedBodies.ts";
import { usualUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

const tolerance = { floorMm: 2, percent: 2 };
const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);

function learned(kind: SharingKind, seed: number) {
  const { chart, bodies } = sharedBodies(kind, seed);
  const columns = chart.measures.map((column) => ({ column, tolerance, required: false }));
  return { chart, bodies, columns, sharing: sharingOf(chart, columns, usualUncertainty) };
}

const sameBody = (sharing: Sharing) => sharing.find(({ kind }) => kind === "same body")?.weight ?? Number.NaN;

describe("how sure it is that two figures share a body", () => {
  it.each(["half", "seldom", "never"] as const)(
    "is what happens, in charts whose bodies are %s shared",
    (kind) => {
      const table = calibration(kind, seeds(70_000, 40));
      const middle = table.slice(1, -1);
      const total = (of: "pairs" | "share" | "sum") => middle.reduce((sum, said) => sum + said[of], 0);
      for (const { pairs, share, sum } of [
        ...table,
        { pairs: total("pairs"), share: total("share"), sum: total("sum") },
      ]) {
        if (pairs === 0) continue;
        const said = sum / pairs;
        // Within 0.05, and two standard errors of a share of so many pairs.
        const error = Math.sqrt((said * (1 - said)) / pairs);
        expect(Math.abs(share / pairs - said)).toBeLessThan(0.05 + 2 * error);
      }
    },
  );

  it("is next to certain for one body read twice, and for two figures with the same readings", () => {
    let sum = 0;
    let pairs = 0;
    for (const seed of seeds(71_000, 8)) {
      const { bodies, columns, sharing } = learned("half", seed);
      bodies.forEach((body, i) => {
        const j = bodies.indexOf(body, i + 1);
        if (j < 0) return;
        sum += certainty(columns, i, j, usualUncertainty, sharing).probability;
        pairs++;
      });
    }
    expect(pairs).toBeGreaterThan(100);
    expect(sum / pairs).toBeGreaterThan(0.95);
    for (const width of [8, 20, 40]) {
      const row = Array.from({ length: width }, (_, c) => 40 + 8 * c);
      const others = [1, 2, 3].map((k) => row.map((mm) => mm * (1 + 0.1 * k)));
      const columns = comparedOf([row, row, ...others], tolerance);
      const sharing = sharingOf({ figures: ["A", "B", "C", "D", "E"] }, columns, usualUncertainty);
      expect(certainty(columns, 0, 1, usualUncertainty, sharing).probability).toBeGreaterThan(0.99);
    }
  });

  it("learns from the chart whether bodies are used again", () => {
    const [half, seldom, never] = (["half", "seldom", "never"] as const).map((kind) =>
      seeds(72_000, 6).reduce((sum, seed) => sum + sameBody(learned(kind, seed).sharing), 0),
    );
    expect(half).toBeGreaterThan(seldom!);
    expect(seldom).toBeGreaterThan(never!);
  });

  it("weighs what may have happened by Bayes’ rule", () => {
    // Two measures, z² = 1 and 9; densities of normal curves of variance 1, 1 + 4 and 1 + 16 · 4, from their formula.
    const density = (square: number, variance: number) =>
      Math.exp(-square / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
    const sharing: Sharing = [
      { kind: "same body", spread: 0, weight: 0.5 },
      { kind: "another body", spread: 4, weight: 0.3 },
      { kind: "another in some measures", spread: 4, weight: 0.2 },
    ];
    const same = 0.5 * density(1, 1) * density(9, 1);
    const another = (q: number) => 0.9 * density(q, 5) + 0.1 * density(q, 65);
    const other = 0.3 * another(1) * another(9);
    const mixed = (q: number) => 0.9 * density(q, 1) + 0.1 * density(q, 5);
    const neither = 0.9 ** 2 * density(1, 1) * density(9, 1);
    const some = (0.2 * (mixed(1) * mixed(9) - neither)) / (1 - 0.9 ** 2);
    const { weights, isOther } = posteriorOf(sharing, { squares: [1, 9], free: [1, 1], shares: [1, 1] });
    [same, other, some].forEach((weight, k) => {
      expect(weights[k]).toBeCloseTo(weight / (same + other + some), 12);
    });
    expect(isOther(0, 1)).toBe(0);
    expect(isOther(1, 1)).toBeCloseTo((0.1 * density(9, 65)) / another(9), 12);
    expect(isOther(2, 1)).toBeCloseTo(
      (0.1 * density(9, 5)) / (0.9 * density(9, 1) + 0.1 * density(9, 5)),
      12,
    );
  });

  it("is the same for a pair and for a group of two", () => {
    const { columns, sharing, bodies } = learned("half", 73_000);
    for (let j = 1; j < bodies.length; j++) {
      const pair = certainty(columns, 0, j, usualUncertainty, sharing).probability;
      expect(groupCertainty(columns, [0, j], usualUncertainty, sharing)).toBeCloseTo(pair, 5);
    }
  });

  it("of a group is never more than of its least sure pair that stands farthest apart in a measure", () => {
    const { columns, sharing } = learned("half", 74_000);
    const members = [0, 1, 2, 3];
    const pairs = members.flatMap((i) =>
      members
        .filter((j) => j > i)
        .map((j) => certainty(columns, i, j, usualUncertainty, sharing).probability),
    );
    const group = groupCertainty(columns, members, usualUncertainty, sharing);
    expect(group).toBeLessThanOrEqual(Math.max(...pairs));
  });

  it("learns the same whatever the order of rows", () => {
    fc.assert(
      fc.property(anyShuffledChart, ({ chart, shuffled }) => {
        const of = (each: typeof chart) => sharingOf(each, percentColumns(each), usualUncertainty);
        expect(of(shuffled)).toEqual(of(chart));
      }),
      { numRuns: 40 },
    );
  });

  it("learns from a sample of a large chart how many pairs share", () => {
    const charts = seeds(75_000, 4).map((seed) => learned("half", seed));
    // Several charts of one width in one: bodies of different charts are not shared.
    const width = Math.min(...charts.map(({ columns }) => columns.length));
    const rows = charts.flatMap(({ chart, bodies }) =>
      bodies.map((_, i) => chart.measures.slice(0, width).map(({ mm }) => mm[i]!)),
    );
    const bodies = charts.flatMap((each) => each.bodies.map((body) => body.slice(0, width)));
    const columns = comparedOf(rows, tolerance);
    const figures = rows.map((_, i) => `Figure ${String(i)}`);
    const sharing = sharingOf({ figures }, columns, usualUncertainty);
    let said = 0;
    let share = 0;
    for (let i = 0; i < rows.length; i++) {
      for (let j = i + 1; j < rows.length; j++) {
        said += certainty(columns, i, j, usualUncertainty, sharing).probability;
        if (doShare(bodies[i]!, bodies[j]!)) share++;
      }
    }
    expect(rows.length).toBeGreaterThan(150);
    expect(Math.abs(said / share - 1)).toBeLessThan(0.2);
  });
});

describe("pairs on the fence", () => {
  it("are all that are in doubt, by what the chart teaches", () => {
    for (const kind of ["half", "never"] as const) {
      const { chart, columns, sharing } = learned(kind, 76_000);
      const doubtful = chart.figures.flatMap((_, i) =>
        chart.figures.slice(i + 1).flatMap((__, after) => {
          const { probability } = certainty(columns, i, i + 1 + after, usualUncertainty, sharing);
          return probability > surelyNot && probability < 1 - surelyNot ? [probability] : [];
        }),
      );
      const found = onTheFence(chart, columns, usualUncertainty, sharing).map(
        ({ probability }) => probability,
      );
      expect(found.sort()).toEqual(doubtful.sort());
    }
  });
});
