import { gradePieces } from "../../chart/gradeBlocks.ts";
import type { SheetContent } from "../../workbook/content.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

const points = gradePieces.reduce((sum, { points: corners }) => sum + corners.length, 0);

/** How far every point of every piece moves from one figure to another. */
export function gradeSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Grade",
    cells: [
      [title("From one figure to another, point by point")],
      [
        quiet(
          "By the rules of the sheet Grade rules. Write several names with commas between them for more columns.",
        ),
      ],
      [heading("Drafted for"), plain("Ardwen")],
      [heading("To be worn by"), plain("Isolmay")],
      [],
      results("=FIT.GRADE(Figures[#All], B3, B4, GradeRules[#All], Tolerances[#All])", 6),
      ...formatsBelow(points + 1, [gap, gap, "0.0", "0.0"]),
    ],
    frozenRows: 6,
    columnWidths: [170, 190, 90, 90, 70, 520],
  };
}
