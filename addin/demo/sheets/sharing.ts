import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** Which figures share loose clothes though their bodies differ, and where two figures part. */
export function sharingSheet(book: Book): SheetContent {
  const gap = undefined;
  const blank = [gap, gap, gap, gap, gap, gap, gap];
  return {
    name: "Sharing",
    cells: [
      [title("Who only shares loose clothes?")],
      [quiet("Groups for loose clothes, by that column of Tolerances. Bodies are on the sheet Groups.")],
      [...blank, heading("Two figures"), book.asked("Ardwen")],
      [...blank, heading("and"), book.asked("Garlow")],
      [],
      [
        ...results(
          book.answer('=FIT.GROUPS(Figures[#All], Tolerances[#All], "Loose clothes")', [figuresNeeded]),
          6,
        ),
        gap,
        ...results(
          book.answer("=FIT.SHARES(Figures[#All], I3, I4, Tolerances[#All])", [
            figuresNeeded,
            chosen("figure", "I3"),
            chosen("figure", "I4"),
          ]),
          4,
        ),
      ],
      ...formatsBelow(book.figures, [gap, gap, gap, gap, "0.00", gap, gap, gap, gap, gap, "0.00"]),
    ],
    frozenRows: 6,
    columnWidths: [110, 60, 90, 120, 110, 170, 20, 110, 90, 620, 110],
    pickLists: [choices("figure", 2, 8, 2)],
  };
}
