import type { SheetContent } from "../../workbook/content.ts";
import { patterns } from "../patterns.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** What one figure can wear. */
export function wardrobeSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Wardrobe",
    cells: [
      [title("What can this figure wear?")],
      [quiet("Best first. Write the name of another figure into the cell below.")],
      [heading("Figure"), plain("Ardwen")],
      [],
      results("=FIT.WARDROBE(Patterns[#All], Figures[#All], B3, EaseRules[#All], GarmentClasses[#All])", 6),
      ...formatsBelow(patterns.length, [gap, gap, gap, gap, "0.0"]),
    ],
    frozenRows: 5,
    columnWidths: [90, 280, 130, 210, 90, 520],
  };
}
