import type { SheetContent } from "../../workbook/content.ts";
import { readingColumns } from "../figuresTable.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** Two figures side by side. */
export function compareSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Compare",
    cells: [
      [title("Compare two figures")],
      [quiet("What changes from one figure to the other. “Of tolerance” of 1 or less counts as the same.")],
      [heading("From"), book.asked("Ardwen")],
      [heading("To"), book.asked("Garlow")],
      [],
      results(
        book.answer("=FIT.COMPARE(Figures[#All], B3, B4, Tolerances[#All])", [
          figuresNeeded,
          chosen("figure", "B3"),
          chosen("figure", "B4"),
        ]),
        7,
      ),
      ...formatsBelow(readingColumns.length, [gap, gap, gap, gap, "0.0", "0.00"]),
    ],
    columnWidths: [160, 110, 110, 110, 110, 110, 260],
    pickLists: [choices("figure", 2, 1, 2)],
  };
}
