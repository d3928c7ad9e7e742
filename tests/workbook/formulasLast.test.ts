import { describe, expect, it } from "vitest";
import { formulasLast } from "../../addin/workbook/formulasLast.ts";
import type { Edit } from "../../addin/workbook/port.ts";

const results: Edit = {
  kind: "sheet",
  sheet: {
    name: "Results",
    cells: [[{ value: "Title" }], [{ formula: "=ROWS(Figures[#All])", format: "0" }]],
  },
};
const figures: Edit = {
  kind: "sheet",
  sheet: {
    name: "Figures",
    cells: [[{ value: "Figure" }], [{ value: "Ada" }]],
    tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 1 }],
  },
};
const nowhere = (): undefined => undefined;

describe("formulas last", () => {
  it("come after the tables that they name, in the cells where they were", () => {
    expect(formulasLast([results, figures], nowhere)).toEqual([
      { kind: "sheet", sheet: { name: "Results", cells: [[{ value: "Title" }], [undefined]] } },
      figures,
      {
        kind: "cells",
        at: { sheet: "Results", row: 0, column: 0 },
        cells: [[undefined], [{ formula: "=ROWS(Figures[#All])", format: "0" }]],
      },
    ]);
  });

  it("stay where a later edit moves the cells of their sheet or writes there again", () => {
    const rows: Edit = { kind: "rows", table: "Bases", rows: [["Ada"]] };
    const over: Edit = {
      kind: "cells",
      at: { sheet: "results", row: 1, column: 0 },
      cells: [[{ value: 1 }]],
    };
    for (const edits of [
      [results, rows],
      [results, over],
    ]) {
      expect(formulasLast(edits, (table) => (table === "Bases" ? "Results" : undefined))).toEqual(edits);
    }
    expect(formulasLast([results, rows], () => "Elsewhere")).toHaveLength(3);
  });

  it("leave edits without formulas as they are", () => {
    expect(formulasLast([figures], nowhere)).toEqual([figures]);
  });
});
