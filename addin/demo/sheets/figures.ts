import type { SheetContent } from "../../workbook/content.ts";
import { demoRows, figureHeadings } from "../figuresTable.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, quiet, title } from "./parts.ts";

/** The chart of the invented maker, as the table Figures. */
export function figuresSheet(): SheetContent {
  const rows = demoRows();
  return {
    name: "Figures",
    cells: [
      [title("Figures")],
      [
        quiet(
          "One row a figure. Lengths are in the unit of the heading; empty, ? and - mean not measured yet.",
        ),
      ],
      figureHeadings.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 1,
    columnWidths: widthsOf(figureHeadings, rows),
    tables: [{ name: "Figures", row: 2, column: 0, rows: rows.length + 1, columns: figureHeadings.length }],
  };
}
