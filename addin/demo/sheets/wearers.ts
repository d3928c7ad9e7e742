import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded, patternsNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title, verdicts } from "./parts.ts";

/** Which figures wear one pattern. */
export function wearersSheet(book: Book): SheetContent {
  const gap = undefined;
  const needed = [figuresNeeded, patternsNeeded, chosen("pattern", "B3")];
  return {
    name: "Wearers",
    cells: [
      [title("Which figures wear this dress?")],
      [quiet("Best first. Write the code of another pattern into the cell below.")],
      [heading("Pattern"), book.asked("D-1")],
      [gap, gap, gap, gap, gap, gap, heading("Bodies in the place of figures")],
      [
        ...results(
          book.answer(
            "=FIT.WEARERS(Patterns[#All], Figures[#All], B3, EaseRules[#All], GarmentClasses[#All])",
            needed,
          ),
          5,
        ),
        gap,
        ...results(
          book.answer(
            "=FIT.WEARERS(Patterns[#All], Figures[#All], B3, EaseRules[#All], GarmentClasses[#All], , Tolerances[#All])",
            needed,
          ),
          6,
        ),
      ],
      ...formatsBelow(book.figures, [gap, verdicts, gap, "0.0", gap, gap, gap, verdicts, gap, "0.0"]),
    ],
    frozenRows: 5,
    columnWidths: [110, 130, 210, 90, 520, 30, 320, 130, 210, 90, 520, 110],
    pickLists: [choices("pattern", 2, 1)],
  };
}
