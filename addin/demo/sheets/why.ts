import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded, patternsNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title, verdicts } from "./parts.ts";

/** No garment has more checks than this; a blank cell with a number format does no harm. */
const rows = 24;

/** Why one pattern goes on one figure or not, and what to change. */
export function whySheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Why",
    cells: [
      [title("Why not? And what do I change?")],
      [
        quiet(
          "Every check of one pattern on one figure. Write another code and another name into the cells.",
        ),
      ],
      [heading("Pattern"), book.asked("D-1")],
      [heading("Figure"), book.asked("Pellory")],
      [],
      results(
        book.answer(
          "=FIT.REASONS(Patterns[#All], Figures[#All], B3, B4, EaseRules[#All], GarmentClasses[#All])",
          [figuresNeeded, patternsNeeded, chosen("pattern", "B3"), chosen("figure", "B4")],
        ),
        6,
      ),
      ...formatsBelow(rows, [gap, "0.0", "0.0", "0.0", verdicts]),
    ],
    frozenRows: 6,
    columnWidths: [280, 90, 90, 90, 430, 430],
    pickLists: [choices("pattern", 2, 1), choices("figure", 3, 1)],
  };
}
