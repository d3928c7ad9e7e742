import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readReadings } from "../../addin/chart/readReadings.ts";
import {
  drawnToUsual,
  errorParts,
  feedOf,
  medianVariance,
  repeatabilityByPerson,
  settle,
  settledErrorMm,
} from "../../addin/checking/repeatability.ts";
import { readingErrorMm, usualReadingError } from "../../addin/measures/readingError.ts";
import { errorsOf, repeatedReadings } from "../../addin/similarity/certainty/repeatedReadings.ts";

/** Six invented figures, their busts read up to four times by two people. */
const names = ["Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel"];
const x = [134, 134.5, 133.5, 96, 95.5, 171.5, 172.5, 152, 152.5, 152, 151, 118, 118, 144.5, 145.5];
const of = [0, 0, 0, 1, 1, 2, 2, 3, 3, 3, 3, 4, 4, 5, 5];
const who = [..."AABAABBABABBBAB"];

const chart = readChart([["Figure", "Bust (mm)"], ...names.map((name) => [name, 150])]);
const table: Cells = [
  ["Figure", "Measure", "Reading (mm)", "By"],
  ...x.map((mm, i) => [names[of[i]!], "Bust", mm, who[i]]),
];
const { readings } = readReadings(table, chart);

describe("repeatability", () => {
  it("of a measure is the standard deviation within figures, as R has it", () => {
    // R 4.2.2: m <- anova(lm(x ~ factor(f))); sqrt(m["Residuals", "Mean Sq"]) 0.559016994375 with 9 degrees of freedom;
    // mean(x) 138.066666667; 100 * sd / mean(x) 0.404889179895. The same as TEM for K readings, Ulijaszek & Kerr 1999.
    const [bust] = repeatedReadings(chart, undefined, readings).errors;
    expect(bust?.technicalErrorMm).toBeCloseTo(0.559016994375, 9);
    expect(bust?.relativePercent).toBeCloseTo(0.404889179895, 9);
    expect(bust?.figures).toBe(6);
    // R: sqrt((5 * 0.5^2 + 9 * 0.3125) / 14).
    expect(bust?.errorMm).toBeCloseTo(0.538682254607, 9);
  });

  it("of a person is that within the figures that they read themselves, as R has it", () => {
    // R 4.2.2: for each person the rows of figures that they read twice or more; r <- residuals(lm(x ~ f)); sqrt(sum(r^2) / df).
    const people = repeatabilityByPerson(readings);
    expect(people.map(({ by }) => by)).toEqual(["A", "B"]);
    expect(people[0]?.tem).toBeCloseTo(0.288675134595, 9);
    expect(people[0]?.relativePercent).toBeCloseTo(0.226708220886, 9);
    expect(people[1]?.tem).toBeCloseTo(0.735980072194, 9);
    expect(people[1]?.relativePercent).toBeCloseTo(0.499816687398, 9);
  });

  it("of a person leaves slips out by the error that the chart has shown of the measure", () => {
    const twice = readReadings(
      [
        ["Figure", "Measure", "Reading (mm)", "By"],
        ["Ash", "Bust", 134, "A"],
        ["Ash", "Bust", 138, "A"],
      ],
      chart,
    ).readings;
    // Four millimetres are a slip by half a millimetre, and none by a whole one: |d|/√2 then.
    expect(repeatabilityByPerson(twice)).toEqual([]);
    const own = { ...usualReadingError, ofMeasures: { bustGirth: 1 } };
    expect(repeatabilityByPerson(twice, own)[0]?.tem).toBeCloseTo(4 / Math.SQRT2, 12);
  });

  it("counts the readings in the table in the place of their mean in the chart, and the chart beside second readings elsewhere", () => {
    // The chart says 150 of all: had it counted, nothing would be left but slips.
    expect(repeatedReadings(chart, undefined, readings).slips).toEqual([]);
    const again = readChart([["Figure", "Bust (mm)"], ...names.map((name) => [name, 151])]);
    const both = repeatedReadings(chart, again, readings.slice(0, 1)).errors[0];
    // Five pairs of 150 and 151, and 134 beside 151, which is a slip.
    expect(both?.figures).toBe(5);
    expect(both?.technicalErrorMm).toBeCloseTo(Math.SQRT1_2, 9);
  });
});

describe("the error that counts", () => {
  it("is the usual one without figures of one’s own, and one’s own with many", () => {
    expect(drawnToUsual(2, 0, 0.5)).toBe(0.5);
    expect(drawnToUsual(2, 5, 0.5)).toBeCloseTo(Math.sqrt((0.25 + 4) / 2), 12);
    expect(drawnToUsual(2, 100_000, 0.5)).toBeCloseTo(2, 3);
  });

  it("lies between both", () => {
    const length = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(length, length, fc.integer({ min: 0, max: 500 }), (own, usual, freedom) => {
        const counts = drawnToUsual(own, freedom, usual);
        expect(counts).toBeGreaterThanOrEqual(Math.min(own, usual) * (1 - 1e-12));
        expect(counts).toBeLessThanOrEqual(Math.max(own, usual) * (1 + 1e-12));
      }),
    );
  });
});

describe("what stands in the chart", () => {
  it("is the mean of two readings, and the median from three on", () => {
    expect(settle([134], 0.5)).toEqual({ kind: "one", mm: 134 });
    expect(settle([134, 135], 0.5)).toEqual({ kind: "mean", mm: 134.5 });
    expect(settle([134, 135, 234], 0.5)).toEqual({ kind: "median", mm: 135 });
    expect(settle([134, 136, 135, 234], 0.5)).toEqual({ kind: "median", mm: 135.5 });
  });

  it("is neither of two that cannot both be right", () => {
    expect(settle([134, 136.5], 0.5)).toEqual({ kind: "mean", mm: 135.25 });
    expect(settle([134, 136.6], 0.5)).toEqual({ kind: "unlike" });
  });

  it("is changed only where the readings say something else", () => {
    const small = readChart([
      ["Figure", "Bust (mm)", "Waist (mm)"],
      ["Ash", 134.5, 100],
      ["Birch", "~ 96", undefined],
    ]);
    const taken = readReadings(
      [
        ["Figure", "Measure", "Reading (mm)"],
        ["Birch", "Waist", 71],
        ["Ash", "Bust", 134],
        ["Ash", "Waist", 101],
        ["Birch", "Bust", 96],
        ["Ash", "Bust", 135],
        ["Ash", "Waist", 131],
      ],
      small,
    );
    const { changes, unlike } = feedOf(small, taken.readings);
    // An estimate of the same length becomes a reading.
    expect(
      changes.map(({ figure, column, beforeMm, mm, how }) => [figure, column.heading, beforeMm, mm, how]),
    ).toEqual([
      [1, "Bust", 96, 96, "one"],
      [1, "Waist", Number.NaN, 71, "one"],
    ]);
    expect(unlike.map(({ figure, column }) => [figure, column.heading])).toEqual([[0, "Waist"]]);
  });
});

describe("what the error is made of", () => {
  // y <- c(…); f and w as the lists below; m <- anova(lm(y ~ f + f:w)); r <- m["Residuals", "Mean Sq"]; n <- table(f, w);
  // k <- sum(rowSums(n) - rowSums(n^2) / rowSums(n)); (m["f:w", "Sum Sq"] - m["f:w", "Df"] * r) / k
  const y = [109.3, 109.1, 111.7, 111.8, 109.3, 109, 120.4, 120, 122.3, 122.3, 119.1, 119.1, 129.7, 130, 130.3, 129.9, 130.3, 130.1, 139.7, 139.3, 140.5, 141.2, 139.8, 138.9, 148.9, 149.7, 149.7, 150.1, 148.6, 148.7, 159.6, 159.8, 160, 159.5, 158.2, 157.6]; // prettier-ignore
  /** Six figures, each read twice by three people, without the readings that are left out (from 1). */
  const things = (left: readonly number[]) =>
    Array.from({ length: 6 }, (_, figure) =>
      y.flatMap((mm, i) =>
        Math.floor(i / 6) === figure && !left.includes(i + 1)
          ? [{ mm, by: "ABC".charAt(Math.floor(i / 2) % 3) }]
          : [],
      ),
    );

  it("is what R’s table of squares says, with as many readings of each and with unlike numbers of them", () => {
    const like = errorParts(things([]));
    expect(like.repeat).toBeCloseTo(0.0975, 9);
    expect(like.hands).toBeCloseTo(1.129722222222, 9);
    const unlike = errorParts(things([2, 5, 6, 9, 16, 17, 18, 22, 27, 28, 29, 30, 35]));
    expect(unlike.repeat).toBeCloseTo(0.12, 9);
    expect(unlike.hands).toBeCloseTo(1.1875, 9);
  });

  it("is nothing between hands where one person took all, and all of it where nobody read twice", () => {
    const alone = things([]).map((thing) => thing.map(({ mm }) => ({ mm, by: "" })));
    expect(errorParts(alone).hands).toBe(0);
    const once = things([]).map((thing) => thing.filter((_, i) => i % 2 === 0));
    expect(errorParts(once).repeat).toBe(0);
    expect(errorParts(once).hands).toBeGreaterThan(0.5);
  });
});

describe("the error of a mean", () => {
  /** Normal numbers from a seed: Marsaglia’s polar method over a linear congruence (Numerical Recipes). */
  const normals = (seed: number) => {
    let state = seed;
    const even = () => (state = (1664525 * state + 1013904223) % 4294967296) / 4294967296;
    return (): number => {
      for (;;) {
        const [u, v] = [2 * even() - 1, 2 * even() - 1];
        const s = u * u + v * v;
        if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
      }
    };
  };
  const spreadOf = (values: readonly number[]) =>
    Math.sqrt(values.reduce((sum, each) => sum + each ** 2, 0) / values.length);
  const trials = 40_000;
  /** Four standard errors of a standard deviation from so many normal values, in its share: 4/√(2·trials). */
  const off = 4 / Math.sqrt(2 * trials);

  it("of k readings by one person is √(r²/k + h²): what sits in the hand does not average out (GUM 4.2.3)", () => {
    const parts = { repeat: 0.16, hands: 0.09 };
    const by = (...hands: readonly string[]) => hands.map((hand) => ({ mm: 100, by: hand }));
    expect(settledErrorMm(by("A"), 0.5, parts)).toBeCloseTo(0.5, 12);
    expect(settledErrorMm(by("A", "A"), 0.5, parts)).toBeCloseTo(Math.sqrt(0.08 + 0.09), 12);
    expect(settledErrorMm(by("A", "B"), 0.5, parts)).toBeCloseTo(Math.sqrt(0.08 + 0.045), 12);
    // What no repeat shows, such as the rounding of the tape, stays as well.
    expect(settledErrorMm(by("A", "B"), 0.6, parts)).toBeCloseTo(Math.sqrt(0.08 + 0.045 + 0.11), 12);
    // Nor is it ever more than that of one.
    expect(settledErrorMm(by("A", "A"), 0.3, parts)).toBeCloseTo(Math.sqrt(0.09 / 2), 12);
  });

  it.each([
    ["A", "A"],
    ["A", "B"],
    ["A", "A", "A"],
    ["A", "A", "B", "B"],
    ["A", "A", "B", "B", "C", "C"],
  ])("is how far what stands in the chart strays in a simulation: %s %s %s", (...hands) => {
    const next = normals(hands.length * 7919);
    const parts = { repeat: 0.16, hands: 0.09 };
    const strays = Array.from({ length: trials }, () => {
      const ofHand = new Map([...new Set(hands)].map((hand) => [hand, 0.3 * next()]));
      const settled = settle(
        hands.map((hand) => ofHand.get(hand)! + 0.4 * next()),
        10,
      );
      return settled.kind === "unlike" ? Number.NaN : settled.mm;
    });
    const said = settledErrorMm(
      hands.map((by) => ({ mm: 0, by })),
      0.5,
      parts,
    );
    // A median over unlike hands is not quite that of one normal distribution: a twentieth more is allowed there.
    const isMedianOverHands = hands.length > 2 && new Set(hands).size > 1;
    expect(Math.abs(spreadOf(strays) / said - 1)).toBeLessThan(off + (isMedianOverHands ? 0.05 : 0));
  });

  it.each([3, 4, 5, 6, 7, 8, 9, 10])(
    "of a median of %i is a little more than that of a mean, as simulated",
    (k) => {
      const next = normals(k);
      const strays = Array.from({ length: trials }, () => {
        const settled = settle(Array.from({ length: k }, next), 1);
        return settled.kind === "unlike" ? Number.NaN : settled.mm;
      });
      expect(Math.abs(spreadOf(strays) / Math.sqrt(medianVariance(k)) - 1)).toBeLessThan(off);
    },
  );

  it("reaches the chart only where the chart holds the mean", () => {
    const settledChart = (bust: (figure: number) => number) =>
      readChart([["Figure", "Bust (mm)"], ...names.map((name, figure) => [name, bust(figure)])]);
    const meanOf = (figure: number) => {
      const own = x.filter((_, i) => of[i] === figure);
      const settled = settle(own, 1);
      return settled.kind === "unlike" ? Number.NaN : settled.mm;
    };
    const errorsIn = (bust: (figure: number) => number) => {
      const held = settledChart(bust);
      return errorsOf(repeatedReadings(held, undefined, readReadings(table, held).readings));
    };
    const held = errorsIn(meanOf);
    const { ofMeasures, ofReadings } = held;
    const places = Object.keys(ofReadings?.bustGirth ?? {});
    expect(places).toEqual(["0", "1", "2", "3", "4", "5"]);
    for (const place of places)
      expect(ofReadings!.bustGirth![Number(place)]).toBeLessThan(ofMeasures!.bustGirth!);
    // Four readings of Elm tell more than two of Birch.
    expect(ofReadings!.bustGirth![3]).toBeLessThan(ofReadings!.bustGirth![1]!);
    expect(readingErrorMm(held, 150, "bustGirth", 3)).toBe(ofReadings!.bustGirth![3]);
    expect(readingErrorMm(held, 150, "bustGirth")).toBe(ofMeasures!.bustGirth);
    const typed = errorsIn((figure) => (figure === 3 ? 150 : meanOf(figure)));
    expect(readingErrorMm(typed, 150, "bustGirth", 3)).toBe(typed.ofMeasures!.bustGirth);
  });
});
