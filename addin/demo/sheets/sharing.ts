import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** What two figures can share, and where they part. */
export function sharingSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Sharing",
    cells: [
      [title("What can two figures share?")],
      [
        quiet(
          "Parts of the body, and clothes by the columns of Tolerances. Write other names into the two cells.",
        ),
      ],
      [heading("Two figures"), book.asked("Ardwen")],
      [heading("and"), book.asked("Garlow")],
      [],
      results(
        book.answer("=FIT.SHARES(Figures[#All], B3, B4, Tolerances[#All])", [
          figuresNeeded,
          chosen("figure", "B3"),
          chosen("figure", "B4"),
        ]),
        4,
      ),
      ...formatsBelow(20, [gap, gap, gap, "0.00"]),
    ],
    frozenRows: 6,
    columnWidths: [150, 130, 620, 120],
    pickLists: [choices("figure", 2, 1, 2)],
  };
}
