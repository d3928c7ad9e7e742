import type { Cell } from "../../addin/chart/cell.ts";
import { easeRuleCells } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells } from "../../addin/chart/readGarmentClasses.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { StarterTable, TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";
import { usualNames } from "./fitTables.ts";

/** Lengths of a pattern besides its closure: what each heading says before its unit. */
const lengthHeadings = [
  "Neck opening",
  "Cuff opening",
  "Hem opening",
  "Waist opening",
  "Finished bust",
  "Finished waist",
  "Finished hip",
];

/**
 * An empty table of patterns with one row as an example: a wrap dress drafted for the first figure, which needs no
 * finished measures of its own.
 */
export function patternsStarter(
  chart: { readonly figures: readonly string[]; readonly unit: LengthUnit },
  taken: TakenNames,
): StarterTable {
  const { figures, unit } = chart;
  const example: readonly (readonly [string, Cell])[] = [
    ["Pattern", "P1"],
    ["Title", "Example: wrap dress"],
    ["Garment class", "Dress"],
    ["Drafted for", figures[0]],
    ["Stretch %", "0%"],
    [`Thickness (${unit})`, 0],
    ["Worn over", undefined],
    ["Opens", "full length"],
    [`Opening length (${unit})`, undefined],
    ...lengthHeadings.map((heading) => [`${heading} (${unit})`, undefined] as const),
    ["Sleeves", undefined],
    ["Ends at", "knee"],
    [`Length (${unit})`, undefined],
  ];
  return starterTable("Patterns", usualNames.patterns, taken, {
    says: "One row a pattern. Leave empty what you do not know. Finished measures are those of the garment, seams closed.",
    cells: [example.map(([heading]) => heading), example.map(([, value]) => value)],
    widths: [96, 176, 144, 144],
  });
}

/** The ease rules that come with the project, to be changed. */
export function easeRulesStarter(taken: TakenNames): StarterTable {
  return starterTable("Ease rules", usualNames.easeRules, taken, {
    says: "How much larger than the body a garment is: percent of the body plus a length. Empty is no limit.",
    cells: easeRuleCells(),
    widths: [168, 144, 80, 80, 80, 80, 80, 320],
  });
}

/** The garment classes that come with the project, to be changed. */
export function garmentClassesStarter(taken: TakenNames): StarterTable {
  return starterTable("Garment classes", usualNames.garmentClasses, taken, {
    says: "Where each class is worn, how many cut edges its seams have, which openings must be known, its usual sleeves and end.",
    cells: garmentClassCells(),
    widths: [168, 112, 80, 112, 80, 112, 224, 320],
  });
}
