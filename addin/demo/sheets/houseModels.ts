import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

/** The fewest figures to keep on the table, so that every other is near one of them. */
export function houseModelsSheet(book: Book): SheetContent {
  const gap = undefined;
  return {
    name: "House models",
    cells: [
      [title("Which figures should I keep as house models?")],
      [quiet("Reach is in tolerances: 1 for fitted clothes as they are, more where you are ready to alter.")],
      [heading("Reach"), { value: 2 }],
      [],
      results(book.answer("=FIT.BASES(Figures[#All], Tolerances[#All], B3)", [figuresNeeded]), 8),
      Array.from({ length: 8 }, () => ({ spilled: true, style: "heading" as const })),
      ...formatsBelow(book.figures, [gap, "0", gap, gap, gap, "0.0", "0.00"]),
    ],
    frozenRows: 4,
    columnWidths: [260, 80, 300, 110, 150, 110, 120, 760],
  };
}
