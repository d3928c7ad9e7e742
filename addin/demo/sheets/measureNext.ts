import type { SheetContent } from "../../workbook/content.ts";
import { quiet, results, title } from "./parts.ts";

/** The readings to take next. */
export function measureNextSheet(): SheetContent {
  return {
    name: "Measure next",
    cells: [
      [title("What should I measure next?")],
      [
        quiet(
          "Missing readings that would tell most about who shares a body, best first. Take one, type it into Figures, and it goes.",
        ),
      ],
      [],
      results("=FIT.NEXT(Figures[#All], Tolerances[#All])", 4),
    ],
    frozenRows: 4,
    columnWidths: [130, 150, 110, 110],
  };
}
