import { isBlank } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import type { EaseRule } from "../../addin/chart/easeRule.ts";
import type { GarmentClass } from "../../addin/chart/garmentClass.ts";
import type { PatternProblem } from "../../addin/chart/pattern.ts";
import { readEaseRules } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells, readGarmentClasses } from "../../addin/chart/readGarmentClasses.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { prepareFitting } from "../../addin/fit/match.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ReadingError } from "../../addin/measures/readingError.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { SecondReadings } from "../groups/secondReadings.ts";
import { readSecond, usualSecond } from "../groups/secondReadings.ts";
import type { Book } from "../shell/book.ts";
import { chartIn } from "../shell/chartIn.ts";
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
  /** Readings that were repeated, and how exact they show readings to be. */
  readonly second: SecondReadings | undefined;
  /** Ready for questions; `undefined` without chart or patterns, or when a table cannot be read. */
  readonly fitting: Fitting | undefined;
  /** Of the workbook; undefined where the project’s own stand in. */
  readonly rules: readonly EaseRule[] | undefined;
  /** True where a table changes the garment classes that come with the project. */
  readonly hasOwnClasses: boolean;
  /** Rows of the patterns that cannot be used. */
  readonly problems: readonly PatternProblem[];
  /** Why nothing can be judged, in words. */
  readonly failure: string | undefined;
}

const nothing = {
  chart: undefined,
  second: undefined,
  fitting: undefined,
  rules: undefined,
  hasOwnClasses: false,
  problems: [],
  failure: undefined,
};

/** Reads the tables and makes them ready. Never rejects: what fails is said in the result. */
export async function readFit(book: Book, chosen: ChosenTables): Promise<Fit> {
  try {
    const tables = await book.tables();
    const found = book.once(findFitTables, tables);
    const used = book.once(tablesUsed, found, chosen);
    const known = { ...nothing, sheets: await book.sheets(), tables, found, used };
    try {
      const { figures } = used;
      if (!figures) return known;
      const chart = await readAs(book, figures, (data) => chartIn(book, data));
      const again = tables.find((table) => table !== figures && sameName(table.name, usualSecond));
      const second = await readSecond(book, chart, again);
      return { ...known, chart, second, ...(await readFitting(book, used, chart, second.errors)) };
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

function tablesUsed(found: FitTables, chosen: ChosenTables): UsedTables {
  return {
    figures: tableFor("figures", found, chosen),
    patterns: tableFor("patterns", found, chosen),
    easeRules: tableFor("easeRules", found, chosen),
    garmentClasses: tableFor("garmentClasses", found, chosen),
  };
}

/**
 * The garment classes and ease rules of the workbook; undefined where the project’s own stand in.
 *
 * @throws {InputError} naming the table that cannot be read
 */
export async function readRules(
  book: Book,
  used: Pick<UsedTables, "easeRules" | "garmentClasses">,
): Promise<{ readonly classes: readonly GarmentClass[] | undefined; readonly rules: Fit["rules"] }> {
  const classes =
    used.garmentClasses &&
    (await readAs(book, used.garmentClasses, ({ values, formats }) => book.once(classesIn, values, formats)));
  const rules =
    used.easeRules &&
    (await readAs(book, used.easeRules, ({ values, formats }) =>
      book.once(easeRulesIn, values, formats, classes),
    ));
  return { classes, rules };
}

type FittingPart = Partial<Pick<Fit, "fitting" | "rules" | "hasOwnClasses" | "problems" | "failure">>;

async function readFitting(
  book: Book,
  used: UsedTables,
  chart: Chart,
  errors: ReadingError,
): Promise<FittingPart> {
  if (!used.patterns) return {};
  try {
    const { classes, rules } = await readRules(book, used);
    return await readAs(book, used.patterns, ({ values, formats }) =>
      book.once(fittingIn, values, formats, chart, errors, rules, classes),
    );
  } catch (error) {
    return { failure: failureText(error) };
  }
}

type Values = RangeData["values"];
type Formats = RangeData["formats"];

function classesIn(values: Values, formats: Formats): readonly GarmentClass[] {
  return readGarmentClasses(values, { formats });
}

function easeRulesIn(
  values: Values,
  formats: Formats,
  classes: readonly GarmentClass[] | undefined,
): readonly EaseRule[] {
  return readEaseRules(values, { formats, ...(classes && { classes }) });
}

function fittingIn(
  values: Values,
  formats: Formats,
  chart: Chart,
  readingError: ReadingError,
  rules: readonly EaseRule[] | undefined,
  classes: readonly GarmentClass[] | undefined,
): FittingPart {
  // Headings alone are no mistake: nobody has written a pattern down yet.
  const { patterns, problems } = values.slice(1).every((row) => row.every(isBlank))
    ? { patterns: [], problems: [] }
    : readPatternTable(values, chart, { formats, ...(classes && { classes }) });
  return {
    fitting: prepareFitting(patterns, chart, { rules, readingError }),
    rules,
    hasOwnClasses: classes !== undefined && !areDefault(classes),
    problems,
  };
}

function areDefault(classes: readonly GarmentClass[]): boolean {
  return JSON.stringify(garmentClassCells(classes)) === JSON.stringify(garmentClassCells());
}

/** Reads a table, so that a message says which one it is about. */
async function readAs<T>(book: Book, table: TableInfo, read: (data: RangeData) => T): Promise<T> {
  const data = await book.readTable(table.name);
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
