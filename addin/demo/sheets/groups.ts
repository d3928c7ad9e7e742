import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** Shared bodies, the closest figures to one, and the order in which figures join. */
export function groupsSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Groups",
    cells: [
      [title("Who shares a body")],
      [quiet("Any two figures of one group are within tolerance of each other. Draft for the base figure.")],
      [
        heading("Groups"),
        ...[gap, gap, gap, gap, gap, gap],
        heading("Closest to"),
        book.asked("Ardwen"),
        gap,
        gap,
        gap,
        heading("How they join, closest first"),
      ],
      [
        ...results(book.answer("=FIT.GROUPS(Figures[#All], Tolerances[#All])", [figuresNeeded]), 6),
        gap,
        ...results(
          book.answer("=FIT.NEAREST(Figures[#All], I3, 6, Tolerances[#All])", [
            figuresNeeded,
            chosen("figure", "I3"),
          ]),
          4,
        ),
        gap,
        ...results(book.answer("=FIT.TREE(Figures[#All], Tolerances[#All])", [figuresNeeded]), 5),
      ],
      ...formatsBelow(book.figures, [
        ...[gap, "0", gap, gap, "0.00", gap, gap],
        ...[gap, "0.00", gap, gap, gap],
        ...[gap, gap, gap, "0.00", gap],
      ]),
    ],
    frozenRows: 4,
    columnWidths: [110, 60, 90, 120, 110, 170, 20, 110, 90, 150, 90, 30, 110, 120, 120, 130, 70],
    pickLists: [choices("figure", 2, 8)],
  };
}
