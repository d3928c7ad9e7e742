import type { SheetContent } from "../../workbook/content.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Invented sizes of a small mannequin, in mm. The step to the last but one is wider; the last is taller, not wider. */
const sizes: readonly (readonly [size: string, ...readings: number[]])[] = [
  ["Small", 172, 126, 184, 86, 42, 136],
  ["Medium", 182, 135, 194, 88, 44, 140],
  ["Large", 192, 144, 204, 90, 46, 144],
  ["Extra large", 206, 156, 218, 92, 48, 148],
  ["Tall", 206, 148, 214, 104, 54, 168],
];

const headings = [
  ...["Size", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
  ...["Back waist (mm)", "Waist to hip (mm)", "Waist to knee (mm)"],
];

/** A run of sizes: its steps, where they are uneven, where a print has to be altered, and the movement of the points. */
export function sizesSheet(): SheetContent {
  const gap = undefined;
  const length = "0.0";
  const chart = `A4:G${String(4 + sizes.length)}`;
  const stepsAt = 4 + sizes.length + 2;
  const gradeAt = stepsAt + 1 + sizes.length + 1;
  return {
    name: "Sizes",
    cells: [
      [title("A run of sizes")],
      [
        quiet(
          "Steps from each size to the next, and whether a print will do for each. Change the readings and see.",
        ),
      ],
      [],
      headings.map(heading),
      ...sizes.map((row) => row.map(plain)),
      [],
      [heading("Measures that count"), gap, quiet("Empty: all. Or write a garment, such as Bodice")],
      results(`=FIT.STEPS(${chart}, B${String(stepsAt)}, "yes")`, 11),
      ...formatsBelow(sizes.length - 1, [
        ...[gap, gap, length, length, length, length, length, length],
        ...[gap, length, length, gap],
      ]),
      [],
      [heading("Drafted for"), plain("Medium")],
      [heading("To be graded to"), plain("Small, Large, Extra large")],
      [heading("Pieces"), plain("Fitted skirt")],
      results(
        `=FIT.GRADE(${chart}, B${String(gradeAt)}, B${String(gradeAt + 1)}, B${String(gradeAt + 2)})`,
        10,
      ),
      ...formatsBelow(12, [gap, gap, length, length, length, length, length, length]),
    ],
    columnWidths: [190, 190, 130, 130, 150, 160, 170, 160, 110, 110, 110, 700, 400],
  };
}
