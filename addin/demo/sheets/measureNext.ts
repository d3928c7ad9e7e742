import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** The readings to take next, and what one of them may be expected to be. */
export function measureNextSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Measure next",
    cells: [
      [title("What should I measure next?")],
      [
        quiet("Missing readings that would tell most about who shares a body, best first."),
        ...[gap, gap, gap, gap],
        quiet("What one of them may be expected to be, to check the tape against."),
      ],
      [gap, gap, gap, gap, gap, heading("Figure"), book.asked("Bryndle")],
      [gap, gap, gap, gap, gap, heading("Measure"), book.asked("Hip")],
      [],
      [
        ...results(book.answer("=FIT.MEASURENEXT(Figures[#All], Tolerances[#All])", [figuresNeeded]), 4),
        gap,
        ...results(
          book.answer("=FIT.EXPECTED(Figures[#All], G3, G4)", [
            figuresNeeded,
            chosen("figure", "G3"),
            chosen("measure", "G4"),
          ]),
          6,
        ),
      ],
      ...formatsBelow(1, [gap, gap, gap, gap, gap, gap, gap, "0.0", "0.0", "0.0"]),
    ],
    frozenRows: 6,
    columnWidths: [150, 190, 130, 130, 30, 130, 130, 110, 110, 110, 320],
    pickLists: [choices("figure", 2, 6), choices("measure", 3, 6)],
  };
}
