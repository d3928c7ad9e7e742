import type { SheetContent } from "../../workbook/content.ts";
import { quiet, results, title } from "./parts.ts";

/** Readings that deserve a second look. */
export function flagsSheet(): SheetContent {
  return {
    name: "Flags",
    cells: [
      [title("Readings to look at again")],
      [quiet("Worst first. Nothing is changed for you; some flags are only questions.")],
      [],
      results("=FIT.FLAGS(Figures[#All])", 6),
    ],
    frozenRows: 4,
    columnWidths: [110, 130, 90, 190, 860, 90],
  };
}
