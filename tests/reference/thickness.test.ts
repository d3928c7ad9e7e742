import { describe, expect, it } from "vitest";
import { girthOverLayers, ownRoom } from "../../addin/fit/girthOverLayers.ts";
import { overFunction } from "../../functions/over.ts";

/** Geometry: a layer of thickness t round a circle adds 2πt to its girth, whatever the girth. */
describe("girth over cloth", () => {
  it.each([
    [0.2, 1.257],
    [0.5, 3.142],
    [1, 6.283],
    [2, 12.566],
  ])("%d mm of cloth add %d mm", (thickness, added) => {
    for (const girth of [26, 80, 650]) {
      expect(girthOverLayers(girth, thickness) - girth).toBeCloseTo(added, 3);
      expect(overFunction.compute([girth, thickness])).toBeCloseTo(girth + added, 3);
    }
  });

  it("0.5 mm is 3.9 % of a waist of 80 mm, and 0.5 % of one of 650 mm", () => {
    const share = (girth: number): number => (100 * (girthOverLayers(girth, 0.5) - girth)) / girth;
    expect(share(80)).toBeCloseTo(3.9, 1);
    expect(share(650)).toBeCloseTo(0.5, 1);
  });

  it("agrees with the circles themselves: girth of the radius and one layer", () => {
    const radius = 80 / (2 * Math.PI);
    expect(girthOverLayers(80, 0.5)).toBeCloseTo(2 * Math.PI * (radius + 0.5), 12);
  });
});

/** Geometry: a ring of cloth whose middle is 162 mm round, and its inner face half a thickness further in. */
it("felt of 2 mm that is 162 mm round takes 6.3 mm of the room inside", () => {
  const innerRadius = 162 / (2 * Math.PI) - 2 / 2;
  expect(162 - ownRoom(2)).toBeCloseTo(2 * Math.PI * innerRadius, 12);
  expect(ownRoom(2)).toBeCloseTo(6.283, 3);
});
