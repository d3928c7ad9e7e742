import { garmentClassCells } from "../../chart/readGarmentClasses.ts";
import type { SheetContent } from "../../workbook/content.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, plain, quiet, title } from "./parts.ts";

/** The garment classes that come with Measure Book, as the table GarmentClasses. */
export function garmentClassesSheet(): SheetContent {
  const [headings = [], ...classes] = garmentClassCells();
  const texts = headings.map(String);
  const rows = classes.map((row) => row.map(plain));
  return {
    name: "Garment classes",
    cells: [
      [title("Garment classes")],
      [
        quiet(
          "What you can write under Garment class. Change a class or add your own below: the verdicts follow.",
        ),
      ],
      texts.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 1,
    columnWidths: widthsOf(texts, rows),
    tables: [{ name: "GarmentClasses", row: 2, column: 0, rows: rows.length + 1, columns: texts.length }],
  };
}
