import type { SheetContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Which figures wear one pattern. */
export function wearersSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Wearers",
    cells: [
      [title("Which figures wear this dress?")],
      [quiet("Best first. Write the code of another pattern into the cell below.")],
      [heading("Pattern"), plain("D-1")],
      [],
      results("=FIT.WEARERS(Patterns[#All], Figures[#All], B3, EaseRules[#All], GarmentClasses[#All])", 5),
      ...formatsBelow(demoRows().length, [gap, gap, gap, "0.0"]),
    ],
    frozenRows: 5,
    columnWidths: [110, 130, 210, 90, 520],
  };
}
