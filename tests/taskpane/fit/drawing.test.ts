import { describe, expect, test } from "vitest";
import type { Check } from "../../../addin/fit/check.ts";
import { explainPair } from "../../../addin/fit/explainPair.ts";
import { changesOf } from "../../../taskpane/fit/changes.ts";
import { drawCheck } from "../../../taskpane/fit/checkDrawing.ts";
import { ready } from "./wardrobe.ts";

const waist: Check = {
  kind: "girth",
  place: "Waist girth",
  bodyMm: 100,
  needsMm: 104,
  mostMm: 110,
  hasMm: 120,
  differenceMm: 10,
  verdict: "too loose",
  counts: true,
  says: "too loose by 10 mm",
  unit: "mm",
  take: [],
};

describe("the drawing of a check", () => {
  test("keeps lengths in proportion on one scale from 0", () => {
    const drawing = drawCheck(waist, 1)!;
    expect(drawing.needs / drawing.body!.at).toBeCloseTo(1.04, 10);
    expect(drawing.has / drawing.body!.at).toBeCloseTo(1.2, 10);
    expect(drawing.most! / drawing.has).toBeCloseTo(110 / 120, 10);
    expect(drawing.has).toBeLessThan(1);
    const [zero, first] = drawing.ticks;
    expect(zero).toEqual({ at: 0, words: "0" });
    expect(first?.words).toBe("50 mm");
    expect(first!.at / drawing.body!.at).toBeCloseTo(0.5, 10);
    expect(drawing.needsWords).toBe("needs 104 mm to 110 mm");
    expect(drawing.body?.words).toBe("body 100 mm");
    expect(drawCheck({ ...waist, kind: "opening" }, 1)?.body).toBeUndefined();
    expect(drawing.description).toBe("Waist girth: needs 104 mm to 110 mm, has 120 mm; too loose by 10 mm.");
  });

  test("shows a stretching cloth at rest and stretched", () => {
    const drawing = drawCheck(waist, 1.2)!;
    expect(drawing.atRest / drawing.body!.at).toBeCloseTo(1, 10);
    expect(drawing.has / drawing.body!.at).toBeCloseTo(1.2, 10);
    expect(drawing.hasWords).toBe("has 100 mm, stretched 120 mm");
  });

  test("has marks that a tape has, in the unit of the chart", () => {
    const inches = drawCheck({ ...waist, unit: "in" }, 1)!;
    expect(inches.ticks.map(({ words }) => words)).toEqual(["0", '2"', '4"']);
    expect(inches.ticks[2]!.at / inches.body!.at).toBeCloseTo(101.6 / 100, 10);
    const cm = drawCheck({ ...waist, unit: "cm" }, 1)!;
    expect(cm.ticks.map(({ words }) => words)).toEqual(["0", "5 cm", "10 cm"]);
  });

  test("is left out where a length is not known", () => {
    expect(drawCheck({ ...waist, hasMm: Number.NaN }, 1)).toBeUndefined();
    expect(drawCheck({ ...waist, needsMm: Number.NaN, bodyMm: Number.NaN }, 1)).toBeUndefined();
  });

  test("is there for every known check of a real pair, with each bar inside", async () => {
    const { fitting } = await ready();
    const { checks } = explainPair(fitting, 3, 0);
    expect(checks.length).toBeGreaterThan(3);
    for (const check of checks.filter(({ hasMm, needsMm }) => Number.isFinite(hasMm + needsMm))) {
      const drawing = drawCheck(check, fitting.patterns[3]!.comfort)!;
      for (const share of [drawing.body?.at ?? 0, drawing.needs, drawing.most ?? 0, drawing.has]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
  });
});

describe("what to change", () => {
  test("is the alteration of each check that says no, with its sign", async () => {
    const { fitting } = await ready();
    // A fitted skirt of 149 mm hip on a hip of 142 mm, without an opening: the waist of 104 mm does not pass the hip.
    const changes = changesOf(explainPair(fitting, 1, 1));
    expect(changes.map(({ check, total }) => [check.place, total])).toContainEqual([
      "Waist over the hip",
      "+38 mm",
    ]);
  });

  test("is nothing where the garment can be worn", async () => {
    const { fitting } = await ready();
    const explanation = explainPair(fitting, 0, 0);
    expect(explanation.verdict).toBe("fits");
    expect(changesOf(explanation)).toEqual([]);
  });

  test("says when a change is too large to sew", () => {
    const [change] = changesOf({
      pattern: "P1",
      figure: "Ardmoor",
      verdict: "too loose",
      words: "",
      checks: [waist],
      routes: [],
      take: [],
      notes: [],
      unjudged: [],
    });
    expect(change).toMatchObject({ total: undefined, edges: undefined });
    expect(change?.words).toContain("draft it anew");
  });
});
