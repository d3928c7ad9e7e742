import type { SheetContent } from "../../workbook/content.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** One row a measure of the body, and about a dozen more; a blank cell with a number format does no harm. */
const rows = 26;

/** The print scale from one figure to another, and what it leaves. */
export function resizeSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Resize",
    cells: [
      [title("Print it larger or smaller?")],
      [quiet("Isolmay is taller than Ardwen and slimmer at the hip: no print scale will do. Try Gwendry.")],
      [heading("Drafted for"), plain("Ardwen")],
      [heading("To be worn by"), plain("Isolmay")],
      [
        heading("Measures that count"),
        gap,
        quiet("Empty: all that decide fit. Or write some: Bust, Waist, Hip"),
      ],
      [heading("Seam allowance"), plain("6 mm")],
      [],
      results("=FIT.RESIZE(Figures[#All], B3, B4, B5, B6, Tolerances[#All])", 8),
      ...formatsBelow(rows, [gap, "0.00", "0.00", "0.0", "0.00", "0.00", "0.00"]),
    ],
    frozenRows: 8,
    columnWidths: [190, 90, 90, 90, 90, 90, 110, 700],
  };
}
