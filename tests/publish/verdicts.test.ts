import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { figureTraits } from "../../addin/chart/figureTraits.ts";
import { answerBuyer } from "../../addin/publish/buyersAnswer.ts";
import { buyersTraits } from "../../addin/publish/buyersFile.ts";
import { doubtsOf } from "../../addin/publish/chosen.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";
import { demo, demoTables, fileOf, published } from "./published.ts";
import { fitKinds } from "../../addin/publish/words/words.ts";

/** What the worksheet function says, pattern by pattern: the chart as its cells stand. */
function whatFits(figures: Cells): Map<string, readonly unknown[]> {
  const { patterns, easeRules, garmentClasses } = demoTables;
  const table = whatFitsFunction.compute([patterns, figures, easeRules, garmentClasses]) as unknown[][];
  const ofPatterns = table.slice(1).filter(([code]) => code !== "Doubtful" && code !== "If mended");
  return new Map(ofPatterns.map(([code, ...verdicts]) => [String(code), verdicts]));
}

describe("verdicts on a published page", () => {
  it("are those of FIT.WHATFITS, for every pattern on every figure", () => {
    const expected = whatFits(demoTables.figures);
    const { patterns } = published({ flagged: true, estimated: true }).published;
    expect(patterns.length).toBe(expected.size);
    for (const { code, answers } of patterns)
      expect(
        answers.map(({ verdict }) => verdict),
        code,
      ).toEqual(expected.get(code));
  });

  it("rest on no reading that the check doubts, unless the maker publishes it", () => {
    const doubts = doubtsOf(demo.chart, demo.flags);
    const figures = demoTables.figures.map((row) => [...row]);
    for (const column of demo.chart.measures)
      for (const figure of doubts.get(column.key)?.keys() ?? [])
        figures[demo.chart.rows[figure]!]![column.position] = undefined;
    const expected = whatFits(figures);
    for (const { code, answers } of published().published.patterns)
      expect(
        answers.map(({ verdict }) => verdict),
        code,
      ).toEqual(expected.get(code));
  });

  it("say why, and what to change, wherever a garment does not fit as it is", () => {
    for (const language of ["English", "German"] as const) {
      for (const { answers } of published({ language }).published.patterns)
        for (const { kind, says, gist } of answers) {
          expect(fitKinds).toContain(kind);
          if (kind !== "fits") expect(says.length * gist.length).toBeGreaterThan(0);
        }
    }
  });
});

describe("verdicts on a body that a buyer types", () => {
  const traits = figureTraits(demo.chart);
  const bodyOf = (figure: number, isKept: (at: number) => boolean = () => true) => ({
    mm: new Map(
      demo.chart.measures.flatMap(({ key, mm }, at) =>
        isKept(at) && !Number.isNaN(mm[figure]) ? [[key, mm[figure]!] as const] : [],
      ),
    ),
    traits: new Map(
      buyersTraits.flatMap((trait) => {
        const isSo = traits[figure]?.[trait];
        return isSo === undefined ? [] : [[trait, isSo] as const];
      }),
    ),
    unit: "mm" as const,
  });
  // As the page gets it.
  const file = JSON.parse(JSON.stringify(fileOf({ flagged: true }))) as ReturnType<typeof fileOf>;

  it("are those of FIT.WHATFITS for the same readings, pair by pair", () => {
    const expected = whatFits(demoTables.figures);
    for (const [at, figure] of demo.chart.figures.entries()) {
      const { answers } = answerBuyer(file, bodyOf(at));
      for (const [p, { code }] of file.patterns.entries())
        expect(answers[p]?.verdict, `${code} on ${figure}`).toBe(expected.get(code)?.[at]);
    }
  });

  it("are those of FIT.WHATFITS with whatever measures are left out", () => {
    const headings = demoTables.figures[0]!;
    fc.assert(
      fc.property(
        fc.nat(demo.chart.figures.length - 1),
        fc.array(fc.boolean(), { minLength: 60, maxLength: 60 }),
        (figure, kept) => {
          // The patterns as drafted for the whole chart, and one more figure with what was typed.
          const row = [...demoTables.figures[demo.chart.rows[figure]!]!];
          row[0] = "Typed";
          demo.chart.measures.forEach(({ position }, at) => {
            if (kept[at] !== true) row[position] = undefined;
          });
          expect(row).toHaveLength(headings.length);
          const expected = whatFits([...demoTables.figures, row]);
          const { answers } = answerBuyer(
            file,
            bodyOf(figure, (at) => kept[at] === true),
          );
          for (const [p, { code }] of file.patterns.entries())
            expect(answers[p]?.verdict, code).toBe(expected.get(code)?.at(-1));
        },
      ),
      { numRuns: 25 },
    );
  });

  it("come with the measures that would decide, and with the figures that are like it", () => {
    const { like, takeNext } = answerBuyer(file, {
      mm: new Map([
        ["bustGirth", 182],
        ["waistGirth", 134],
        ["hipGirth", 194],
      ]),
      traits: new Map(),
      unit: "in",
    });
    expect(like[0]).toMatchObject({ isAlike: true, differs: [] });
    expect(like.filter(({ isAlike }) => isAlike).map(({ figure }) => figure)).toContain("Ardwen");
    expect(takeNext.map(({ id }) => id)).toContain("handGirth");
  });
});

describe("the error of readings on a published page", () => {
  const readingError = {
    ...{ mm: 0.5, percent: 0.25 },
    ofMeasures: { bustGirth: 0.2, "a measure of her own": 0.3 },
  };

  it("is that of the chart, for no measure that the page does not ask for", () => {
    const file = fileOf({}, { ...demo, readingError });
    expect(file.readingError).toEqual({ mm: 0.5, percent: 0.25, ofMeasures: { bustGirth: 0.2 } });
  });

  it("is the usual one where the chart has shown none", () => {
    expect(fileOf().readingError).toEqual({ mm: 0.5, percent: 0.25 });
  });
});
