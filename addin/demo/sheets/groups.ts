import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { figuresNeeded } from "./book.ts";
import { formatsBelow, quiet, results, title } from "./parts.ts";

/** Which figures share a body. */
export function groupsSheet(book: Book): SheetContent {
  return {
    name: "Groups",
    cells: [
      [title("Who shares a body?")],
      [quiet("Any two figures of one group are within tolerance of each other. Draft for the base figure.")],
      [],
      ...groupRows(book, "=FIT.GROUPS(Figures[#All], Tolerances[#All])"),
    ],
    frozenRows: 4,
    columnWidths: groupWidths,
  };
}

/** Which figures share loose clothes though their bodies differ. */
export function looseClothesSheet(book: Book): SheetContent {
  return {
    name: "Loose clothes",
    cells: [
      [title("Who only shares loose clothes?")],
      [quiet("Groups for loose clothes, by that column of Tolerances. Bodies are on the sheet Groups.")],
      [],
      ...groupRows(book, '=FIT.GROUPS(Figures[#All], Tolerances[#All], "Loose clothes")'),
    ],
    frozenRows: 4,
    columnWidths: groupWidths,
  };
}

const groupWidths = [120, 70, 120, 170, 120, 760];

function groupRows(book: Book, formula: string): SheetContent["cells"] {
  const gap = undefined;
  return [
    results(book.answer(formula, [figuresNeeded]), groupWidths.length),
    ...formatsBelow(book.figures, [gap, "0", gap, gap, "0.00", gap]),
  ];
}
