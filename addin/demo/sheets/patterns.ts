import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { patternHeadings, patternRows } from "../patternsTable.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet } from "./tableSheet.ts";
import { opensWords } from "../../chart/readClosure.ts";
import { endPlaces, sleeveKinds } from "../../chart/garmentTerms.ts";

/** What belongs into a column, by its heading without unit. */
const columns: readonly TableColumn[] = [
  {
    heading: "Pattern",
    note: "A short code of its own. Other rows and sheets call the pattern by it.",
    letters: 12,
  },
  { heading: "Title", letters: 28 },
  {
    heading: "Garment class",
    note: "One of the sheet Garment classes: it decides how the garment is put on and which ease is right.",
    choices: { table: "GarmentClasses", heading: "Garment class" },
    letters: 22,
  },
  {
    heading: "Drafted for",
    note: "The figure that it was drafted for. What you leave empty on the right is taken from it, with the usual ease.",
    choices: { table: "Figures", heading: "Figure" },
    letters: 16,
  },
  { heading: "Stretch", note: "How far the cloth stretches around the body, in percent. Woven cloth: 0%." },
  { heading: "Thickness", note: "Of one layer of the cloth." },
  {
    heading: "Worn over",
    note: "The codes of the patterns worn directly under it, with commas between them.",
    choices: { table: "Patterns", heading: "Pattern" },
  },
  {
    heading: "Opens",
    note: "Where it opens: none, back, front, shoulder, side, waist, or full length, as a wrap does.",
    choices: opensWords,
  },
  {
    heading: "Opening length",
    note: "How long that opening is. Empty where there is none, or one of full length.",
  },
  { heading: "Neck opening", note: "Around the finished neck edge, closures shut, cloth not stretched." },
  { heading: "Cuff opening", note: "Around the finished sleeve end. Empty without sleeves." },
  { heading: "Hem opening", note: "Around the finished hem of a leg, or of a stocking at its narrowest." },
  { heading: "Waist opening", note: "Around the finished waist edge, or the elastic when it is stretched." },
  {
    heading: "Sleeves",
    note: "Empty: as the class usually has them, else long with a cuff opening and none without.",
    choices: sleeveKinds,
  },
  {
    heading: "Ends at",
    note: "Where the lower edge lies on the body; the upper one of a sock or stocking. Empty: as the class usually does.",
    choices: endPlaces,
    letters: 16,
  },
  {
    heading: "Length",
    note: "To the hem: of a skirt from the waist, of a top, dress or coat from the back of the neck.",
  },
];

const finished = "Of the finished garment, seams and closures shut, measured around or along as on the body.";

/** Patterns as the table Patterns. */
export function patternsSheet(
  headings: readonly string[] = patternHeadings("mm"),
  rows: readonly (readonly CellContent[])[] = patternRows(),
): SheetContent {
  return tableSheet({
    name: "Patterns",
    says: "One row a pattern. What is not measured on the garment comes from the figure that it was drafted for.",
    table: "Patterns",
    columns: headings.map(columnOf),
    rows,
    frozenColumns: 2,
  });
}

function columnOf(heading: string): TableColumn {
  const known = columns.find(
    (column) => heading === column.heading || heading.startsWith(`${column.heading} (`),
  );
  return known ? { ...known, heading } : { heading, note: finished };
}
