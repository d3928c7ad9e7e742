import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded, patternsNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title, verdicts } from "./parts.ts";

/** What one figure can wear. */
export function wardrobeSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Wardrobe",
    cells: [
      [title("What can this figure wear?")],
      [quiet("Best first. Write the name of another figure into the cell below.")],
      [heading("Figure"), book.asked("Ardwen")],
      [],
      results(
        book.answer(
          "=FIT.WARDROBE(Patterns[#All], Figures[#All], B3, EaseRules[#All], GarmentClasses[#All])",
          [figuresNeeded, patternsNeeded, chosen("figure", "B3")],
        ),
        6,
      ),
      ...formatsBelow(book.patterns, [gap, gap, verdicts, gap, "0.0"]),
    ],
    frozenRows: 5,
    columnWidths: [90, 280, 130, 210, 90, 520],
    pickLists: [choices("figure", 2, 1)],
  };
}
