import { sampleStandardDeviation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { copheneticCorrelation } from "../../addin/similarity/cophenetic.ts";
import type { Condensed } from "../../addin/similarity/matrix.ts";
import { createCondensed, pairIndex, toleranceDistances } from "../../addin/similarity/matrix.ts";
import { cutInto } from "../../addin/similarity/cut.ts";
import { euclideanDistances } from "../similarity/euclideanDistances.ts";
import { figureMap } from "../../addin/similarity/map/figureMap.ts";
import { groupSilhouette, silhouette } from "../../addin/similarity/silhouette.ts";
import type { LinkageMethod } from "../../addin/similarity/linkage.ts";
import { linkage } from "../../addin/similarity/linkage.ts";
import { chartOf, comparedOf } from "../similarity/chartOf.ts";
import type { Penguin } from "./penguins.ts";
import { penguins } from "./penguins.ts";

// Every expected value below was computed with R 4.2.2 (packages stats and cluster 2.1.4) by the commands that stand beside
// it. The table was given to R as p <- read.csv("penguins.csv", na.strings = c("", ".")), with the columns a, b, c, m, sex
// (beak length, beak depth, flipper length, body mass, sex) written from the same file as here by
//   node -e 'const k = ["Beak Length (mm)", "Beak Depth (mm)", "Flipper Length (mm)", "Body Mass (g)", "Sex"];
//     const t = JSON.parse(fs.readFileSync("node_modules/vega-datasets/data/penguins.json", "utf8"));
//     console.log(["a,b,c,m,sex", ...t.map((r) => k.map((c) => r[c] ?? "").join(","))].join("\n"))' > penguins.csv
// Then x <- na.omit(p[, 1:4]); d <- dist(scale(x)).

const all = penguins();
const complete = all.filter(({ measures }) => measures.every((value) => !Number.isNaN(value)));
const deviations = [0, 1, 2, 3].map((c) =>
  sampleStandardDeviation(complete.map(({ measures }) => measures[c]!)),
);
const scaled = (birds: readonly Penguin[]) =>
  birds.map(({ measures }) => measures.map((value, c) => value / deviations[c]!));

/** The sizes of groups numbered by first appearance, as table(cutree(…)) gives them. */
function sizesOf(groups: Int32Array): readonly number[] {
  return Array.from(
    { length: Math.max(...groups) },
    (_, g) => groups.filter((group) => group === g + 1).length,
  );
}

interface Expected {
  readonly sum: number;
  readonly early: readonly number[];
  readonly last: readonly number[];
  readonly cophenetic: number;
  readonly cuts: readonly (readonly [sizes: readonly number[], meanSilhouette: number])[];
}

it("has 344 penguins, 342 of them measured", () => {
  expect(all).toHaveLength(344);
  expect(complete).toHaveLength(342);
});

describe("clustering of the penguins that were measured, against hclust, cutree, silhouette and cophenetic of R", () => {
  const distances = euclideanDistances(comparedOf(scaled(complete)), complete.length);

  // sum(d); max(d)
  it("has the distances of dist", () => {
    const sum = distances.values.reduce((total, distance) => total + distance, 0);
    expect(sum).toBeCloseTo(149067.672581548, 6);
    expect(Math.max(...distances.values)).toBeCloseTo(7.27125003203728, 9);
  });

  // for (m in c("complete", "average", "single", "ward.D2")) { h <- hclust(d, m); print(sum(h$height));
  //   print(h$height[c(1, 100, 200, 300)]); print(tail(h$height, 4)); print(cor(d, cophenetic(h)));
  //   for (k in 2:6) print(c(table(cutree(h, k)), mean(silhouette(cutree(h, k), d)[, 3]))) }
  const expected: Record<LinkageMethod, Expected> = {
    complete: {
      sum: 247.081013536737,
      early: [0.1088315578775, 0.3456129501017, 0.5775403278142, 1.2765536664205],
      last: [4.23693958475, 4.656097431452, 5.310544216393, 7.271250032037],
      cophenetic: 0.8281833427935,
      cuts: [
        [[219, 123], 0.5315403219473],
        [[165, 54, 123], 0.4515539456494],
        [[165, 54, 52, 71], 0.3941674811448],
        [[96, 69, 54, 52, 71], 0.3486684178333],
        [[96, 69, 42, 12, 52, 71], 0.3266145011368],
      ],
    },
    average: {
      sum: 186.488933647038,
      early: [0.1088315578775, 0.3296945571269, 0.5086591641421, 0.9151491547992],
      last: [2.22372437553, 2.350662755695, 2.360107716397, 3.56335716156],
      cophenetic: 0.8447094313816,
      cuts: [
        [[219, 123], 0.5315403219473],
        [[219, 119, 4], 0.441616990646],
        [[154, 65, 119, 4], 0.3858558505512],
        [[154, 64, 1, 119, 4], 0.368137006716],
        [[100, 54, 64, 1, 119, 4], 0.3457951047336],
      ],
    },
    single: {
      sum: 126.173217252388,
      early: [0.1088315578775, 0.287291765089, 0.3712387434742, 0.5246389559944],
      last: [0.8912813818101, 0.9095654452975, 1.4456569637799, 1.4567370589759],
      cophenetic: 0.8131742497992,
      cuts: [
        [[341, 1], 0.2527460547466],
        [[218, 1, 123], 0.4694752498344],
        [[217, 1, 1, 123], 0.315037479849],
        [[217, 1, 1, 122, 1], 0.2614688474218],
        [[216, 1, 1, 1, 122, 1], 0.1399483662863],
      ],
    },
    ward: {
      sum: 352.215333289675,
      early: [0.1088315578775, 0.3491427904334, 0.5985610492189, 1.5647011343625],
      last: [12.22666568758, 12.33254250441, 18.56540089088, 39.99866174118],
      cophenetic: 0.8346438067195,
      cuts: [
        [[219, 123], 0.5315403219473],
        [[162, 57, 123], 0.4540949927733],
        [[105, 57, 57, 123], 0.4175954387286],
        [[105, 57, 57, 52, 71], 0.3631606043946],
        [[105, 57, 57, 52, 32, 39], 0.3346306699762],
      ],
    },
  };

  describe.each(["complete", "average", "single", "ward"] as const)("%s", (method) => {
    const merges = linkage(distances, method);
    const heights = merges.map(({ height }) => height);
    const { sum, early, last, cophenetic, cuts } = expected[method];

    it("has the heights of hclust", () => {
      expect(heights.reduce((total, height) => total + height, 0)).toBeCloseTo(sum, 8);
      expect([0, 99, 199, 299].map((at) => heights[at]!.toFixed(9))).toEqual(
        early.map((each) => each.toFixed(9)),
      );
      expect(heights.slice(-4).map((each) => each.toFixed(9))).toEqual(last.map((each) => each.toFixed(9)));
    });

    it("has the cophenetic correlation", () => {
      expect(copheneticCorrelation(distances, merges)).toBeCloseTo(cophenetic, 11);
    });

    it("has the groups of cutree and their mean silhouettes", () => {
      cuts.forEach(([sizes, mean], at) => {
        const groups = cutInto(merges, complete.length, at + 2);
        expect(sizesOf(groups)).toEqual(sizes);
        expect(silhouette(distances, groups).mean).toBeCloseTo(mean, 11);
      });
    });
  });

  // silhouette(cutree(hclust(d), 3), d)[c(1, 100, 200, 300, 342), 3]
  it("has the silhouettes of single birds", () => {
    const { widths } = silhouette(distances, cutInto(linkage(distances, "complete"), complete.length, 3));
    const expectedWidths = [
      0.5017682481233, 0.5572463479064, 0.4502487829381, 0.5517372236696, 0.5302850931093,
    ];
    [0, 99, 199, 299, 341].forEach((at, i) => expect(widths[at]).toBeCloseTo(expectedWidths[i]!, 11));
  });
});

describe("all penguins with their missing values, by Gower’s distance, against daisy of R", () => {
  // q <- p[!is.na(p$a), ]; q$sex <- factor(q$sex); g <- daisy(q, metric = "gower"): a pair without a known sex is
  // compared by the four measures alone. The two birds without measures stay in here, and are never joined.
  const distances = gower(all);
  const known = all.flatMap(({ measures }, i) => (Number.isNaN(measures[0]!) ? [] : [i]));

  // as.matrix(g)[cbind(c(1, 1, 3, 4, 8), c(2, 4, 8, 300, 9))]; sum(g)
  it("has the distances of daisy", () => {
    const at = (i: number, j: number) =>
      distances.values[pairIndex(all.length, known[i - 1]!, known[j - 1]!)];
    const pairs = [
      [1, 2],
      [1, 4],
      [3, 8],
      [4, 300],
      [8, 9],
    ] as const;
    const expected = [
      0.25358840218162, 0.28908489250862, 0.08343940311101, 0.33415208990633, 0.20084949066941,
    ];
    pairs.forEach(([i, j], each) => expect(at(i, j)).toBeCloseTo(expected[each]!, 12));
    const sum = distances.values.reduce((total, each) => total + (Number.isNaN(each) ? 0 : each), 0);
    expect(sum).toBeCloseTo(17630.0531304449, 6);
  });

  // for (m in c("complete", "average", "single")) { h <- hclust(g, m); print(sum(h$height)); print(tail(h$height, 4));
  //   print(cor(g, cophenetic(h))); for (k in 2:5) print(c(table(cutree(h, k)), mean(silhouette(cutree(h, k), g)[, 3]))) }
  const expected: Record<Exclude<LinkageMethod, "ward">, Omit<Expected, "early">> = {
    complete: {
      sum: 20.924757701103,
      last: [0.4037071196224, 0.5488491207474, 0.5927234573336, 0.7654270305965],
      cophenetic: 0.7248334273219,
      cuts: [
        [[185, 157], 0.3749128411617],
        [[185, 96, 61], 0.3923264193975],
        [[74, 111, 96, 61], 0.5352171468781],
        [[74, 111, 34, 61, 62], 0.5776489105205],
      ],
    },
    average: {
      sum: 15.1268560936587,
      last: [0.1975479489454, 0.2852363784308, 0.3076314804928, 0.4108315646243],
      cophenetic: 0.8426119288984,
      cuts: [
        [[171, 171], 0.5248758690777],
        [[109, 171, 62], 0.5404703330314],
        [[109, 110, 61, 62], 0.6376604670885],
        [[109, 109, 1, 61, 62], 0.5819018728105],
      ],
    },
    single: {
      sum: 9.60411782779368,
      last: [0.05895282119011, 0.06524197789028, 0.10546408393866, 0.11752541149999],
      cophenetic: 0.606428883379,
      cuts: [
        [[219, 123], 0.432504100619],
        [[218, 1, 123], 0.2342286837673],
        [[217, 1, 1, 123], 0.1022749062266],
        [[216, 1, 1, 1, 123], 0.05944238541309],
      ],
    },
  };

  it.each(["complete", "average", "single"] as const)(
    "has the merges, cuts and silhouettes of “%s”",
    (method) => {
      const merges = linkage(distances, method);
      const heights = merges.map(({ height }) => height);
      const { sum, last, cophenetic, cuts } = expected[method];
      expect(merges).toHaveLength(known.length - 1);
      expect(heights.reduce((total, height) => total + height, 0)).toBeCloseTo(sum, 9);
      expect(heights.slice(-4).map((each) => each.toFixed(10))).toEqual(last.map((each) => each.toFixed(10)));
      expect(copheneticCorrelation(distances, merges)).toBeCloseTo(cophenetic, 10);
      cuts.forEach(([sizes, mean], at) => {
        // Two groups more: the birds that nothing is known of.
        const groups = cutInto(merges, all.length, at + 4);
        const widths = silhouette(distances, groups).widths.filter((_, i) => known.includes(i));
        expect(sizesOf(groups).filter((_, g) => known.some((i) => groups[i] === g + 1))).toEqual(sizes);
        expect(widths.reduce((total, width) => total + width, 0) / widths.length).toBeCloseTo(mean, 10);
      });
    },
  );
});

describe("penguins in tolerances of 2 mm, 1 mm, 8 mm and 300 g, against R", () => {
  const chart = chartOf(
    ["Beak length", "Beak depth", "Flipper", "Mass"],
    all.map(({ measures }, i) => [`Bird ${String(i + 1)}`, measures] as const),
  );
  const columns = chart.measures.map((column, c) => ({
    column,
    tolerance: { floorMm: [2, 1, 8, 300][c]!, percent: 0 },
    required: false,
  }));

  // t <- dist(sweep(as.matrix(x), 2, c(2, 1, 8, 300), "/"), "maximum"); sum(t); sum(t <= 1 + 1e-9); max(t)
  it("has the greatest differences, and the pairs within tolerance", () => {
    const { values } = toleranceDistances(columns, all.length);
    const given = values.filter((distance) => !Number.isNaN(distance));
    expect(given).toHaveLength((342 * 341) / 2);
    expect(given.reduce((total, distance) => total + distance, 0)).toBeCloseTo(259102.783333333, 5);
    expect(given.filter((distance) => distance <= 1)).toHaveLength(1752);
    expect(Math.max(...given)).toBeCloseTo(13.75, 9);
  });
});

describe("the map of the penguins in standard deviations, against prcomp of R", () => {
  const chart = chartOf(
    ["Beak length", "Beak depth", "Flipper", "Mass"],
    all.map(({ measures }, i) => [`Bird ${String(i + 1)}`, measures] as const),
  );
  const columns = chart.measures.map((column, c) => ({
    column,
    tolerance: { floorMm: deviations[c]!, percent: 0 },
    required: false,
  }));
  const map = figureMap(chart, columns);

  it("leaves out the two birds without measures", () => {
    expect(map.leftOut).toEqual(["Bird 4", "Bird 340"]);
    expect(map.points).toHaveLength(342);
  });

  // pc <- prcomp(x, scale. = TRUE); pc$sdev^2 / sum(pc$sdev^2); pc$rotation[, 1:2]
  // The sign of a component is free; ours of the second is the other one.
  it("has the shares and weights of the components", () => {
    expect(map.axes[0].share).toBeCloseTo(0.68843878097329, 11);
    expect(map.axes[1].share).toBeCloseTo(0.19312918846397, 11);
    const weights = (axis: 0 | 1) =>
      new Map(map.axes[axis].measures.map(({ column, weight }) => [column.heading, weight]));
    const names = ["Beak length", "Beak depth", "Flipper", "Mass"];
    const first = [0.455250328898654, -0.400334680655239, 0.576013323504266, 0.548350191618371];
    const second = [0.597031143453452, 0.797766571801656, 0.0022822009488116, 0.0843629197060328];
    names.forEach((name, c) => {
      expect(weights(0).get(name)).toBeCloseTo(first[c]!, 10);
      expect(weights(1).get(name)).toBeCloseTo(second[c]!, 10);
    });
  });

  // pc$x[c("1", "101", "201", "301", "344"), 1:2]
  it("has the birds where the components put them", () => {
    const expected = [
      [1, -1.84074782440421, 0.047632426112203],
      [101, -1.586949226642835, -0.724746274886901],
      [201, -0.902871307327449, 1.352006191179868],
      [301, 1.712698030305176, -0.458436192585737],
      [344, 2.025933527324963, 0.35709686065793],
    ] as const;
    for (const [row, x, y] of expected) {
      const point = map.points.find(({ place }) => place === row - 1);
      expect(point?.x).toBeCloseTo(x, 9);
      expect(point?.y).toBeCloseTo(y, 9);
    }
  });
});

describe("groupSilhouette of the penguins", () => {
  it("is the silhouette over the known distances, bird by bird", () => {
    const chart = chartOf(
      ["Beak length", "Flipper"],
      all.map(({ measures }, i) => [`Bird ${String(i + 1)}`, [measures[0]!, measures[2]!]] as const),
    );
    const columns = chart.measures.map((column) => ({
      column,
      tolerance: { floorMm: 1, percent: 0 },
      required: false,
    }));
    const groups = Int32Array.from(all, (_, i) => (i < 151 ? 1 : i < 219 ? 2 : 3));
    // s <- silhouette(c(rep(1, 150), rep(2, 68), rep(3, 124)), dist(x[, c(1, 3)], "maximum")); mean(s[, 3]); s[c(1, 342), 3]
    const { widths, mean } = groupSilhouette(chart, columns, groups);
    expect(mean).toBeCloseTo(0.408862716930507, 10);
    expect(widths[0]).toBeCloseTo(0.385093151923751, 10);
    expect(widths[343]).toBeCloseTo(0.584155762587669, 10);
    expect([widths[3], widths[339]]).toEqual([Number.NaN, Number.NaN]);
  });
});

/**
 * J. C. Gower, A general coefficient of similarity, Biometrics 27 (1971): the mean over what both have of |a − b| / range,
 * and of 0 or 1 for the sex. NaN where nothing is known of both.
 */
function gower(birds: readonly Penguin[]): Condensed {
  const ranges = [0, 1, 2, 3].map((c) => {
    const values = birds.map(({ measures }) => measures[c]!).filter((value) => !Number.isNaN(value));
    return Math.max(...values) - Math.min(...values);
  });
  const distances = createCondensed(birds.length);
  let at = 0;
  birds.forEach((a, i) => {
    for (const b of birds.slice(i + 1)) {
      const parts = ranges.map((range, c) => Math.abs(a.measures[c]! - b.measures[c]!) / range);
      if (a.sex && b.sex) parts.push(a.sex === b.sex ? 0 : 1);
      const known = parts.filter((part) => !Number.isNaN(part));
      distances.values[at++] = known.reduce((sum, part) => sum + part, 0) / known.length;
    }
  });
  return distances;
}
