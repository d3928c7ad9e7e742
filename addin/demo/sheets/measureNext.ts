import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** The readings to take next. */
export function measureNextSheet(book: Book): SheetContent {
  return {
    name: "Measure next",
    cells: [
      [title("What should I measure next?")],
      [quiet("Missing readings that would tell most about who shares a body, best first.")],
      [],
      results(book.answer("=FIT.MEASURENEXT(Figures[#All], Tolerances[#All])", [figuresNeeded]), 5),
    ],
    frozenRows: 4,
    columnWidths: [150, 190, 130, 130, 430],
  };
}

/** What one reading may be expected to be. */
export function expectedSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Expected",
    cells: [
      [title("What ought the tape to say?")],
      [
        quiet(
          "What a reading may be expected to be, from all others. Write another name and another measure.",
        ),
      ],
      [heading("Figure"), book.asked("Bryndle")],
      [heading("Measure"), book.asked("Hip")],
      [],
      results(
        book.answer("=FIT.EXPECTED(Figures[#All], B3, B4)", [
          figuresNeeded,
          chosen("figure", "B3"),
          chosen("measure", "B4"),
        ]),
        6,
      ),
      ...formatsBelow(1, [gap, gap, "0.0", "0.0", "0.0"]),
    ],
    frozenRows: 6,
    columnWidths: [130, 190, 110, 110, 110, 430],
    pickLists: [choices("figure", 2, 1), choices("measure", 3, 1)],
  };
}
