import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** One row a measure of the body, and about a dozen more; a blank cell with a number format does no harm. */
const rows = 26;

/** The print scale from one figure to another, and what it leaves. */
export function resizeSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Resize",
    cells: [
      [title("Print it larger or smaller?")],
      [
        quiet(
          book.says(
            "Isolmay is taller than Ardwen and slimmer at the hip: a print has to be altered there. Try Gwendry.",
            "The print scale that suits best, and what it leaves to alter by hand.",
          ),
        ),
      ],
      [heading("Drafted for"), book.asked("Ardwen")],
      [heading("To be worn by"), book.asked("Isolmay")],
      [
        heading("Measures that count"),
        gap,
        quiet("Empty: all that decide fit. Or write a garment, Bodice, or some measures: Bust, Waist, Hip"),
      ],
      [heading("Seam allowance"), book.asked("6 mm")],
      [],
      results(
        book.answer("=FIT.RESIZE(Figures[#All], B3, B4, B5, B6, Tolerances[#All])", [
          figuresNeeded,
          chosen("figure", "B3"),
          chosen("figure", "B4"),
        ]),
        8,
      ),
      ...formatsBelow(rows, [gap, "0.00", "0.00", "0.0", "0.00", "0.00", "0.00"]),
    ],
    frozenRows: 8,
    columnWidths: [190, 90, 90, 90, 90, 90, 110, 700, 400],
    pickLists: [choices("figure", 2, 1, 2)],
  };
}
