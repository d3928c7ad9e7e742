import type { Chart } from "../../addin/chart/chart.ts";
import type { GarmentClass } from "../../addin/chart/garmentClass.ts";
import type { PatternProblem } from "../../addin/chart/pattern.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readEaseRules } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells, readGarmentClasses } from "../../addin/chart/readGarmentClasses.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { prepareFitting } from "../../addin/fit/match.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { RangeData, TableInfo, Workbook } from "../../addin/workbook/port.ts";
import { failureText } from "../shell/notice.ts";
import type { ChosenTables, FitTables } from "./fitTables.ts";
import { findFitTables, tableFor } from "./fitTables.ts";

/** The tables that are used; `undefined` where there is none, or where the project’s own stands in. */
export interface UsedTables {
  readonly figures: TableInfo | undefined;
  readonly patterns: TableInfo | undefined;
  readonly easeRules: TableInfo | undefined;
  readonly garmentClasses: TableInfo | undefined;
}

/** What the workbook holds for the fit of garments. */
export interface Fit {
  readonly sheets: readonly string[];
  readonly tables: readonly TableInfo[];
  readonly found: FitTables;
  readonly used: UsedTables;
  readonly chart: Chart | undefined;
  /** Ready for questions; `undefined` without chart or patterns, or when a table cannot be read. */
  readonly fitting: Fitting | undefined;
  /** True where a table changes the garment classes that come with the project. */
  readonly hasOwnClasses: boolean;
  /** Rows of the patterns that cannot be used. */
  readonly problems: readonly PatternProblem[];
  /** Why nothing can be judged, in words. */
  readonly failure: string | undefined;
}

/** Reads the tables and makes them ready. Never rejects: what fails is said in the result. */
export async function readFit(workbook: Workbook, chosen: ChosenTables): Promise<Fit> {
  const nothing = {
    chart: undefined,
    fitting: undefined,
    hasOwnClasses: false,
    problems: [],
    failure: undefined,
  };
  try {
    const tables = await workbook.tables();
    const found = findFitTables(tables);
    const used: UsedTables = {
      figures: tableFor("figures", found, chosen),
      patterns: tableFor("patterns", found, chosen),
      easeRules: tableFor("easeRules", found, chosen),
      garmentClasses: tableFor("garmentClasses", found, chosen),
    };
    const known = { ...nothing, sheets: await workbook.sheets(), tables, found, used };
    try {
      const { figures } = used;
      if (!figures) return known;
      const chart = await readAs(workbook, figures, ({ values, formats }) => readChart(values, { formats }));
      return { ...known, chart, ...(await fittingOf(workbook, used, chart)) };
    } catch (error) {
      return { ...known, failure: failureText(error) };
    }
  } catch (error) {
    const none = { figures: undefined, patterns: undefined, easeRules: undefined, garmentClasses: undefined };
    return {
      ...nothing,
      sheets: [],
      tables: [],
      found: findFitTables([]),
      used: none,
      failure: failureText(error),
    };
  }
}

async function fittingOf(
  workbook: Workbook,
  used: UsedTables,
  chart: Chart,
): Promise<Partial<Pick<Fit, "fitting" | "hasOwnClasses" | "problems" | "failure">>> {
  if (!used.patterns) return {};
  try {
    const classes =
      used.garmentClasses &&
      (await readAs(workbook, used.garmentClasses, ({ values, formats }) =>
        readGarmentClasses(values, { formats }),
      ));
    const options = classes ? { classes } : {};
    const rules =
      used.easeRules &&
      (await readAs(workbook, used.easeRules, ({ values, formats }) =>
        readEaseRules(values, { formats, ...options }),
      ));
    return await readAs(workbook, used.patterns, ({ values, formats }) => {
      const { patterns, problems } = readPatternTable(values, chart, { formats, ...options });
      return {
        fitting: prepareFitting(patterns, chart, { rules }),
        hasOwnClasses: classes !== undefined && !areDefault(classes),
        problems,
      };
    });
  } catch (error) {
    return { failure: failureText(error) };
  }
}

function areDefault(classes: readonly GarmentClass[]): boolean {
  return JSON.stringify(garmentClassCells(classes)) === JSON.stringify(garmentClassCells());
}

/** Reads a table, so that a message says which one it is about. */
async function readAs<T>(workbook: Workbook, table: TableInfo, read: (data: RangeData) => T): Promise<T> {
  const data = await workbook.readTable(table.name);
  try {
    return read(data);
  } catch (error) {
    throw named(error, table);
  }
}

function named(error: unknown, table: TableInfo): unknown {
  if (!(error instanceof InputError)) return error;
  return new InputError(`Table ${table.name}: ${error.message}`, error.kind);
}
