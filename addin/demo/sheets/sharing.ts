import type { SheetContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Which figures share loose clothes though their bodies differ, and where two figures part. */
export function sharingSheet(): SheetContent {
  const gap = undefined;
  const blank = [gap, gap, gap, gap, gap, gap];
  return {
    name: "Sharing",
    cells: [
      [title("Who only shares loose clothes?")],
      [quiet("Groups for loose clothes, by that column of Tolerances. Bodies are on the sheet Groups.")],
      [...blank, heading("Two figures"), plain("Ardwen")],
      [...blank, heading("and"), plain("Garlow")],
      [],
      [
        ...results('=FIT.GROUPS(Figures[#All], Tolerances[#All], "Loose clothes")', 5),
        gap,
        ...results("=FIT.SHARES(Figures[#All], H3, H4, Tolerances[#All])", 4),
      ],
      ...formatsBelow(demoRows().length, [gap, gap, gap, gap, "0.00", gap, gap, gap, gap, "0.00"]),
    ],
    frozenRows: 6,
    columnWidths: [110, 70, 110, 150, 110, 30, 150, 90, 620, 110],
  };
}
