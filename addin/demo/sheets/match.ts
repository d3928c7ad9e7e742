import type { SheetContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { quiet, results, title } from "./parts.ts";

/** Every pattern on every figure. */
export function matchSheet(): SheetContent {
  return {
    name: "Match",
    cells: [
      [title("Which garment goes on which figure")],
      [
        quiet(
          "Best to worst: fits, snug, loose, too close to call, not known, too long, too short, too loose, too tight, will not go on.",
        ),
      ],
      [],
      results(
        "=FIT.WHATFITS(Patterns[#All], Figures[#All], EaseRules[#All], GarmentClasses[#All])",
        1 + demoRows().length,
      ),
    ],
    frozenRows: 4,
    frozenColumns: 1,
    columnWidths: [84, ...demoRows().map(() => 125)],
  };
}
