import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { easeRuleCells } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells } from "../../addin/chart/readGarmentClasses.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { freeName } from "../freeName.ts";
import type { FitRole } from "./fitTables.ts";
import { usualNames } from "./fitTables.ts";

/** Names that are taken in the workbook. */
export interface TakenNames {
  readonly sheets: readonly string[];
  readonly tables: readonly string[];
}

/** A new sheet with one table: the edit, and the names that it got. */
export interface StarterTable {
  readonly sheet: string;
  readonly table: string;
  readonly edits: readonly Edit[];
}

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
  ];
  return starter("patterns", "Patterns", taken, {
    says: "One row a pattern. Leave empty what you do not know. Finished measures are those of the garment, seams closed.",
    cells: [example.map(([heading]) => heading), example.map(([, value]) => value)],
    widths: [96, 176, 144, 144],
  });
}

/** The ease rules that come with the project, to be changed. */
export function easeRulesStarter(taken: TakenNames): StarterTable {
  return starter("easeRules", "Ease rules", taken, {
    says: "How much larger than the body a garment is: percent of the body plus a length. Empty is no limit.",
    cells: easeRuleCells(),
    widths: [168, 144, 80, 80, 80, 80, 80, 320],
  });
}

/** The garment classes that come with the project, to be changed. */
export function garmentClassesStarter(taken: TakenNames): StarterTable {
  return starter("garmentClasses", "Garment classes", taken, {
    says: "Where each class is worn, how many cut edges its seams have, and which openings must be known.",
    cells: garmentClassCells(),
    widths: [168, 112, 80, 112, 224, 320],
  });
}

function starter(
  role: FitRole,
  title: string,
  taken: TakenNames,
  content: { readonly says: string; readonly cells: Cells; readonly widths: readonly number[] },
): StarterTable {
  const sheet = freeName(title, taken.sheets);
  const table = freeName(usualNames[role], taken.tables, "_");
  const { says, cells, widths } = content;
  return {
    sheet,
    table,
    edits: [
      {
        kind: "sheet",
        sheet: {
          name: sheet,
          cells: [
            [{ value: title, style: "title" }],
            [{ value: says, style: "quiet" }],
            ...cells.map((row) => row.map((value) => (value === undefined ? undefined : { value }))),
          ],
          frozenRows: 3,
          frozenColumns: 1,
          columnWidths: widths,
          tables: [{ name: table, row: 2, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 }],
        },
      },
    ],
  };
}
