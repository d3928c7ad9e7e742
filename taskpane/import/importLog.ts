import { isBlank } from "../../addin/chart/cell.ts";
import type { Cells } from "../../addin/chart/cell.ts";
import type { Survey } from "../../addin/chart/import/survey.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";
import type { TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";

/** The table that says what came from where. */
export const logTable = "Imports";

const headings = [
  "When",
  "From",
  "Into",
  "Added",
  "Updated",
  "New readings",
  "Cells changed",
  "Not read",
] as const;

/** Logs that were begun when only figures were imported. */
const earlier: Readonly<Record<string, string>> = { Added: "Figures added", Updated: "Figures updated" };

function isHeaded(heading: string, by: (typeof headings)[number]): boolean {
  return heading === by || heading === earlier[by];
}

/** The log, where the workbook keeps one. */
export function logIn(tables: readonly TableInfo[]): TableInfo | undefined {
  return tables.find(
    (table) =>
      sameName(table.name, logTable) &&
      headings.every((wanted) => table.headings.some((heading) => isHeaded(heading, wanted))),
  );
}

/**
 * The edits that note an import: a row in the log, which is begun on a sheet of its own where there is none.
 *
 * @param from what was imported, as the user knows it: “chart.csv”, or “spring.xlsx, table Figures on sheet List”
 * @param cells of the log, headings first; empty where there is none
 */
export function logEdits(
  entry: { readonly when: Date; readonly from: string; readonly into: string; readonly survey: Survey },
  log: { readonly table: TableInfo; readonly cells: Cells } | undefined,
  taken: TakenNames,
): readonly Edit[] {
  const { when, from, into, survey } = entry;
  const { added, updated, readings, changed, refusals } = survey;
  const values = [dayAndTime(when), from, into, added, updated, readings, changed, refusals.length];
  if (!log) {
    const { edits } = starterTable(freeName(logTable, taken.sheets), logTable, taken, {
      says: "What was imported, when and from where. One row an import.",
      cells: [headings, values],
      widths: [136, 280, 112, 112, 120, 112, 112, 88],
    });
    return edits;
  }
  const { table, cells } = log;
  // In the order of the user’s own columns.
  const row = table.headings.map((heading) => values[headings.findIndex((each) => isHeaded(heading, each))]);
  const empty = cells.findIndex((each, i) => i > 0 && each.every(isBlank));
  if (empty < 0) return [{ kind: "rows", table: table.name, rows: [row] }];
  const { sheet, row: top, column } = table.area;
  const filled = row.map((value) => (value === undefined ? undefined : { value }));
  return [{ kind: "cells", at: { sheet, row: top + empty, column }, cells: [filled] }];
}

/** 2026-11-26 06:30, by the clock of this computer. */
function dayAndTime(when: Date): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const day = [String(when.getFullYear()), two(when.getMonth() + 1), two(when.getDate())].join("-");
  return `${day} ${two(when.getHours())}:${two(when.getMinutes())}`;
}
