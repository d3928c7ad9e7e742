import { expect, it } from "vitest";
import { likeBuild } from "../../addin/checking/likeBuild.ts";
import { seeded } from "../similarity/condensedOf.ts";

const fewest = 4;

/** Residuals of figures that come in pairs, the two of each pair alike to within 0.005; `missing` is the share of gaps. */
function pairs(count: number, missing: number): number[][] {
  const random = seeded(5);
  const width = 12;
  const bodies = Array.from({ length: count / 2 }, () =>
    Array.from({ length: width }, () => 0.3 * (random() - 0.5)),
  );
  return Array.from({ length: count }, (_, i) =>
    bodies[i >> 1]!.map((value) => (random() < missing ? Number.NaN : value + 0.005 * (random() - 0.5))),
  );
}

/** The mean of differences, none counted beyond 0.5, over the measures known of both but `column`. */
function meanDifference(a: readonly number[], b: readonly number[], column: number): number {
  const differences = a
    .map((value, j) => (j === column ? Number.NaN : Math.min(0.5, Math.abs(value - b[j]!))))
    .filter((difference) => !Number.isNaN(difference));
  return differences.length < fewest
    ? Number.POSITIVE_INFINITY
    : differences.reduce((sum, one) => sum + one, 0) / differences.length;
}

it("finds the three figures of least mean difference, as written out here", () => {
  const residuals = pairs(60, 0.1);
  const alike = likeBuild(residuals, fewest);
  for (const figure of residuals.keys()) {
    const column = figure % 12;
    const expected = [...residuals.keys()]
      .filter((mate) => mate !== figure && !Number.isNaN(residuals[mate]![column]!))
      .map((mate) => ({ mate, apart: meanDifference(residuals[figure]!, residuals[mate]!, column) }))
      .sort((a, b) => a.apart - b.apart)
      .slice(0, 3);
    expect(alike.mates(figure, column)).toEqual(expected.map(({ mate }) => mate));
  }
});

it("finds the other figure of a pair in a chart that is too large to look through", () => {
  const residuals = pairs(3000, 0);
  const alike = likeBuild(residuals, fewest);
  const found = [...residuals.keys()].filter((figure) => alike.mates(figure)[0] === (figure ^ 1));
  expect(found.length).toBeGreaterThan(0.99 * residuals.length);
});
