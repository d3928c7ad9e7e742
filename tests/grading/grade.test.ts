import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import { gradeRuleCells, readGradeRules } from "../../addin/chart/readGradeRules.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { girthMismatches } from "../../addin/grading/girthIdentity.ts";
import type { Movement } from "../../addin/grading/grade.ts";
import { grade, outline, prepareGrading } from "../../addin/grading/grade.ts";
import { measureById } from "../../addin/measures/dictionary.ts";

const measures = [...new Set(defaultGradeRules.map(({ measure }) => measure))];
const headings = ["Figure", ...measures.map((id) => `${measureById(id)?.name ?? id} (mm)`)];
const figure = fc.array(fc.double({ min: 10, max: 1500, noNaN: true }), {
  minLength: measures.length,
  maxLength: measures.length,
});
const gradingOf = (...figures: readonly (readonly (number | undefined)[])[]) =>
  prepareGrading(
    readChart([headings, ...figures.map((row, i) => [`Figure ${String(i)}`, ...row])]),
    defaultGradeRules,
    gradePieces,
  );
const closeTo = (one: readonly Movement[], other: readonly Movement[]) =>
  one.every(
    (each, i) =>
      Math.abs(each.acrossMm - (other[i]?.acrossMm ?? Number.NaN)) < 1e-9 &&
      Math.abs(each.alongMm - (other[i]?.alongMm ?? Number.NaN)) < 1e-9,
  );
const added = (one: readonly Movement[], other: readonly Movement[], sign = 1) =>
  one.map((each, i) => ({
    ...each,
    acrossMm: each.acrossMm + sign * (other[i]?.acrossMm ?? Number.NaN),
    alongMm: each.alongMm + sign * (other[i]?.alongMm ?? Number.NaN),
  }));

describe("grade", () => {
  it("from A to B and on to C is the grade from A to C", () => {
    fc.assert(
      fc.property(figure, figure, figure, (a, b, c) => {
        const grading = gradingOf(a, b, c);
        expect(closeTo(added(grade(grading, 0, 1), grade(grading, 1, 2)), grade(grading, 0, 2))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it("there and back is nothing", () => {
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        const grading = gradingOf(a, b);
        const back = added(grade(grading, 0, 1), grade(grading, 1, 0));
        expect(back.every(({ acrossMm, alongMm }) => acrossMm === 0 && alongMm === 0)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it("is what the outlines of two figures differ by", () => {
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        const grading = gradingOf(a, b);
        const moved = added(outline(grading, 0), grade(grading, 0, 1));
        expect(closeTo(moved, outline(grading, 1))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it("at every girth line, the pieces of a garment add up to the change of the girth", () => {
    fc.assert(
      fc.property(figure, figure, (a, b) => {
        const movements = grade(gradingOf(a, b), 0, 1);
        const lines = new Map<string, { sum: number; change: number }>();
        for (const { name, garment, points } of gradePieces) {
          for (const { name: point, line } of points) {
            if (!line) continue;
            const at = measures.indexOf(line.measure);
            const change = (b[at] ?? Number.NaN) - (a[at] ?? Number.NaN);
            const found = movements.find((each) => each.piece === name && each.point === point);
            const total = lines.get(garment + line.name) ?? { sum: 0, change };
            total.sum += (found?.acrossMm ?? Number.NaN) * line.times * line.end;
            lines.set(garment + line.name, total);
          }
        }
        expect(lines.size).toBe(23);
        for (const { sum, change } of lines.values()) expect(sum).toBeCloseTo(change, 8);
      }),
      { numRuns: 50 },
    );
  });

  it("leaves what is missing blank, and names it", () => {
    const full = measures.map(() => 100);
    const without = full.map((mm, i) => (measures[i] === "backWaistLength" ? undefined : mm + 8));
    const underarm = grade(gradingOf(full, without), 0, 1).find(({ point }) => point === "Underarm");
    expect(underarm).toEqual({
      ...{ piece: "Bodice front", point: "Underarm", acrossMm: 2 },
      ...{ alongMm: Number.NaN, missing: ["backWaistLength"] },
    });
  });
});

describe("grade rules that come with the project", () => {
  it("keep every girth", () => {
    expect(girthMismatches(defaultGradeRules, gradePieces)).toEqual([]);
  });

  it("name points and measures that exist, each once", () => {
    const keys = defaultGradeRules.map(({ piece, point, measure }) => [piece, point, measure].join("/"));
    expect(new Set(keys).size).toBe(keys.length);
    expect(measures.filter((id) => !measureById(id))).toEqual([]);
  });

  it("come back from their own table", () => {
    const { rules, pieces } = readGradeRules(gradeRuleCells());
    expect(rules).toEqual(defaultGradeRules.map((rule, i) => ({ ...rule, row: i + 1 })));
    expect(pieces).toEqual(gradePieces.map(({ name }) => name));
  });

  it("cover the planned garments", () => {
    expect([...new Set(gradePieces.map(({ garment }) => garment))]).toEqual([
      ...["Bodice", "Sleeve", "Fitted skirt", "Flared skirt", "Trousers", "Hat band", "Hood", "Stocking"],
    ]);
  });

  it("draw pieces that do not cross themselves, on a full-size body and on a small figure", () => {
    // Invented: a body in mm, and the same at about 1:6 with a larger head and slimmer limbs.
    const body = {
      ...{ neckGirth: 360, bustGirth: 900, waistGirth: 720, hipGirth: 960, shoulderWidth: 390 },
      ...{ backWaistLength: 410, armLength: 590, upperArmGirth: 290, wristGirth: 165, waistToHip: 200 },
      ...{
        waistToKnee: 590,
        bodyRise: 270,
        thighGirth: 560,
        kneeGirth: 370,
        ankleGirth: 230,
        insideLeg: 780,
      },
      ...{ headGirth: 560, heelGirth: 320, calfGirth: 360, footGirth: 230, footLength: 240 },
    };
    const small = Object.entries(body).map(([id, mm]) => [id, (mm / 6) * (id === "headGirth" ? 1.3 : 0.95)]);
    for (const sizes of [body, Object.fromEntries(small)]) {
      const row = measures.map((id) => Number(sizes[id]));
      const points = outline(gradingOf(row), 0);
      for (const { name } of gradePieces) {
        const corners = points.filter(({ piece }) => piece === name);
        expect(
          corners.filter((_, i) => crosses(corners, i)),
          name,
        ).toEqual([]);
      }
    }
  });
});

/** True when the side that begins at a corner crosses a side that does not touch it. */
function crosses(corners: readonly Movement[], i: number): boolean {
  const at = (k: number): Movement => {
    const corner = corners[k % corners.length];
    if (!corner) throw new Error("no corner");
    return corner;
  };
  const turn = (a: Movement, b: Movement, c: Movement) =>
    Math.sign(
      (b.acrossMm - a.acrossMm) * (c.alongMm - a.alongMm) -
        (b.alongMm - a.alongMm) * (c.acrossMm - a.acrossMm),
    );
  return corners.some((_, j) => {
    const apart = (j - i + corners.length) % corners.length;
    if (apart < 2 || apart > corners.length - 2) return false;
    const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
    return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
  });
}

describe("an edited set", () => {
  const edited = (point: string, measure: string, across: number) =>
    defaultGradeRules.map((rule, i) =>
      rule.piece === "Bodice front" && rule.point === point && rule.measure === measure
        ? { ...rule, across, row: i + 1 }
        : rule,
    );

  it("that adds up to more than the girth is told where, and by how much", () => {
    const [found, ...others] = girthMismatches(edited("Underarm", "bustGirth", 0.3), gradePieces);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ garment: "Bodice", line: "bust line", measure: "bustGirth" });
    expect(found?.sum).toBeCloseTo(1.1, 12);
    expect(found?.excess).toBeCloseTo(0.1, 12);
    expect(found?.rules).toHaveLength(2);
  });

  it("that moves a girth line with another measure is told so", () => {
    const rules = [
      ...defaultGradeRules,
      { piece: "Bodice back", point: "Underarm", measure: "hipGirth", across: 0.05, along: 0, row: 9 },
    ];
    expect(girthMismatches(rules, gradePieces)).toMatchObject([
      { line: "bust line", girth: "bustGirth", measure: "hipGirth", excess: 0.1, rules: [{ row: 9 }] },
    ]);
  });

  it("may share a girth unevenly between front and back", () => {
    const rules = defaultGradeRules.map((rule) =>
      rule.measure === "bustGirth" ? { ...rule, across: rule.piece === "Bodice front" ? 0.3 : 0.2 } : rule,
    );
    expect(girthMismatches(rules, gradePieces)).toEqual([]);
  });
});
