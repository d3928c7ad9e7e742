import type { SheetContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Where two figures part, and which figures share loose clothes though their bodies differ. */
export function sharingSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Sharing",
    cells: [
      [title("Who only shares loose clothes?")],
      [
        quiet(
          "Left: what two figures can share, and why not; write other names into the cells. Right: groups that share loose clothes, by that column of Tolerances.",
        ),
      ],
      [heading("Figure"), plain("Ardwen"), gap, gap, gap, heading("Groups for loose clothes")],
      [heading("Other"), plain("Garlow")],
      [],
      [
        ...results("=FIT.SHARES(Figures[#All], B3, B4, Tolerances[#All])", 4),
        gap,
        ...results('=FIT.GROUPS(Figures[#All], Tolerances[#All], "Loose clothes")', 5),
      ],
      ...formatsBelow(demoRows().length, [gap, gap, gap, "0.00", gap, gap, gap, gap, gap, "0.00"]),
    ],
    frozenRows: 6,
    columnWidths: [150, 90, 480, 110, 30, 110, 70, 110, 150, 110],
  };
}
