import { findMeasure } from "../../measures/dictionary.ts";
import { readHeading } from "../../measures/heading.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { demoRows, figureHeadings } from "../figuresTable.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet, yesOrNo } from "./tableSheet.ts";

/** Columns that are no readings: what belongs into them. */
const texts: readonly TableColumn[] = [
  {
    heading: "Figure",
    note: "A name of its own for each figure. Other sheets call it by this name.",
    letters: 16,
  },
  {
    heading: "Body",
    note: "Soft (stuffed cloth) or hard. A soft body gives a little.",
    choices: ["soft", "hard"],
  },
  {
    heading: "Jointed",
    note: "Whether the arms bend. A stiff arm needs a wider sleeve.",
    choices: yesOrNo,
  },
  {
    heading: "Hands removable",
    note: "Where hands come off, a sleeve has to pass the wrist only.",
    choices: yesOrNo,
  },
  {
    heading: "Head removable",
    note: "Where the head comes off, a neck opening has to pass the neck only.",
    choices: yesOrNo,
  },
  {
    heading: "Hair",
    note: "A wig comes off before a garment goes over the head.",
    choices: ["wig", "rooted", "painted", "moulded"],
  },
  {
    heading: "Foot shape",
    note: "Heeled: a foot that stands on its toes, for heeled shoes.",
    choices: ["flat", "heeled"],
  },
  { heading: "Notes", letters: 30 },
];

/** A chart as the table Figures. Headings of readings get a note that says how to measure. */
export function figuresSheet(
  headings: readonly string[] = figureHeadings,
  rows: readonly (readonly CellContent[])[] = demoRows(),
): SheetContent {
  return tableSheet({
    name: "Figures",
    says: "One row a figure. Lengths are in the unit of the heading; empty, ? and - mean not measured yet.",
    table: "Figures",
    columns: headings.map(columnOf),
    rows,
    frozenColumns: 1,
  });
}

function columnOf(heading: string): TableColumn {
  const text = texts.find((each) => each.heading === heading);
  if (text) return text;
  const measure = findMeasure(readHeading(heading, "mm").name);
  return { heading, ...(measure && { note: `${measure.definition} ${measure.onFigures}` }) };
}
