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
    expect(findChart(cells)).toEqual({
      ...{ row: 2, column: 1, rows: 3, columns: 4 },
      ...{ figures: 2, measures: 2, leftOut: 0 },
    });
  });

  it("ends at the first row without a name", () => {
    const cells: Cells = [["Name", "Bust", "Hip"], ["Ashby", 180, 190], [], ["A note", _, _]];
    expect(findChart(cells)).toMatchObject({ rows: 2, figures: 1 });
  });

  it("takes units from the row below the headings into them", () => {
    const cells: Cells = [
      [_, "Around", _, "Along"],
      ["Name", "Bust", "Waist", "Inside leg", "Price", "Remarks"],
      [_, "in", "in", "cm", "€", _],
      ["Mirabel", "7 1/8", "5 1/4", "21,8", 210, "wig removed"],
      ["Tansy", 5, "3 7/8", "14,9", 140, _],
    ];
    expect(findChart(cells)).toMatchObject({
      ...{ row: 2, column: 0, rows: 3, columns: 6, figures: 2, measures: 3 },
      headings: ["Name", "Bust (in)", "Waist (in)", "Inside leg (cm)", "Price (€)", "Remarks"],
    });
  });

  it("joins headings over two rows", () => {
    const cells: Cells = [
      ["Doll", "Arm", _, "Bust"],
      [_, "length", "girth", "(cm)"],
      ["Mirabel", 14, 5, 18],
    ];
    const found = findChart(cells);
    expect(found).toMatchObject({ row: 1, column: 0, rows: 2, figures: 1, measures: 3 });
    expect(found?.headings?.slice(0, 3)).toEqual(["Doll", "Arm length", "Arm girth"]);
  });

  it("goes on below blank rows, with figures by body, and past figures that nobody has measured yet", () => {
    const cells: Cells = [
      ["Name", "Bust", "Hip"],
      ["Ashby", 180, 190],
      ["Asher", _, _],
      [],
      ["Corran", 175, 185],
      [],
      ["Max", 230, 240],
      [],
      ["Cloth", "bought", "paid"],
      ["lawn", 2, 14],
    ];
    expect(findChart(cells)).toMatchObject({ rows: 7, figures: 4, leftOut: 1 });
  });

  it("ends at sums, and says how many figures stand below them", () => {
    const cells: Cells = [
      ["Name", "Bust", "Hip"],
      ["Max", 180, 190],
      ["Durchschnitt", 180, 190],
      ["Corran", 175, 185],
      ["Max", 180, 190],
      ["Min", 175, 185],
    ];
    expect(findChart(cells)).toMatchObject({ rows: 2, figures: 1, leftOut: 1 });
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
