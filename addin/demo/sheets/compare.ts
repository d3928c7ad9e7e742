import type { SheetContent } from "../../workbook/content.ts";
import { readingColumns } from "../figuresTable.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Two figures side by side. */
export function compareSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Compare",
    cells: [
      [title("Compare two figures")],
      [quiet("What changes from one figure to the other. “Of tolerance” of 1 or less counts as the same.")],
      [heading("From"), plain("Ardwen")],
      [heading("To"), plain("Garlow")],
      [],
      results("=FIT.COMPARE(Figures[#All], B3, B4, Tolerances[#All])", 6),
      ...formatsBelow(readingColumns.length, [gap, gap, gap, gap, "0.0", "0.00"]),
    ],
    columnWidths: [160, 110, 110, 110, 110, 110],
  };
}
