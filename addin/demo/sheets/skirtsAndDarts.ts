import type { Cell } from "../../chart/cell.ts";
import type { SheetContent } from "../../workbook/content.ts";
import { formatsBelow, formula, heading, plain, quiet, results, title } from "./parts.ts";

/** Parts of a circle that skirts are cut as. */
const circles: readonly (readonly [words: string, part: number])[] = [
  ["Full circle", 1],
  ["Three quarters", 0.75],
  ["Half circle", 0.5],
  ["Quarter circle", 0.25],
];

const dartInputs: readonly (readonly [question: string, answer: Cell])[] = [
  ["Finished hip or bust (mm)", 202],
  ["Finished waist (mm)", 140],
  ["Darts, all around", 4],
  ["Scale of the figure, 1 to", 4.1],
  ["From waist to point of the dart (mm)", 28],
];

/** The radius of flared skirts, and the darts of fitted ones. */
export function skirtsAndDartsSheet(): SheetContent {
  const gap = undefined;
  const firstCircle = 8;
  const firstInput = firstCircle + circles.length + 1;
  const input = (i: number) => `B${String(firstInput + i)}`;
  return {
    name: "Skirts and darts",
    cells: [
      [title("Flared skirts, and darts for fitted ones")],
      [quiet("All lengths in mm. Change the numbers.")],
      [heading("Waist of the figure (mm)"), plain(134)],
      [heading("Seam allowance at the waist (mm)"), plain(5)],
      [heading("Ease at the waist (mm)"), plain(4)],
      [],
      ["Flared skirt", "Part of a circle", "Radius to cut the waist at (mm)"].map(heading),
      ...circles.map(([words, part], i) => [
        plain(words),
        plain(part),
        formula(`=FIT.FLARE(B3, B${String(firstCircle + i)}, B4, B5)`, "0.0"),
      ]),
      [],
      ...dartInputs.map(([question, answer]) => [heading(question), plain(answer)]),
      [],
      results(`=FIT.DARTS(${dartInputs.map((_, i) => input(i)).join(", ")})`, 4),
      ...formatsBelow(4, [gap, "0.0"]),
      ...formatsBelow(1, [gap, "0"]),
      ...formatsBelow(2, [gap, "0.0"]),
    ],
    columnWidths: [320, 130, 280, 520],
  };
}
