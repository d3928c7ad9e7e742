import { describe, expect, it } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import {
  errorsOf,
  leastReadingErrorMm,
  repeatedReadings,
} from "../../addin/similarity/certainty/repeatedReadings.ts";
import { chartOf, comparedOf } from "./chartOf.ts";
import { seeded } from "./condensedOf.ts";
import { repeatedUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

/** Two readings of ten invented things. */
const first = [80, 120.5, 62, 95.5, 41, 110, 75.5, 88, 54.5, 101];
const second = [80.5, 121, 61.5, 96, 41, 109, 76, 88.5, 55, 100.5];
/** √(Σd² / 2N) of them: the formula of Ulijaszek & Kerr, British Journal of Nutrition 82 (1999). */
const published = 0.387298;

const names = ["Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel", "Larch", "Maple", "Oak", "Pine"];

function tails(readings: readonly number[], of: readonly string[] = names): Chart {
  return chartOf(
    ["Tail"],
    readings.map((mm, i) => [of[i] ?? "", [mm]] as const),
  );
}

describe("repeatedReadings", () => {
  it("has the technical error of two charts, figures matched by name in any case and order", () => {
    const again = tails([...second].reverse(), names.map((name) => ` ${name.toUpperCase()}`).reverse());
    const { errors, slips, tooFew, strangers } = repeatedReadings(tails(first), again);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatchObject({ key: "tail", figures: 10 });
    expect(errors[0]?.technicalErrorMm).toBeCloseTo(published, 6);
    expect([slips, tooFew, strangers]).toEqual([[], [], []]);
  });

  it("has the same from rows of one name within a chart", () => {
    const both = tails([...first, ...second], [...names, ...names.map((name) => name.toLowerCase())]);
    const { errors } = repeatedReadings(both);
    expect(errors[0]?.technicalErrorMm).toBeCloseTo(published, 6);
    expect(errors[0]?.figures).toBe(10);
  });

  it("pools all readings of a figure that was read three times", () => {
    // √(Σ(ΣM² − (ΣM)²/K) / (N (K − 1))): deviations of −1, 0 and 1 from each mean give √(5 · 2 / (5 · 2)).
    const three = [0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4].map((at, i) => 80 + 10 * at + (i % 3));
    const { errors } = repeatedReadings(
      tails(
        three,
        three.map((_, i) => names[Math.floor(i / 3)]!),
      ),
    );
    expect(errors[0]?.technicalErrorMm).toBeCloseTo(1, 12);
    expect(errors[0]?.figures).toBe(5);
  });

  it("compares columns in other units, under other headings", () => {
    const chart = readChart([["Figure", "Bust (mm)"], ...first.map((mm, i) => [names[i], mm])]);
    const again = readChart([["Name", "Chest girth (cm)"], ...second.map((mm, i) => [names[i], mm / 10])]);
    const { errors } = repeatedReadings(chart, again);
    expect(errors[0]?.column.heading).toBe("Bust");
    expect(errors[0]?.technicalErrorMm).toBeCloseTo(published, 6);
  });

  it("leaves slips out and tells them", () => {
    const chart = tails([...first, 80, 100], [...names, "Rowan", "Willow"]);
    const again = tails([...second, 180, 10], [...names, "Rowan", "Willow"]);
    const { errors, slips } = repeatedReadings(chart, again);
    expect(errors[0]?.technicalErrorMm).toBeCloseTo(published, 6);
    expect(slips.map(({ figure, column, mm }) => [figure, column.heading, mm])).toEqual([
      ["Rowan", "Tail", [80, 180]],
      ["Willow", "Tail", [100, 10]],
    ]);
  });

  it("does not take somebody who reads coarsely for somebody who slips", () => {
    const random = seeded(11);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const figures = Array.from({ length: 400 }, (_, i) => `Figure ${String(i)}`);
    const read = () =>
      tails(
        figures.map(() => 100 + 2 * normal()),
        figures,
      );
    const { errors, slips } = repeatedReadings(read(), read());
    // Four standard errors of a standard deviation from 400 pairs: 2 / √800 each.
    expect(Math.abs((errors[0]?.technicalErrorMm ?? 0) - 2)).toBeLessThan((4 * 2) / Math.sqrt(800));
    expect(slips.length).toBeLessThan(4);
  });

  it("keeps to the usual error where the second readings are of something else", () => {
    const inInches = tails(second.map((mm) => mm / 25.4));
    const { errors, slips, tooFew } = repeatedReadings(tails(first), inInches);
    expect(errors).toEqual([]);
    expect(slips).toHaveLength(10);
    expect(tooFew.map(({ column, figures }) => [column.heading, figures])).toEqual([["Tail", 0]]);
  });

  it("needs five figures, and tells measures with fewer and figures that the chart does not have", () => {
    const chart = chartOf(
      ["Tail", "Wing", "Crest"],
      Object.fromEntries(names.map((name) => [name, [60, 90, 30]])),
    );
    const rows = names.map((name, i) => [name, [61, i < 4 ? 91 : Number.NaN]] as const);
    const again = chartOf(["Tail", "Wing"], [...rows, ["Yew", [10, 10]]]);
    const found = repeatedReadings(chart, again);
    expect(found.errors.map(({ column }) => column.heading)).toEqual(["Tail"]);
    expect(found.tooFew.map(({ column, figures }) => [column.heading, figures])).toEqual([["Wing", 4]]);
    expect(found.strangers).toEqual(["Yew"]);
    const uncertainty = repeatedUncertainty(errorsOf(found));
    // Every pair differs by 1 mm, √(1 / 2), on ten figures; the usual 0.5 mm counts as much as five: √((5·0.25 + 10·0.5) / 15).
    const [tail, wing] = chart.measures.map((column) => ({ ...comparedOf([[0]])[0]!, column }));
    expect(found.errors[0]?.technicalErrorMm).toBeCloseTo(Math.SQRT1_2, 12);
    expect(uncertainty(tail!, 60)).toBeCloseTo(Math.sqrt(6.25 / 15), 12);
    expect(uncertainty(wing!, 90)).toBe(0.5);
  });

  it("finds nothing where nothing was read twice", () => {
    const nothing = { errors: [], tooFew: [], slips: [], strangers: [] };
    expect(repeatedReadings(tails(first))).toEqual(nothing);
    expect(repeatedReadings(tails(first), tails(first.map(() => Number.NaN)))).toEqual(nothing);
  });

  it("is never surer than the steps of the tape allow", () => {
    // Readings that repeat exactly. JCGM 100:2008, F.2.2.1: rounding to steps of δ has the standard uncertainty 0.29 δ.
    const whole = repeatedReadings(tails(first.map(Math.round)), tails(first.map(Math.round)));
    expect(whole.errors[0]?.technicalErrorMm).toBeCloseTo(0.29, 2);
    const halves = repeatedReadings(tails(first), tails(first));
    expect(halves.errors[0]?.technicalErrorMm).toBeCloseTo(0.29 * 0.5, 2);
  });
});

describe("leastReadingErrorMm", () => {
  it.each([
    ["whole millimetres", [80, 81], "mm", 1],
    ["half millimetres in cm", [8.05, 13.6, 13.65].map((cm) => cm * 10), "cm", 0.5],
    ["finer than a tape", [80.13, 81.4], "mm", 0.5],
    ["eighths of an inch", [3 + 1 / 8, 5.5].map((inches) => inches * 25.4), "in", 25.4 / 8],
    ["sixteenths of an inch", [3 + 1 / 16, 5.5].map((inches) => inches * 25.4), "in", 25.4 / 16],
    ["decimals of an inch", [3.3, 5.5].map((inches) => inches * 25.4), "in", 25.4 / 32],
  ] as const)("of %s", (_, mm, unit, step) => {
    // JCGM 100:2008, 4.3.7: an even distribution of half-width step / 2 has the variance (step / 2)² / 3.
    expect(leastReadingErrorMm(mm, unit)).toBeCloseTo(Math.sqrt((step / 2) ** 2 / 3), 12);
  });
});
