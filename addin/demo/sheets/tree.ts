import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { figuresNeeded } from "./book.ts";
import { formatsBelow, quiet, results, title } from "./parts.ts";

/** The order in which figures join. */
export function treeSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "Tree",
    cells: [
      [title("Which figures join first?")],
      [
        quiet(
          "Closest first. Up to once the limit, all that are joined share a body. Groups, in the pane, draws it.",
        ),
      ],
      [],
      results(book.answer("=FIT.TREE(Figures[#All], Tolerances[#All])", [figuresNeeded]), 6),
      ...formatsBelow(book.figures, ["0", gap, gap, "0.00", "0"]),
    ],
    frozenRows: 4,
    columnWidths: [80, 170, 170, 160, 110, 760],
  };
}
