import type { SheetContent } from "../../workbook/content.ts";
import { formula, quiet, title } from "./parts.ts";

/** Readings that deserve a second look. */
export function flagsSheet(): SheetContent {
  return {
    name: "Flags",
    cells: [
      [title("Readings to look at again")],
      [quiet("Worst first. Nothing is changed for you; some flags are only questions.")],
      [],
      [formula("=FIT.FLAGS(Figures[#All])")],
    ],
    frozenRows: 4,
    columnWidths: [110, 130, 90, 190, 860, 90],
  };
}
