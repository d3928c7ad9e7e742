import { describe, expect, it } from "vitest";
import { findChart } from "../../../addin/chart/import/findChart.ts";
import type { Cells } from "../../../addin/chart/cell.ts";

const _ = undefined;

describe("findChart", () => {
  it("finds a chart in any corner, under a title, and leaves out what stands around it", () => {
    const cells: Cells = [
      ["My list, spring", _, _, _, _, _],
      [],
      [_, "Doll", "Maker", "Bust (cm)", "Waist", _, "Remarks on the shop"],
      [_, "Ashby", "me", 18, 14],
      [_, "Corran", "me", 17.5, "13 1/2"],
      [_, "Average", _, 17.75, 13.75],
      [],
      [_, "Copied from an old book"],
    ];
    expect(findChart(cells)).toEqual({ row: 2, column: 1, rows: 3, columns: 4, figures: 2, measures: 2 });
  });

  it("ends at the first row without a name", () => {
    const cells: Cells = [["Name", "Bust", "Hip"], ["Ashby", 180, 190], [], ["A note", _, _]];
    expect(findChart(cells)).toMatchObject({ rows: 2, figures: 1 });
  });

  it.each<[string, Cells]>([
    ["an empty sheet", []],
    [
      "a list of prices",
      [
        ["Pattern", "Price"],
        ["Dress", 12],
        ["Hat", 6],
      ],
    ],
    [
      "one measure alone",
      [
        ["Name", "Height"],
        ["Oak shelf", 180],
      ],
    ],
    ["headings without figures", [["Name", "Bust", "Hip"]]],
    [
      "headings without readings",
      [
        ["Name", "Bust", "Hip"],
        ["Ashby", "?", _],
      ],
    ],
    [
      "measures that run down",
      [
        ["Measure", "Ashby", "Corran"],
        ["Bust", 180, 175],
        ["Hip", 190, 185],
      ],
    ],
    [
      "no column of names",
      [
        ["Bust", "Hip", "Waist"],
        [180, 190, 140],
      ],
    ],
    [
      "a gap between names and measures",
      [
        ["Name", _, "Bust", "Hip"],
        ["Ashby", _, 180, 190],
      ],
    ],
  ])("finds none in %s", (_name, cells) => {
    expect(findChart(cells)).toBeUndefined();
  });
});
