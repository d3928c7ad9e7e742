import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { areaTyped } from "../../../addin/standalone/grid/addressBox.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

describe("what is typed into the box of the address", () => {
  let grid: HeadlessGrid;
  beforeAll(() => {
    grid = openHeadless({
      sheets: [
        {
          name: "Chart",
          cells: [[{ value: "Figure" }], [{ value: "Ardwen" }]],
          tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 1 }],
        },
        { name: "Ada’s own", cells: [] },
        { name: "It's", cells: [] },
      ],
    });
  });
  afterAll(() => {
    grid.close();
  });

  it.each([
    ["Chart!B3", { sheet: "Chart", row: 2, column: 1, rows: 1, columns: 1 }],
    ["chart!$b$3:A1", { sheet: "Chart", row: 0, column: 0, rows: 3, columns: 2 }],
    ["'Ada’s own'!A1", { sheet: "Ada’s own", row: 0, column: 0, rows: 1, columns: 1 }],
    ["'It''s'!A1", { sheet: "It's", row: 0, column: 0, rows: 1, columns: 1 }],
    ["figures", { sheet: "Chart", row: 0, column: 0, rows: 2, columns: 1 }],
  ])("%s stands for an area", (typed, area) => {
    expect(areaTyped(grid.unit, typed)).toEqual(area);
  });

  it.each(["B3", "Nothing!B3", "Chart!B0", "Chart!ABCD1", "Chart!", "Chart!B3:", "a name"])(
    "%s is left to the grid",
    (typed) => {
      expect(areaTyped(grid.unit, typed)).toBeUndefined();
    },
  );
});
