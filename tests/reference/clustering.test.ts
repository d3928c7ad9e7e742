import { describe, expect, it } from "vitest";
import { cutAt, cutInto } from "../../addin/similarity/cut.ts";
import type { LinkageMethod } from "../../addin/similarity/linkage.ts";
import { linkage } from "../../addin/similarity/linkage.ts";
import { silhouette } from "../../addin/similarity/silhouette.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { euclideanDistances } from "../similarity/euclideanDistances.ts";
import { body10 } from "./body10.ts";

// Every expected value below was computed with R 4.2.2 (packages stats and cluster) by the commands that stand beside it,
// where d is the data frame of the ten rows of body10.ts. The heights also came out of SciPy 1.10.1.

/** merge: items negative, earlier merges positive, as R prints `hclust(…)$merge`. */
interface Expected {
  readonly merge: readonly (readonly [number, number])[];
  readonly height: readonly number[];
}

describe("clustering of ten bodies by Euclidean distance, against hclust of R", () => {
  const distances = euclideanDistances(body10, 10);

  const expected: Record<LinkageMethod, Expected> = {
    // h <- hclust(dist(d), "complete"); h$merge; format(h$height, digits = 16)
    complete: {
      merge: [
        [-3, -6],
        [-2, -5],
        [-1, -9],
        [-8, -10],
        [1, 4],
        [-4, 2],
        [-7, 5],
        [3, 6],
        [7, 8],
      ],
      height: [
        6.42417309853962, 8.04549563420427, 9.40956959695819, 10.67239429556461, 10.88117640698837,
        11.15212984142491, 18.13532464556398, 22.62144999773445, 35.39095929753812,
      ],
    },
    // h <- hclust(dist(d), "average"); h$merge; format(h$height, digits = 16)
    average: {
      merge: [
        [-3, -6],
        [-2, -5],
        [-8, 1],
        [-1, -9],
        [-4, 2],
        [-10, 3],
        [5, 6],
        [-7, 7],
        [4, 8],
      ],
      height: [
        6.424173098539617, 8.045495634204272, 9.308727290962473, 9.409569596958193, 10.005511838782478,
        10.712484294005799, 14.63566423461597, 19.955656315918834, 22.307021125260576,
      ],
    },
    // h <- hclust(dist(d), "single"); h$merge; format(h$height, digits = 16)
    single: {
      merge: [
        [-3, -6],
        [-8, 1],
        [-2, -5],
        [-4, 3],
        [-1, -9],
        [2, 4],
        [-10, 6],
        [5, 7],
        [-7, 8],
      ],
      height: [
        6.424173098539617, 7.736278174936579, 8.045495634204272, 8.858893836140043, 9.409569596958193,
        9.715451610707548, 10.599056561788888, 11.467780953610857, 14.292305622257032,
      ],
    },
    // h <- hclust(dist(d), "ward.D2"); h$merge; format(h$height, digits = 16)
    // scipy.cluster.hierarchy.linkage(pdist(d), "ward") gives the same heights
    ward: {
      merge: [
        [-3, -6],
        [-2, -5],
        [-1, -9],
        [-8, 1],
        [-4, 2],
        [-10, 4],
        [-7, 6],
        [3, 5],
        [7, 8],
      ],
      height: [
        6.424173098539617, 8.045495634204272, 9.409569596958193, 10.250691033616555, 10.660988071781468,
        11.64338152485494, 19.345206124515709, 25.989408098941638, 37.463128539939106,
      ],
    },
  };

  for (const method of ["complete", "average", "single", "ward"] as const) {
    it(`gives the merges and heights of “${method}”`, () => {
      const merges = linkage(distances, method);
      expect(merges.map(({ left, right }) => [left, right])).toEqual(expected[method].merge);
      merges.forEach(({ height }, i) => expect(height).toBeCloseTo(expected[method].height[i]!, 9));
    });
  }

  // cutree(hclust(dist(d), method), k)
  const cuts: readonly (readonly [LinkageMethod, number, readonly number[]])[] = [
    ["complete", 3, [1, 2, 3, 2, 2, 3, 3, 3, 1, 3]],
    ["complete", 4, [1, 2, 3, 2, 2, 3, 4, 3, 1, 3]],
    ["average", 3, [1, 2, 2, 2, 2, 2, 3, 2, 1, 2]],
    ["average", 4, [1, 2, 3, 2, 2, 3, 4, 3, 1, 3]],
    ["single", 3, [1, 2, 2, 2, 2, 2, 3, 2, 1, 2]],
    ["single", 4, [1, 2, 2, 2, 2, 2, 3, 2, 1, 4]],
    ["ward", 3, [1, 2, 3, 2, 2, 3, 3, 3, 1, 3]],
    ["ward", 4, [1, 2, 3, 2, 2, 3, 4, 3, 1, 3]],
  ];
  it.each(cuts)("cuts “%s” into %i groups as cutree does", (method, k, groups) => {
    expect([...cutInto(linkage(distances, method), 10, k)]).toEqual(groups);
  });
});

describe("complete linkage of whole-number distances with many ties, against hclust of R", () => {
  it("joins equal distances in the same order", () => {
    // i <- rep(1:10, each = 10); j <- rep(1:10, 10); m <- matrix((7 * i * j + i + j) %% 5 + 1, 10, 10)
    // d <- as.dist(pmax(m, t(m)))
    const values = Float64Array.of(
      ...[3, 1, 4, 2, 5, 3, 1, 4, 2, 3, 3, 3, 3, 3, 3, 3, 3, 2, 4, 1, 3, 5, 2],
      ...[4, 5, 4, 3, 2, 1, 5, 2, 3, 4, 5, 1, 3, 1, 4, 2, 3, 3, 3, 2, 4, 5],
    );
    const merges = linkage({ size: 10, values }, "complete");
    // h <- hclust(d, "complete"); h$merge; h$height
    expect(merges.map(({ left, right }) => [left, right])).toEqual([
      [-1, -3],
      [-4, -9],
      [-5, -10],
      [-6, -8],
      [-2, 1],
      [-7, 5],
      [2, 6],
      [3, 4],
      [7, 8],
    ]);
    expect(merges.map(({ height }) => height)).toEqual([1, 1, 1, 1, 3, 3, 4, 4, 5]);
  });
});

describe("silhouettes of ten bodies, against cluster::silhouette of R", () => {
  const distances = euclideanDistances(body10, 10);
  const merges = linkage(distances, "complete");

  // for (k in 2:5) mean(silhouette(cutree(hclust(dist(d)), k), dist(d))[, 3])
  it.each([
    [2, 0.313024022911522],
    [3, 0.322931016388406],
    [4, 0.314173553028494],
    [5, 0.204708476118476],
  ])("has the mean width of %i groups", (k, mean) => {
    expect(silhouette(distances, cutInto(merges, 10, k)).mean).toBeCloseTo(mean, 9);
  });

  // format(silhouette(cutree(hclust(dist(d)), 3), dist(d))[, 3], digits = 15)
  it("has the width of each row", () => {
    const expected = [
      0.3701554832035421, 0.3680426132071713, -0.0275530032197458, 0.3030480617971003, 0.4444170336501455,
      0.3120987445009827, 0.3399487970109811, 0.3153090511482131, 0.5468112135673873, 0.2570321690182782,
    ];
    const { widths } = silhouette(distances, cutInto(merges, 10, 3));
    widths.forEach((width, i) => expect(width).toBeCloseTo(expected[i]!, 9));
  });
});

describe("ten bodies with a tolerance of 3 cm on every girth, against R", () => {
  const distances = toleranceDistances(body10, 10);

  // h <- hclust(dist(d / 3, "maximum"), method); h$merge; format(h$height, digits = 16)
  const expected: Record<"complete" | "average" | "single", readonly number[]> = {
    complete: [4 / 3, 4.7 / 3, 5.5 / 3, 6.4 / 3, 7.7 / 3, 3, 13.4 / 3, 5.8, 19 / 3],
    average: [
      1.333333333333332, 1.566666666666663, 1.833333333333332, 2.016666666666669, 2.033333333333335,
      2.344444444444445, 3.374999999999999, 3.822222222222223, 4.298666666666665,
    ],
    single: [
      1.333333333333332, 1.500000000000004, 1.566666666666663, 1.833333333333332, 1.900000000000002,
      1.900000000000002, 1.93333333333333, 2.500000000000004, 2.766666666666666,
    ],
  };
  for (const method of ["complete", "average", "single"] as const) {
    it(`gives the heights of “${method}”`, () => {
      linkage(distances, method).forEach(({ height }, i) =>
        expect(height).toBeCloseTo(expected[method][i]!, 9),
      );
    });
  }

  // cutree(hclust(dist(d / 3, "maximum")), h = 2)
  it("cuts at two tolerances as cutree does", () => {
    expect([...cutAt(linkage(distances, "complete"), 10, 2)]).toEqual([1, 2, 3, 4, 2, 3, 5, 6, 1, 7]);
  });
});
