import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../addin/measures/inputError.ts";
import { baseFigures, proofWords } from "../../addin/similarity/fewest/answerWords.ts";
import { fewestBaseFigures, fewestSharedGroups } from "../../addin/similarity/fewest/fewestShared.ts";
import { chartOf, comparedOf } from "./chartOf.ts";
import { seeded } from "./condensedOf.ts";

describe("fewest groups and base figures of a chart", () => {
  it("do not depend on the order of rows", () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.shuffledSubarray([...Array(14).keys()], { minLength: 14 }),
        (seed, order) => {
          const random = seeded(seed);
          const rows = Array.from({ length: 14 }, () => [8 * random(), 8 * random()]);
          const names = rows.map((_, i) => `Figure ${String(i)}`);
          const mixed = { figures: order.map((i) => names[i]!) };
          const mixedColumns = comparedOf(order.map((i) => rows[i]!));
          const groups = fewestSharedGroups({ figures: names }, comparedOf(rows), 1.5);
          const bases = fewestBaseFigures({ figures: names }, comparedOf(rows), 1.5);
          expect([...fewestSharedGroups(mixed, mixedColumns, 1.5).groupOf]).toEqual(
            order.map((i) => groups.groupOf[i]),
          );
          const mixedBases = fewestBaseFigures(mixed, mixedColumns, 1.5).baseOf;
          expect(Array.from(mixedBases, (base) => mixed.figures[base])).toEqual(
            order.map((i) => names[bases.baseOf[i]!]),
          );
        },
      ),
      { numRuns: 60 },
    );
  });

  it("number larger groups first, then by the first name", () => {
    const rows = [[0], [10], [20], [10.5], [20.5], [10.2]];
    const figures = ["A", "B", "C", "D", "E", "F"];
    const { groupOf, isProved } = fewestSharedGroups({ figures }, comparedOf(rows));
    expect([...groupOf]).toEqual([3, 1, 2, 1, 2, 1]);
    expect(isProved).toBe(true);
  });

  it.each([0, -1, Number.NaN, Infinity])("refuse a reach of %s in words", (reach) => {
    expect(() => fewestSharedGroups({ figures: ["A"] }, comparedOf([[1]]), reach)).toThrow(InputError);
    expect(() => fewestBaseFigures({ figures: ["A"] }, comparedOf([[1]]), reach)).toThrow(/above 0/);
  });

  it("leave a figure without readings alone, and say what is missing", () => {
    const chart = chartOf(["bustGirth", "waistGirth"], {
      Linnet: [135, 100],
      Dunnock: [136, 100],
      Teal: [],
    });
    const columns = chart.measures.map((column) => ({
      column,
      tolerance: { floorMm: 2, percent: 0 },
      required: true,
    }));
    const answer = fewestBaseFigures(chart, columns);
    const [first, second] = baseFigures(chart, columns, answer);
    expect(first).toMatchObject({ base: "Dunnock", serves: ["Linnet"], lacking: [] });
    expect(first?.worst?.fromBase.deltaMm).toBe(-1);
    expect(second).toMatchObject({ base: "Teal", serves: [] });
    expect(second?.lacking).toEqual(columns);
  });

  it("answer for 5,000 figures, with the gap in words", () => {
    const random = seeded(9);
    const rows = Array.from({ length: 5000 }, () => [30 * random(), 30 * random()]);
    const figures = rows.map((_, i) => `Figure ${String(i)}`);
    const answer = fewestBaseFigures({ figures }, comparedOf(rows), 2);
    expect(answer.isProved).toBe(false);
    expect(answer.atLeast).toBeGreaterThan(1);
    expect(proofWords(answer)).toMatch(
      /At least \d+ are needed; whether fewer than \d+ can do is not settled/,
    );
  }, 30_000);
});
