import { garmentClassCells } from "../../chart/readGarmentClasses.ts";
import type { SheetContent } from "../../workbook/content.ts";
import { plain } from "./parts.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet } from "./tableSheet.ts";
import { wornOnParts, endPlaces, sleeveKinds } from "../../chart/garmentTerms.ts";

const columns: Readonly<Record<string, Omit<TableColumn, "heading">>> = {
  "Worn on": {
    note: "The part of the figure that it is worn on: it decides how it is put on.",
    choices: wornOnParts,
  },
  "Seam edges": { note: "Cut edges at the seams that a girth is altered at: two side seams have four." },
  Openings: { note: "Openings that must be known before it can be said to go on: neck, cuff, hem, waist." },
  Sleeves: {
    note: "Those that the class usually has. Empty: it depends on the garment.",
    choices: sleeveKinds,
  },
  "Ends at": { note: "Where it usually ends. Empty: it depends on the garment.", choices: endPlaces },
  "Also called": {
    note: "Other names for the class, with commas between them. They can be written under Garment class too.",
  },
};

/** The garment classes that come with Measure Book, as the table GarmentClasses. */
export function garmentClassesSheet(): SheetContent {
  const [headings = [], ...classes] = garmentClassCells();
  return tableSheet({
    name: "Garment classes",
    says: "What you can write under Garment class. Change a class or add your own below: the verdicts follow.",
    table: "GarmentClasses",
    columns: headings.map((heading) => ({ heading: String(heading), ...columns[String(heading)] })),
    rows: classes.map((row) => row.map(plain)),
    frozenColumns: 1,
  });
}
