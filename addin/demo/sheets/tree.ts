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
          "Closest first. Height is in tolerances: up to 1 the joined figures share a body. Groups, in the pane, draws it as a tree.",
        ),
      ],
      [],
      results(book.answer("=FIT.TREE(Figures[#All], Tolerances[#All])", [figuresNeeded]), 5),
      ...formatsBelow(book.figures, [gap, gap, gap, "0.00", gap]),
    ],
    frozenRows: 4,
    columnWidths: [140, 170, 170, 160, 110],
  };
}
