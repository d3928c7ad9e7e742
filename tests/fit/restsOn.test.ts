import { describe, expect, it } from "vitest";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import { doubts } from "../../addin/checking/doubts.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { matchAll, prepareFitting } from "../../addin/fit/match.ts";
import {
  restMarks,
  restsOn,
  restWords,
  soundRanks,
  soundVerdicts,
  soundWords,
} from "../../addin/fit/restsOn.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";
import { fittingOf, wisp } from "./fitOf.ts";

const figures = { Wisp: wisp, Brook: { ...wisp, Waist: 60 } };
const skirt = { "Garment class": "Flared skirt", Opens: "full length" };
/** A doubt about the waist of one figure. */
const waist = (fitting: Fitting, place: number, mendedMm?: number): Doubt => {
  const { figures: names, rows, measures } = fitting.view.chart;
  const column = measures.find(({ key }) => key === "waistGirth")!.position;
  const cell = { row: rows[place]!, column };
  return {
    cells: [cell],
    figure: names[place]!,
    says: "Waist 60 mm (digit missing)",
    corrections: mendedMm === undefined ? [] : [{ ...cell, mm: mendedMm }],
  };
};
const words = (fitting: Fitting, figure: number, doubt: Doubt) =>
  restsOn(fitting, 0, figure, [doubt]).map((each) => restWords(each, "Check"));

describe("an answer that rests on a doubtful reading", () => {
  it("says what the verdict would be with the reading mended, as it is judged then", () => {
    const made = { S: { ...skirt, Waist: 138, Hip: 230 } };
    const fitting = fittingOf(made, figures);
    const mended = explainPair(fittingOf(made, { Wisp: wisp, Brook: wisp }), 0, 1).verdict;
    expect(mended).not.toBe(explainPair(fitting, 0, 1).verdict);
    expect(words(fitting, 1, waist(fitting, 1, wisp.Waist))).toEqual([
      `Rests on a doubtful reading: Waist 60 mm (digit missing). Mended as Check suggests, the verdict would be “${mended}”.`,
    ]);
    expect(words(fitting, 1, waist(fitting, 1, 61))).toEqual([
      "Rests on a doubtful reading: Waist 60 mm (digit missing). Mended as Check suggests, the verdict stays.",
    ]);
    expect(words(fitting, 1, waist(fitting, 1))).toEqual([
      "Rests on a doubtful reading: Waist 60 mm (digit missing). Measure it again.",
    ]);
  });

  it("names the figure that the pattern was drafted for where the reading is of that one", () => {
    const drafted = fittingOf({ S: { ...skirt, "Drafted for": "Brook", Hip: 230 } }, figures);
    expect(words(drafted, 0, waist(drafted, 1, wisp.Waist))).toEqual([
      expect.stringMatching(/^Rests on a doubtful reading: Brook, Waist 60 mm .* would be “fits”\.$/),
    ]);
  });

  it("and the one that what is worn under it was drafted for: its folds take room", () => {
    const over = fittingOf(
      {
        S: { ...skirt, Waist: 138, Hip: 230, "Worn over": "U" },
        U: { ...skirt, Thickness: 1, "Drafted for": "Brook", Hip: 210 },
      },
      { Wisp: wisp, Brook: { ...wisp, Waist: 300 } },
    );
    expect(words(over, 0, waist(over, 1, wisp.Waist))).toEqual([
      expect.stringContaining("Brook, Waist 60 mm"),
    ]);
  });

  it("says nothing of a reading that has no part in it", () => {
    const hemmed = fittingOf({ S: { ...skirt, Waist: 138, Hip: 230 } }, figures);
    expect(words(hemmed, 0, waist(hemmed, 1, wisp.Waist))).toEqual([]);
    const hat = fittingOf({ H: { "Garment class": "Hat", Head: 166 } }, figures);
    expect(words(hat, 1, waist(hat, 1, wisp.Waist))).toEqual([]);
  });
});

describe("marks of many pairs", () => {
  const workbook = demoWorkbook();
  const chart = readChart(tableCells(workbook, "Figures"));
  const { patterns } = readPatternTable(tableCells(workbook, "Patterns"), chart);
  const fitting = prepareFitting(patterns, chart);
  const doubtful = doubts(chart);
  const pairs = patterns.flatMap((_, pattern) =>
    chart.figures.map((_, figure) => ({
      pattern,
      figure,
      explanation: explainPair(fitting, pattern, figure),
    })),
  );

  it("agree with what is said of each pair alone", () => {
    const marks = restMarks(fitting, pairs, doubtful, defaultEaseRules);
    const alone = pairs.map(({ pattern, figure }) => restsOn(fitting, pattern, figure, doubtful));
    expect(marks.map((mark) => mark !== "")).toEqual(alone.map((grounds) => grounds.length > 0));
    marks.forEach((mark, i) => {
      if (mark.startsWith("Rests on a doubtful reading:"))
        expect(alone[i]?.map(({ says }) => `Rests on a doubtful reading: ${says}.`)).toEqual([mark]);
    });
    expect(marks.filter((mark) => mark !== "").length).toBeGreaterThan(100);
  });

  it("are empty where nothing is doubtful", () => {
    expect(new Set(restMarks(fitting, pairs, [], defaultEaseRules))).toEqual(new Set([""]));
  });
});

describe("the verdicts of all pairs", () => {
  it("that rest on a doubtful reading are those that are others with it mended or taken out of the chart", () => {
    const made = {
      S: { ...skirt, Waist: 138, Hip: 230 },
      D: { ...skirt, "Drafted for": "Brook", Hip: 230 },
      T: { ...skirt, Waist: 90, Hip: 120 },
    };
    const without = Object.fromEntries(Object.entries(figures.Brook).filter(([name]) => name !== "Waist"));
    const ranksOf = (brook: Record<string, number>) =>
      matchAll(fittingOf(made, { Wisp: wisp, Brook: brook })).ranks;
    const fitting = fittingOf(made, figures);
    const match = matchAll(fitting);
    const [mendedRanks, withoutRanks] = [ranksOf(wisp), ranksOf(without)];
    const mendable = soundRanks(fitting, match, [waist(fitting, 1, wisp.Waist)]);
    expect([...mendable.ranks]).toEqual([...mendedRanks]);
    const isOther = [...match.ranks].map((rank, i) => rank !== mendedRanks[i] || rank !== withoutRanks[i]);
    expect([...mendable.rests]).toEqual(isOther.map(Number));
    expect(isOther).toContain(true);
    expect(isOther).toContain(false);
    const unknown = soundRanks(fitting, match, [waist(fitting, 1)]);
    expect([...unknown.ranks]).toEqual([...withoutRanks]);
    expect([...unknown.rests]).toEqual([...match.ranks].map((rank, i) => (rank !== withoutRanks[i] ? 2 : 0)));
  });

  it("are said as they would be", () => {
    const fitting = fittingOf({ S: { ...skirt, Waist: 138, Hip: 230 } }, figures);
    const [mendable, unknown] = [[waist(fitting, 1, wisp.Waist)], [waist(fitting, 1)]].map(
      (doubtful) => soundVerdicts(fitting, [{ pattern: 0, figure: 1 }], doubtful)[0]!,
    );
    expect(soundWords(mendable!, "not known")).toBe("fits if mended");
    expect(soundWords(mendable!, "fits")).toBe("the same if mended");
    expect(soundWords(unknown!, "fits")).toMatch(/ without$/);
  });
});
