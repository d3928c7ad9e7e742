import { gradePieces } from "../../chart/gradeBlocks.ts";
import type { SheetContent } from "../../workbook/content.ts";
import type { Book } from "./book.ts";
import { choices, chosen, figuresNeeded } from "./book.ts";
import { formatsBelow, heading, quiet, results, title } from "./parts.ts";

const points = gradePieces.reduce((sum, { points: corners }) => sum + corners.length, 0);
const garments = new Set(gradePieces.map(({ garment }) => garment)).size;

/** How far every point of every piece moves from one figure to another. */
export function gradeSheet(book: Book): SheetContent {
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
      [heading("Drafted for"), book.asked("Ardwen")],
      [heading("To be worn by"), book.asked("Isolmay")],
      [],
      results(
        book.answer("=FIT.GRADE(Figures[#All], B3, B4, GradeRules[#All], Tolerances[#All])", [
          figuresNeeded,
          chosen("figure", "B3"),
          chosen("figure", "B4"),
        ]),
        7,
      ),
      ...formatsBelow(points + garments + 1, [gap, gap, "0.0", "0.0"]),
    ],
    frozenRows: 6,
    columnWidths: [170, 190, 90, 90, 70, 520, 760],
    pickLists: [choices("figure", 2, 1, 2)],
  };
}
