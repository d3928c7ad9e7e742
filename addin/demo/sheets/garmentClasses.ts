import { garmentClassCells } from "../../chart/readGarmentClasses.ts";
import type { SheetContent } from "../../workbook/content.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, plain, quiet, title } from "./parts.ts";

/** The garment classes, to look up, as the table GarmentClasses. */
export function garmentClassesSheet(): SheetContent {
  const [headings = [], ...classes] = garmentClassCells();
  const texts = headings.map(String);
  const rows = classes.map((row) => row.map(plain));
  return {
    name: "Garment classes",
    cells: [
      [title("Garment classes")],
      [quiet("To look up: what you can write under Garment class, by its name or one of its other names.")],
      texts.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 1,
    columnWidths: widthsOf(texts, rows),
    tables: [{ name: "GarmentClasses", row: 2, column: 0, rows: rows.length + 1, columns: texts.length }],
  };
}
