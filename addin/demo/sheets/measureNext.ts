import type { SheetContent } from "../../workbook/content.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** The readings to take next, and what one of them may be expected to be. */
export function measureNextSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Measure next",
    cells: [
      [title("What should I measure next?")],
      [
        quiet("Missing readings that would tell most about who shares a body, best first."),
        ...[gap, gap, gap, gap],
        quiet("What one of them may be expected to be, to check the tape against."),
      ],
      [gap, gap, gap, gap, gap, heading("Figure"), plain("Bryndle")],
      [gap, gap, gap, gap, gap, heading("Measure"), plain("Hip")],
      [],
      [
        ...results("=FIT.MEASURENEXT(Figures[#All], Tolerances[#All])", 4),
        gap,
        ...results("=FIT.EXPECTED(Figures[#All], G3, G4)", 6),
      ],
      ...formatsBelow(1, [gap, gap, gap, gap, gap, gap, gap, "0.0", "0.0", "0.0"]),
    ],
    frozenRows: 6,
    columnWidths: [150, 190, 130, 130, 30, 130, 130, 110, 110, 110, 320],
  };
}
