import type { SheetContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { formatsBelow, heading, plain, quiet, results, title } from "./parts.ts";

/** Shared bodies, the closest figures to one, and the order in which figures join. */
export function groupsSheet(): SheetContent {
  const gap = undefined;
  return {
    name: "Groups",
    cells: [
      [title("Who shares a body")],
      [quiet("Any two figures of one group are within tolerance of each other. Draft for the base figure.")],
      [
        heading("Groups"),
        gap,
        gap,
        gap,
        gap,
        gap,
        heading("Closest to"),
        plain("Ardwen"),
        gap,
        gap,
        gap,
        heading("How they join, closest first"),
      ],
      [
        ...results("=FIT.GROUPS(Figures[#All], Tolerances[#All])", 5),
        gap,
        ...results("=FIT.NEAREST(Figures[#All], H3, 6, Tolerances[#All])", 4),
        gap,
        ...results("=FIT.TREE(Figures[#All], Tolerances[#All])", 5),
      ],
      ...formatsBelow(demoRows().length, [
        ...[gap, gap, gap, gap, "0.00", gap],
        ...[gap, "0.00", gap, gap, gap],
        ...[gap, gap, gap, "0.00", gap],
      ]),
    ],
    frozenRows: 4,
    columnWidths: [110, 70, 110, 150, 110, 30, 110, 90, 150, 90, 30, 60, 120, 120, 130, 70],
  };
}
