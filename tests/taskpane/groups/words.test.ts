import { describe, expect, test } from "vitest";
import { houseModels } from "../../../taskpane/groups/houseModels.ts";
import { outlinePath } from "../../../addin/similarity/outline/outlinePath.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import {
  chanceWords,
  differMostWords,
  fewComparedWords,
  shownTimes,
  tolerancesWords,
} from "../../../taskpane/groups/words.ts";
import { grouped } from "./grouped.ts";

describe("probabilities in words", () => {
  test.each([
    [0.62, "about 6 in 10"],
    [0.05, "about 1 in 10"],
    [0.949, "about 9 in 10"],
    [0.97, "very likely, more than 95 in 100"],
    [0.999, "as good as certain"],
    [0.03, "very unlikely, fewer than 5 in 100"],
    [0.001, "as good as impossible"],
    [Number.NaN, "not known"],
  ])("%d is “%s”", (probability, words) => {
    expect(chanceWords(probability)).toBe(words);
  });
});

test("tolerances are counted with at most two decimals", () => {
  expect(tolerancesWords(1)).toBe("1 tolerance");
  expect(tolerancesWords(1.666)).toBe("1.67 tolerances");
  expect(shownTimes(0.1 + 0.2)).toBe("0.3");
});

test("house models serve the figures that have them as base, and the largest alteration is named", async () => {
  const { figures, columns } = await grouped();
  const { chart } = figures;
  const at = (name: string): number => chart.figures.indexOf(name);
  const baseOf = Int32Array.from(chart.figures.keys());
  for (const name of ["Dunnock", "Pipit"]) baseOf[at(name)] = at("Linnet");
  const models = houseModels(chart, columns, {
    kind: "bases",
    baseOf,
    count: 5,
    atLeast: 5,
    isProved: true,
    alteration: 0,
    isLeastAlteration: true,
  });
  expect(models[0]).toMatchObject({ base: at("Linnet"), served: [at("Dunnock"), at("Pipit")] });
  // Hip 142 against 140 mm and bust 137 against 135 mm both use two thirds of 3 mm; the first name is told.
  expect(models[0]?.farthest).toMatchObject({ place: at("Dunnock"), difference: { deltaMm: 2 } });
  expect(models.slice(1).every(({ served }) => served.length === 0)).toBe(true);
});

test("an outline is closed, mirrored, and as wide as its levels", () => {
  const level = (name: string, heightMm: number, halfWidthMm: number, innerMm = 0) => ({
    name,
    heightMm,
    halfWidthMm,
    innerMm,
    estimated: false,
    isHeightEstimated: false,
    isWidthEstimated: false,
  });
  const levels = [
    level("Sole", 0, 16, 4),
    level("Top of the leg", 100, 20),
    level("Waist", 150, 15),
    level("Head", 200, 12),
    level("Top of the head", 220, 0),
  ];
  const outline = { figure: "Ash", levels, missing: [], notes: [] };
  const path = outlinePath(
    outline,
    (mm) => mm,
    (mm) => 220 - mm,
  );
  expect(path).toMatch(/^M16 220C.*Z$/);
  const across = [...path.matchAll(/(-?[\d.]+) -?[\d.]+/g)].map(([, x]) => Number(x));
  expect(Math.max(...across)).toBe(20);
  expect(Math.min(...across)).toBe(-20);
  expect(outlinePath({ ...outline, levels: [] }, Number, Number)).toBe("");
});

test("a difference that no tape shows is said to be hardly one, and not 0", () => {
  const [column] = readChart([
    ["Figure", "Waist (in)"],
    ["Burdock", 7.244],
    ["Bryony", 7.25],
  ]).measures;
  if (!column) throw new Error("The chart has a waist.");
  const words = (deltaMm: number) => differMostWords({ column, deltaMm, ofTolerance: 0.05 });
  expect([words(-0.15), words(1.6)]).toEqual(["Waist hardly smaller", 'Waist 1/16" larger']);
});

test("groups by few measures of the body say what they leave open", () => {
  expect(fewComparedWords(["Bust"])).toBe(
    "Only one measure of the body could be compared: Bust. Figures that agree in it may differ elsewhere.",
  );
  expect(fewComparedWords(["Bust", "Waist"])).toMatch(/^Only 2 measures .* agree in them may/);
  expect(fewComparedWords(["Bust", "Waist", "Hip", "Inside leg", "Upper arm"])).toBeUndefined();
});
