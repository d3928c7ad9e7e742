import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** The figures whose bodies come closest to one. */
export function closestSheet(book: Book): SheetContent {
  const gap = undefined;
  const figures = 12;
  return {
    name: "Closest",
    cells: [
      [title("Whose body comes closest?")],
      [
        quiet(
          "Distance is the worst difference, in tolerances: up to 1 is the same body. Write another name below.",
        ),
      ],
      [heading("Figure"), book.asked("Ardwen")],
      [],
      results(
        book.answer(`=FIT.NEAREST(Figures[#All], B3, ${String(figures)}, Tolerances[#All])`, [
          figuresNeeded,
          chosen("figure", "B3"),
        ]),
        5,
      ),
      ...formatsBelow(figures, [gap, "0.00", gap, gap, gap]),
    ],
    frozenRows: 5,
    columnWidths: [140, 150, 190, 120, 760],
    pickLists: [choices("figure", 2, 1)],
  };
}
