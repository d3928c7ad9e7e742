import { describe, expect, test } from "vitest";
import type { Check } from "../../../addin/fit/check.ts";
import { explainPair } from "../../../addin/fit/explainPair.ts";
import { changesOf } from "../../../taskpane/fit/changes.ts";
import { drawCheck } from "../../../taskpane/fit/checkDrawing.ts";
import { ready } from "./wardrobe.ts";

const open: Check = {
  kind: "girth",
  place: "Waist girth",
  bodyMm: 100,
  needsMm: 104,
  hasMm: 120,
  differenceMm: 10,
  verdict: "too loose",
  counts: true,
  says: "too loose by 10 mm",
  unit: "mm",
  take: [],
};
const waist: Check = { ...open, mostMm: 110, snugMm: 98, looseMm: 116 };

describe("the drawing of a check", () => {
  test("shows what is allowed large, with the limits of snug and loose, all in proportion", () => {
    const drawing = drawCheck(waist)!;
    const { fits, snug, loose, body } = drawing;
    const perMm = (fits.to - fits.from) / 6;
    expect(fits.from - snug!.from).toBeCloseTo(6 * perMm, 10);
    expect(snug?.to).toBe(fits.from);
    expect(loose?.from).toBe(fits.to);
    expect(loose!.to - fits.to).toBeCloseTo(6 * perMm, 10);
    expect(drawing.has - fits.to).toBeCloseTo(10 * perMm, 10);
    expect(fits.from - body!.at).toBeCloseTo(4 * perMm, 10);
    // From 98 to 120 mm, and a little more at both ends: what fits takes a quarter of the width.
    expect(6 * perMm).toBeGreaterThan(0.2);
    expect(drawing.ticks.map(({ words }) => words)).toEqual(["100 mm", "110 mm", "120 mm"]);
    expect(drawing.ticks[1]!.at).toBeCloseTo(fits.to, 10);
    expect(drawing.ticks[0]!.at).toBeCloseTo(body!.at, 10);
    expect(drawing.needsWords).toBe("needs 104 mm to 110 mm");
    expect(drawing.limitWords).toBe("snug from 98 mm, loose to 116 mm");
    expect(body?.words).toBe("body 100 mm");
    expect(drawCheck({ ...waist, kind: "opening" })?.body).toBeUndefined();
    expect(drawing.description).toBe(
      "Waist girth: needs 104 mm to 110 mm, snug from 98 mm, loose to 116 mm, has 120 mm; too loose by 10 mm.",
    );
  });

  test("makes no gap of a tenth of a millimetre, and goes to the end where there is no limit", () => {
    const drawing = drawCheck({ ...open, bodyMm: 104, hasMm: 104.1 })!;
    expect(drawing.has - drawing.fits.from).toBeLessThan(0.05);
    expect(drawing.fits.to).toBe(1);
    expect([drawing.snug, drawing.loose, drawing.limitWords]).toEqual([undefined, undefined, undefined]);
  });

  test("shows a stretching cloth at rest and stretched", () => {
    const drawing = drawCheck({ ...waist, atRestMm: 100 })!;
    expect(drawing.atRest).toBeCloseTo(drawing.body!.at, 10);
    expect(drawing.has - drawing.atRest).toBeCloseTo((20 * (drawing.fits.to - drawing.fits.from)) / 6, 10);
    expect(drawing.hasWords).toBe("has 100 mm, stretched 120 mm");
  });

  test("has marks that a tape has, in the unit of the chart", () => {
    const inches = drawCheck({ ...waist, unit: "in" })!;
    expect(inches.ticks.map(({ words }) => words)).toEqual(['4"', '4 1/2"']);
    const cm = drawCheck({ ...waist, unit: "cm" })!;
    expect(cm.ticks.map(({ words }) => words)).toEqual(["10 cm", "11 cm", "12 cm"]);
  });

  test("is left out where a length is not known", () => {
    expect(drawCheck({ ...waist, hasMm: Number.NaN })).toBeUndefined();
    expect(drawCheck({ ...waist, needsMm: Number.NaN, bodyMm: Number.NaN })).toBeUndefined();
  });

  test("is there for every known check of a real pair, with each bar inside", async () => {
    const { fitting } = await ready();
    const { checks } = explainPair(fitting, 3, 0);
    expect(checks.length).toBeGreaterThan(3);
    for (const check of checks.filter(({ hasMm, needsMm }) => Number.isFinite(hasMm + needsMm))) {
      const drawing = drawCheck(check)!;
      const { fits, snug, loose, body, has } = drawing;
      const shares = [
        body?.at ?? fits.from,
        has,
        ...[snug, fits, loose].flatMap((s) => (s ? [s.from, s.to] : [])),
      ];
      expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...shares)).toBeLessThanOrEqual(1);
      expect(shares).toEqual([...shares.slice(0, 2), ...shares.slice(2).sort((a, b) => a - b)]);
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
