import type { SheetContent } from "../../workbook/content.ts";
import { heading, quiet, title, wrapped } from "./parts.ts";

/** What the workbook is and how to begin. */
export function startSheet(): SheetContent {
  return {
    name: "Start",
    cells: [
      [title("Measure Book: a workbook to try things in")],
      [quiet("The maker, her figures and all readings are invented. Change whatever you like.")],
      [],
      [heading("What is here")],
      [
        wrapped(
          "Figures: a measurement chart. One row is one figure, one column is one measure or a remark.",
        ),
      ],
      [wrapped("Tolerances: how far two readings may differ and still count as the same body.")],
      [wrapped("Compare: two figures side by side. Write other names into the two cells at the top.")],
      [wrapped("Groups: which figures share a body, which come closest to one figure, and how they join.")],
      [wrapped("Flags: readings that deserve a second look. Some mistakes stand in the chart on purpose.")],
      [
        wrapped(
          "Small sums: cloth over a body, ease, openings, inches and millimetres, steps between sizes.",
        ),
      ],
      [],
      [heading("How to use it")],
      [
        wrapped(
          "1. Look at Flags. Find a flagged reading in Figures and type the suggested one: the flag goes.",
        ),
      ],
      [
        wrapped(
          "2. Look at Groups while you mend: figures with a wrong reading stand alone until it is right.",
        ),
      ],
      [
        wrapped(
          "3. Type a figure of your own below the last row of Figures. Leave empty what you have not measured.",
        ),
      ],
      [
        wrapped(
          "4. A unit in brackets, such as Bust (in), tells how a column is read. Write inches as 5 3/8 if you like.",
        ),
      ],
      [
        wrapped(
          "5. Everything is a formula: select a cell to see how it is written, and copy it into your own sheets.",
        ),
      ],
      [],
      [heading("Take care")],
      [
        wrapped(
          "Garments for figures that children play with can have small parts and cords that are a danger to them. Follow the toy safety rules of your country, and ask someone qualified.",
        ),
      ],
    ],
    columnWidths: [720],
  };
}
