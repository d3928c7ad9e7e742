import type { Cell } from "../../../addin/chart/cell.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";

/** Cells row by row, formulas by their `=`. */
export const rows = (...cells: readonly (readonly Cell[])[]): CellContent[][] =>
  cells.map((line) =>
    line.map((value) =>
      typeof value === "string" && value.startsWith("=") ? { formula: value, value: 1 } : { value },
    ),
  );

/**
 * An invented workroom that speaks of Ada in every way. No answer fills more than its cell.
 *
 * @param name of that figure in the chart
 */
export function workroom(name = "Ada"): WorkbookContent {
  return {
    sheets: [
      {
        name: "Figures",
        cells: rows(
          ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
          [name, 136, 98, 142],
          ["Bela", 140, 100, 146],
          ["Caro", 151, 121, 158],
        ),
        tables: [{ name: "Figures", row: 0, column: 0, rows: 4, columns: 4 }],
      },
      {
        name: "Patterns",
        cells: rows(
          ["Pattern", "Garment class", "Drafted for", "Worn over"],
          ["D-1", "Dress", "ada", "U-1, S-1"],
          ["U-1", "Underwear", "Bela", ""],
          ["S-1", "Shirt", "Ada", "U-1"],
        ),
        tables: [{ name: "Patterns", row: 0, column: 0, rows: 4, columns: 4 }],
      },
      {
        name: "Confirmed",
        cells: rows(["Figure", "Measure", "Reading", "Confirmed"], ["Ada", "Bust", "136 mm", "2025-03-01"]),
        tables: [{ name: "ConfirmedReadings", row: 0, column: 0, rows: 2, columns: 4 }],
      },
      {
        name: "Second",
        cells: rows(["Figure", "Bust (mm)"], ["Bela", 140.5], ["Ada", 136.5]),
        tables: [{ name: "SecondReadings", row: 0, column: 0, rows: 3, columns: 2 }],
      },
      {
        name: "Readings",
        cells: rows(
          ["Figure", "Measure", "Reading (mm)", "Date", "By"],
          ["Ada", "Bust", 136, "2025-03-01", "Ada"],
          ["ada", "Bust", 136.5, "2025-03-02", "Ida"],
          ["Bela", "Bust", 140, "2025-03-02", "Ida"],
        ),
        tables: [{ name: "Readings", row: 0, column: 0, rows: 4, columns: 5 }],
      },
      {
        name: "Ask",
        cells: rows(
          ["Which figure?", "Ada", "Ada", "U-1"],
          ['=FIT.APART(Figures[#All],"Ada","Bela")', '=ROWS(FIT.NEAREST(Figures[#All],"Caro"))'],
          ["=ROWS(FIT.COMPARE(Figures[#All],Ask!$B$1,$A$6))", '=COUNTIF(Figures[Figure],"Ada")'],
          [
            '=ROWS(FIT.WEARERS(Patterns[#All],Figures[#All],"U-1"))',
            "=ROWS(FIT.WEARERS(Patterns[#All],Figures[#All],D1))",
          ],
          ["Ada was measured in spring.", "Ada"],
          ["Ada"],
        ),
      },
    ],
  };
}
