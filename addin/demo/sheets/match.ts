import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { figuresNeeded, patternsNeeded } from "./book.ts";
import { formatsBelow, quiet, results, title, verdicts } from "./parts.ts";

/** Columns that are made ready; further figures come without. */
const mostColumns = 40;

/** Every pattern on every figure. */
export function matchSheet(book: Book): SheetContent {
  return {
    name: "Match",
    cells: [
      [title("Which garment goes on which figure")],
      [
        quiet(
          "Best to worst: fits, snug, loose, too close to call, not known, too long, too short, too loose, too tight, will not go on.",
        ),
      ],
      [],
      results(
        book.answer("=FIT.WHATFITS(Patterns[#All], Figures[#All], EaseRules[#All], GarmentClasses[#All])", [
          figuresNeeded,
          patternsNeeded,
        ]),
        1 + Math.min(book.figures, mostColumns),
      ),
      ...formatsBelow(book.patterns, [
        undefined,
        ...Array.from({ length: Math.min(book.figures, mostColumns) }, (): typeof verdicts => verdicts),
      ]),
    ],
    frozenRows: 4,
    frozenColumns: 1,
    columnWidths: [84, ...Array.from({ length: Math.min(book.figures, mostColumns) }, () => 136)],
  };
}
