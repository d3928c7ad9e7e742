import { readingsHeadings } from "../../chart/readReadings.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet } from "./tableSheet.ts";

/**
 * The bust of three figures, taken again: the chart holds what these come to. Of fewer figures than five they tell no error of
 * their own, so that every answer of the demo stays what it is.
 */
const taken: readonly (readonly [figure: string, mm: number, date: string, by: string])[] = [
  ["Kestrin", 216.5, "2026-02-11", "Nell"],
  ["Kestrin", 215.5, "2026-02-12", "Nell"],
  ["Norrim", 185.5, "2026-02-11", "Nell"],
  ["Norrim", 186.5, "2026-02-14", "Bo"],
  ["Quenby", 207.5, "2026-02-11", "Nell"],
  ["Quenby", 209, "2026-02-12", "Nell"],
  ["Quenby", 208, "2026-02-14", "Bo"],
];

/** The readings that the invented maker has taken more than once. */
export function demoReadingsSheet(): SheetContent {
  return readingsSheet(
    "mm",
    taken.map(([figure, mm, date, by]) =>
      [figure, "Bust", mm, date, by, "paper tape"].map((value) => ({ value })),
    ),
  );
}

/** Every reading as it came off the tape, one a row. */
export function readingsSheet(
  unit: LengthUnit,
  rows: readonly (readonly (CellContent | undefined)[])[],
): SheetContent {
  const [figure, measure, reading, date, by, tool] = readingsHeadings;
  const columns: readonly TableColumn[] = [
    {
      heading: figure,
      note: "A figure of the chart, by its name there.",
      letters: 16,
      choices: { table: "Figures", heading: "Figure" },
    },
    {
      heading: measure,
      note: "A measure of the chart, by its heading there.",
      letters: 20,
      choices: { table: "Tolerances", heading: "Measure" },
    },
    {
      heading: `${reading} (${unit})`,
      note: "What the tape said, once. A second reading has a row of its own.",
    },
    { heading: date, note: "The day, such as 2026-03-01.", letters: 12 },
    { heading: by, note: "Who measured.", letters: 14 },
    { heading: tool, note: "With what, such as paper tape or calliper.", letters: 18 },
  ];
  return tableSheet({
    name: "Readings",
    says: "One row for every time that a tape was laid on. The chart takes the mean of two readings, the middle one from three on.",
    table: "Readings",
    columns,
    rows,
    frozenColumns: 2,
  });
}
