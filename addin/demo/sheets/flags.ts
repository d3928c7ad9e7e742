import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { figuresNeeded } from "./book.ts";
import { quiet, results, title } from "./parts.ts";

/** Readings that deserve a second look. */
export function flagsSheet(book: Book): SheetContent {
  return {
    name: "Flags",
    cells: [
      [title("Readings to look at again")],
      [quiet("Worst first. Nothing is changed for you; some flags are only questions.")],
      [],
      results(book.answer("=FIT.FLAGS(Figures[#All])", [figuresNeeded]), 6),
    ],
    frozenRows: 4,
    columnWidths: [110, 140, 90, 220, 860, 90],
  };
}
