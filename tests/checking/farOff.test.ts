import { describe, expect, test } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";

const headings = ["Figure", "Height (in)", "Head (in)", "Neck (in)", "Bust (in)", "Waist (in)", "Hip (in)"];
const usual = [12, 4.9, 2.2, 5.2, 3.9, 5.6];

const flagged = (rows: readonly (readonly (string | number | undefined)[])[]) =>
  checkChart(readChart([headings, ...rows])).map(({ figure, measure, kind }) => [figure, measure, kind]);

describe("a chart too small to tell proportions of its own", () => {
  // A point that slipped and millimetres in a column of inches are what people do, ten and 25.4 times off by definition.
  test.each([10, 0.1, 25.4])("has a reading found that is %d times what it should be", (times) => {
    for (const wrong of usual.keys()) {
      const readings = usual.map((reading, i) => (i === wrong ? reading * times : reading));
      const found = flagged([
        ["Maud", ...usual],
        ["Mo", ...readings],
      ]);
      expect(found).toEqual([["Mo", headings[wrong + 1]?.replace(" (in)", ""), "out of proportion"]]);
    }
  });

  test("has both of two readings asked about that cannot go together, since either can be wrong", () => {
    expect(flagged([["Maud", 12, 49]])).toEqual([
      ["Maud", "Height", "out of proportion"],
      ["Maud", "Head", "out of proportion"],
    ]);
    expect(flagged([["Maud", undefined, 49]])).toEqual([]);
  });

  test("has nothing found of figures of any build that are read right: large heads, children, grown-ups, each alone", () => {
    for (const row of trueRows()) {
      const cells = row.map((cell) => cell.value);
      const kinds = checkChart(readChart([figureHeadings, cells])).map(({ kind }) => kind);
      expect(kinds).not.toContain("out of proportion");
    }
  });
});
