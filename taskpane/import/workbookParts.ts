import type { Cell } from "../../addin/chart/cell.ts";
import { isBlank } from "../../addin/chart/cell.ts";
import { detectHeadingRow } from "../../addin/chart/import/source.ts";
import type { SourceRows } from "../../addin/chart/import/source.ts";
import { textReader } from "../../addin/chart/import/texts.ts";
import { readHeading } from "../../addin/measures/heading.ts";
import type { WorkbookContent } from "../../addin/workbook/content.ts";

/** A table of a workbook, or all cells of one of its sheets. */
export interface WorkbookPart {
  readonly label: string;
  readonly sheet: string;
  readonly table?: string;
}

/** What can be imported from a workbook: its tables, then its sheets, in its order. Empty sheets are left out. */
export function workbookParts(content: WorkbookContent): readonly WorkbookPart[] {
  const tables = content.sheets.flatMap((sheet) =>
    (sheet.tables ?? []).map((table) => ({
      label: `Table ${table.name} on sheet ${sheet.name}`,
      sheet: sheet.name,
      table: table.name,
    })),
  );
  const sheets = content.sheets
    .filter((sheet) => sheet.cells.some((row) => row.some((cell) => !isBlank(cell?.value))))
    .map((sheet) => ({ label: `Sheet ${sheet.name}`, sheet: sheet.name }));
  return [...tables, ...sheets];
}

/** The cells of a part, with their number formats. Blank rows are left out; row numbers are the sheet’s. */
export function rowsOfPart(content: WorkbookContent, part: WorkbookPart): SourceRows {
  const sheet = content.sheets.find((s) => s.name === part.sheet);
  const table = sheet?.tables?.find((t) => t.name === part.table);
  const cells = sheet?.cells ?? [];
  const top = table?.row ?? 0;
  const left = table?.column ?? 0;
  const bottom = table ? top + table.rows : cells.length;
  const right = table ? left + table.columns : undefined;
  const rows = cells
    .slice(top, bottom)
    .map((row, i) => ({ row: row.slice(left, right), number: top + i + 1 }))
    .filter(({ row }) => row.some((cell) => !isBlank(cell?.value)));
  return {
    rows: rows.map(({ row }) => Array.from(row, (cell) => cell?.value)),
    numbers: rows.map(({ number }) => number),
    formats: rows.map(({ row }) => Array.from(row, (cell) => cell?.format)),
    texts: textReader(),
  };
}

/** The part that looks most like a chart: with the most headings that are measures; of equals the first. */
export function likeliestPart(content: WorkbookContent): WorkbookPart | undefined {
  const scored = workbookParts(content).map((part) => {
    const { rows, texts } = rowsOfPart(content, part);
    const headings = rows[detectHeadingRow(rows, texts)] ?? [];
    const down = rows.slice(0, 100).map((row) => row[0]);
    return { part, measures: Math.max(known(headings), known(down)) };
  });
  return scored.reduce<(typeof scored)[number] | undefined>(
    (most, next) => (most && most.measures >= next.measures ? most : next),
    undefined,
  )?.part;
}

function known(cells: readonly Cell[]): number {
  return cells.filter((cell) => typeof cell === "string" && readHeading(cell, "mm").measure).length;
}
