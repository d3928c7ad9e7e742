import type { LengthUnit } from "../measures/units.ts";
import type { CellContent, SheetContent, WorkbookContent } from "../workbook/content.ts";
import { readingColumns } from "./figuresTable.ts";
import { patternHeadings } from "./patternsTable.ts";
import { emptyBook } from "./sheets/book.ts";
import { closestSheet } from "./sheets/closest.ts";
import { compareSheet } from "./sheets/compare.ts";
import { easeRulesSheet } from "./sheets/easeRules.ts";
import { figuresSheet } from "./sheets/figures.ts";
import { flagsSheet } from "./sheets/flags.ts";
import { garmentClassesSheet } from "./sheets/garmentClasses.ts";
import { gradeSheet } from "./sheets/grade.ts";
import { gradeRulesSheet } from "./sheets/gradeRules.ts";
import { groupsSheet, looseClothesSheet } from "./sheets/groups.ts";
import { houseModelsSheet } from "./sheets/houseModels.ts";
import { listingSheet } from "./sheets/listing.ts";
import { matchSheet } from "./sheets/match.ts";
import { expectedSheet, measureNextSheet } from "./sheets/measureNext.ts";
import { heading, quiet, title, wrapped } from "./sheets/parts.ts";
import { patternsSheet } from "./sheets/patterns.ts";
import { readingsSheet } from "./sheets/readings.ts";
import { resizeSheet } from "./sheets/resize.ts";
import { sharingSheet } from "./sheets/sharing.ts";
import { tolerancesSheet } from "./sheets/tolerances.ts";
import { treeSheet } from "./sheets/tree.ts";
import { wardrobeSheet } from "./sheets/wardrobe.ts";
import { wearersSheet } from "./sheets/wearers.ts";
import { whySheet } from "./sheets/why.ts";

/**
 * A workbook to begin with: figures and patterns to be filled in, the starting values of the project to be changed, and
 * sheets that answer as soon as there is something to read.
 *
 * @param unit of the headings of readings, pattern lengths and tolerances
 */
export function starterWorkbook(unit: LengthUnit): WorkbookContent {
  return {
    sheets: [
      startSheet(unit),
      starterFigures(unit),
      emptyRow(readingsSheet(unit, []), unit),
      tolerancesSheet(unit),
      starterPatterns(unit),
      easeRulesSheet(),
      garmentClassesSheet(),
      gradeRulesSheet(),
      flagsSheet(emptyBook),
      groupsSheet(emptyBook),
      closestSheet(emptyBook),
      treeSheet(emptyBook),
      looseClothesSheet(emptyBook),
      sharingSheet(emptyBook),
      houseModelsSheet(emptyBook),
      measureNextSheet(emptyBook),
      expectedSheet(emptyBook),
      compareSheet(emptyBook),
      matchSheet(emptyBook),
      wearersSheet(emptyBook),
      wardrobeSheet(emptyBook),
      whySheet(emptyBook),
      listingSheet(emptyBook),
      gradeSheet(emptyBook),
      resizeSheet(emptyBook),
    ],
  };
}

/** What can be said of a figure beside its readings. */
const traits = ["Body", "Jointed", "Hands removable", "Head removable", "Hair", "Foot shape", "Notes"];

/** A chart without figures, with the measures that decide fit, from the head down. */
export function starterFigures(unit: LengthUnit): SheetContent {
  const readings = readingColumns.map(({ measure }) => `${measure} (${unit})`);
  return emptyRow(figuresSheet(["Figure", ...readings, ...traits], []), unit);
}

/** Patterns of which there are none yet. */
export function starterPatterns(unit: LengthUnit): SheetContent {
  return emptyRow(patternsSheet(patternHeadings(unit), []), unit);
}

/** In inches text, so that 3/8 stays what was typed and does not become a date. */
const lengthFormats: Readonly<Record<LengthUnit, string>> = { mm: "0.0", cm: "0.00", in: "@" };

/** Gives the table of a sheet one row to begin with: empty, with the number formats that rows below it take over. */
function emptyRow(sheet: SheetContent, unit: LengthUnit): SheetContent {
  const headings = sheet.cells.at(-1) ?? [];
  const row = headings.map((cell): CellContent | undefined => {
    const text = String(cell?.value ?? "");
    if (text === "Stretch") return { format: "0%" };
    return text.endsWith(`(${unit})`) ? { format: lengthFormats[unit] } : undefined;
  });
  return {
    ...sheet,
    cells: [...sheet.cells, row],
    tables: (sheet.tables ?? []).map((table) => ({ ...table, rows: table.rows + 1 })),
  };
}

const unitWords: Readonly<Record<LengthUnit, string>> = {
  mm: "Lengths are in millimetres.",
  cm: "Lengths are in centimetres.",
  in: "Lengths are in inches: write 5 3/8 or 5.375.",
};

function startSheet(unit: LengthUnit): SheetContent {
  return {
    name: "Start",
    cells: [
      [title("Your measurement book")],
      [
        quiet(
          `${unitWords[unit]} A unit in the brackets of a heading, such as Bust (cm), tells how that column is read.`,
        ),
      ],
      [],
      [heading("How to begin")],
      [
        wrapped(
          "1. Figures: write one row for each figure. Leave empty what you have not measured. The note on each heading says how to measure.",
        ),
      ],
      [wrapped("2. Flags: look at the readings that deserve a second look before you trust the others.")],
      [
        wrapped(
          "3. Tolerances: how far two readings may differ and still count as the same. These are starting values; change them to yours.",
        ),
      ],
      [
        wrapped(
          "4. Patterns: write one row for each pattern. Class and figure can be chosen from lists; leave empty what you do not know.",
        ),
      ],
      [
        wrapped(
          "5. Ease rules, Garment classes and Grade rules hold starting values too. Leave them until a verdict surprises you.",
        ),
      ],
      [
        wrapped(
          "Readings is for measuring more than once: one row for each reading, with day, person and tool. Leave it empty if you like.",
        ),
      ],
      [],
      [heading("Where the answers are")],
      [wrapped("Who shares a body? Groups. Who comes closest? Closest, or Tree for all.")],
      [wrapped("Who only shares loose clothes? Loose clothes. What can two figures share? Sharing.")],
      [
        wrapped(
          "Which figures should I keep as house models? House models. What should I measure next? Measure next. What ought the tape to say? Expected.",
        ),
      ],
      [wrapped("What differs between two figures? Compare.")],
      [
        wrapped(
          "Which garment goes on which figure? Match. Who wears this pattern? Wearers. What can this figure wear? Wardrobe.",
        ),
      ],
      [wrapped("Why not, and what do I change? Why. What do I write under a pattern? Listing.")],
      [wrapped("How do I get from one figure to another? Grade, or Resize for a print scale.")],
      [],
      [heading("What it needs")],
      [
        wrapped(
          "The answers are worked out by Measure Book, added to Excel or on its own page. Without it you see the last answers only.",
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
