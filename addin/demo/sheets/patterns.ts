import type { SheetContent } from "../../workbook/content.ts";
import { patternHeadings, patternRows } from "../patternsTable.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, quiet, title } from "./parts.ts";

/** The patterns of the invented maker, as the table Patterns. */
export function patternsSheet(): SheetContent {
  const rows = patternRows();
  return {
    name: "Patterns",
    cells: [
      [title("Patterns")],
      [
        quiet(
          "One row a pattern. What is not measured on the garment comes from the figure that it was drafted for.",
        ),
      ],
      patternHeadings.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 2,
    columnWidths: widthsOf(patternHeadings, rows),
    tables: [{ name: "Patterns", row: 2, column: 0, rows: rows.length + 1, columns: patternHeadings.length }],
  };
}
