import { describe, expect, test } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { readGarmentTolerances, readTolerances } from "../../../addin/chart/tolerances.ts";
import { columnsOfPart } from "../../../addin/similarity/columns.ts";
import { shares } from "../../../addin/similarity/shares.ts";
import { printScale } from "../../../addin/grading/printScale.ts";
import { allPairs, countPairs, pairsTable } from "../../../taskpane/groups/allPairs.ts";

/** Invented figures: Ferrow is Arden at nine tenths, Brill is a little wider than Arden, Ode lacks her waist. */
const chart = readChart([
  ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Back length (mm)"],
  ["Arden", 200, 150, 210, 90],
  ["Anwen", 201, 150, 210, 90],
  ["Brill", 206, 156, 216, 90],
  ["Ferrow", 180, 135, 189, 81],
  ["Gant", 300, 180, 240, 120],
  ["Ode", 200, undefined, 210, 90],
]);
const rules = [
  ["Measure", "Tolerance (mm)", "Loose clothes (mm)"],
  ["Bust", 2, 8],
  ["Waist", 2, undefined],
  ["Hip", 2, 8],
  ["Back length", 1, 4],
];
const tolerances = readTolerances(rules, chart);
const garments = readGarmentTolerances(rules, chart);
const columns = columnsOfPart(chart, "body", { tolerances, garments });
const pairs = allPairs(chart, columns, garments, tolerances);
const at = (name: string) => chart.figures.indexOf(name);
const between = (one: string, other: string) =>
  pairs.find(({ place, other: second }) => place === at(one) && second === at(other));

describe("all pairs in a word", () => {
  test("are as many as two of six can be", () => {
    expect(pairs).toHaveLength(15);
    expect(countPairs(pairs).reduce((sum, [, times]) => sum + times, 0)).toBe(15);
  });

  test("say body, clothes, shape or nothing", () => {
    expect(between("Arden", "Anwen")?.word).toBe("same body");
    expect(between("Arden", "Brill")).toMatchObject({ word: "only some clothes", says: "Loose clothes." });
    expect(between("Arden", "Ferrow")).toMatchObject({ word: "same shape", scale: { there: 90, back: 111 } });
    expect(between("Arden", "Gant")?.word).toBe("nothing");
    expect(between("Gant", "Ode")?.word).toBe("nothing");
    expect(between("Arden", "Ode")?.word).toBe("only some clothes");
  });

  test("agree with SHARES on the body, and with the print scale on the shape", () => {
    for (const { place, other, word } of pairs) {
      const [body] = shares(chart, place, other, { tolerances, garments });
      expect(word === "same body").toBe(body?.answer === "yes");
      if (word !== "same shape") continue;
      const measures = columns.map(({ column }) => column);
      expect(printScale(place, other, measures, tolerances).verdict).toBe("one scale");
    }
  });

  test("make a table that reads the same from both sides, with the scale of its direction", () => {
    const places = chart.figures.map((_, place) => place);
    const table = pairsTable(chart, places, pairs);
    expect(table[0]).toEqual(["", ...chart.figures]);
    expect(table[at("Arden") + 1]?.[at("Ferrow") + 1]).toBe("same shape, 90 %");
    expect(table[at("Ferrow") + 1]?.[at("Arden") + 1]).toBe("same shape, 111 %");
    for (const place of places) expect(table[place + 1]?.[place + 1]).toBe("");
  });
});
