import { useMemo } from "react";
import type { Cells } from "../../addin/chart/cell.ts";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import type { Edit, RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { Book } from "../shell/book.ts";
import { chartIn } from "../shell/chartIn.ts";
import { chartTables, isEmptyChart } from "../shell/chartTables.ts";
import { findFitTables } from "../fit/fitTables.ts";
import type { Wardrobe } from "../fit/newPattern/newPattern.ts";
import { failureText } from "../shell/notice.ts";
import { useRead } from "../shell/useRead.ts";
import { usualSecond } from "../groups/secondReadings.ts";
import { chartTable } from "./planEdits.ts";

/** The charts of the workbook, and the one that is imported into, as it stands now. */
export interface Destination {
  /** Those that can be charts. */
  readonly tables: readonly TableInfo[];
  readonly sheets: readonly string[];
  /** `undefined`: a new table will be made. */
  readonly table: TableInfo | undefined;
  readonly present: PresentChart | undefined;
  /** Why the table cannot be imported into, in words. */
  readonly obstacle: string | undefined;
}

/** The tables of patterns of the workbook, and the one that is imported into, with what its rows are held against. */
export interface PatternsDestination extends Pick<Destination, "tables" | "sheets" | "table" | "obstacle"> {
  readonly wardrobe: Wardrobe | undefined;
  /** Of the workbook’s own table. */
  readonly tolerances: ToleranceTable | undefined;
  /** The edits that make a table for rows in the order of the usual headings and those added. */
  readonly newTable: (
    added: readonly string[],
    rows: readonly (readonly (CellContent | undefined)[])[],
  ) => readonly Edit[];
}

/**
 * @param chosen name of the table of patterns to import into; without one, the usual
 * @param isAsked false while no list of patterns is looked at
 * @returns `undefined` until the workbook has been read
 */
export function usePatternsDestination(
  chosen: string | undefined,
  isAsked: boolean,
): PatternsDestination | undefined {
  const asked = useMemo(() => ({ chosen, isAsked }), [chosen, isAsked]);
  return useRead(readPatternsDestination, asked)?.destination;
}

async function readPatternsDestination(
  book: Book,
  { chosen, isAsked }: { readonly chosen: string | undefined; readonly isAsked: boolean },
): Promise<{ readonly destination: PatternsDestination | undefined }> {
  if (!isAsked) return { destination: undefined };
  // With it come the sheets that a new table is made of: asked for seldom.
  const { newPatternsTable, readWardrobe } = await import("../fit/newPattern/readWardrobe.ts");
  const found = await readWardrobe(book, chosen === undefined ? {} : { patterns: chosen });
  const { wardrobe, figures, sheets, tables, failure } = found;
  const { readGroups } = await import("../groups/readGroups.ts");
  const groups = await readGroups(book, figures ? { figures: figures.name } : {});
  const destination = {
    tables: findFitTables(tables).patterns,
    ...{ sheets, wardrobe, table: wardrobe?.place.table, obstacle: failure },
    tolerances: groups.figures?.tolerances,
    newTable: wardrobe
      ? (added, rows) => newPatternsTable({ wardrobe, figures, sheets, tables }, added, rows).edits
      : () => [],
  } satisfies PatternsDestination;
  return { destination };
}

/**
 * @param chosen name of the table to import into, "" for a new one; `undefined` for the table Figures where there is one, else the
 * only chart
 * @returns `undefined` until the workbook has been read
 */
export function useDestination(chosen: string | undefined): Destination | undefined {
  return useRead(readDestination, chosen);
}

/** Reads where an import goes, see `useDestination`. Never rejects: what fails is said in the result. */
export async function readDestination(book: Book, chosen: string | undefined): Promise<Destination> {
  const nowhere = { tables: [], sheets: [], table: undefined, present: undefined };
  try {
    const all = await book.tables();
    const tables = book.once(chartTables, all);
    const sheets = await book.sheets();
    const named = all.find(({ name }) => sameName(name, chosen ?? chartTable));
    const own = tables.filter(({ name }) => !sameName(name, usualSecond));
    const table = named ?? (chosen === undefined && own.length === 1 ? own[0] : undefined);
    if (!table) return { ...nowhere, tables, sheets, obstacle: undefined };
    const data = await book.readTable(table.name);
    try {
      const chart = isEmptyChart(data.values) ? emptyChart(data) : chartIn(book, data);
      const present = book.once(presentChart, data.values, chart);
      return { tables, sheets, table, present, obstacle: undefined };
    } catch (error) {
      const why = `The table ${table.name} cannot be added to: ${failureText(error)}`;
      return { tables, sheets, table, present: undefined, obstacle: why };
    }
  } catch (error) {
    return { ...nowhere, obstacle: failureText(error) };
  }
}

function presentChart(cells: Cells, chart: Chart): PresentChart {
  return { cells, chart };
}

/** Headings alone are enough to import into. */
function emptyChart({ values, formats }: RangeData): Chart {
  return readChart(values, { formats, mayBeEmpty: true });
}
