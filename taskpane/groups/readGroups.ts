import type { Chart } from "../../addin/chart/chart.ts";
import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import type { GarmentTolerances, ToleranceTable } from "../../addin/chart/tolerances.ts";
import { readGarmentTolerances, readTolerances } from "../../addin/chart/tolerances.ts";
import { countingEstimates } from "../../addin/similarity/columns.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { Book } from "../shell/book.ts";
import { chartIn } from "../shell/chartIn.ts";
import { chartTables } from "../shell/chartTables.ts";
import { chartTable } from "../import/planEdits.ts";
import { failureText } from "../shell/notice.ts";
import type { SecondReadings } from "./secondReadings.ts";
import { readSecond, usualSecond } from "./secondReadings.ts";

/**
 * The tables that the user has chosen; `""` as tolerances stands for the usual ones of Measure Book, as second readings
 * for none.
 */
export interface ChosenForGroups {
  readonly figures?: string;
  readonly tolerances?: string;
  readonly second?: string;
  /** True counts estimates as if they were readings. */
  readonly estimates?: boolean;
}

/** A chart with the tolerances that count for it. */
export interface FiguresToGroup {
  readonly table: TableInfo;
  readonly data: RangeData;
  /** With its estimates as if they were readings, where these are asked to count. */
  readonly chart: Chart;
  readonly estimates: Estimates;
  /** Where the tolerances stand; `undefined` when the usual ones of Measure Book count. */
  readonly tolerancesTable: TableInfo | undefined;
  readonly tolerances: ToleranceTable | undefined;
  readonly garments: readonly GarmentTolerances[];
  readonly second: SecondReadings;
}

/** Lengths of the chart that were estimated, and whether they count. */
export interface Estimates {
  readonly count: number;
  readonly areCounted: boolean;
}

/** What the workbook holds for the grouping of figures. */
export interface GroupsInput {
  readonly sheets: readonly string[];
  readonly tables: readonly TableInfo[];
  /** Tables that can be charts, and those that can be tolerances. */
  readonly charts: readonly TableInfo[];
  readonly toleranceTables: readonly TableInfo[];
  /** Tables that can hold second readings of the figures of the chart. */
  readonly secondTables: readonly TableInfo[];
  readonly figures: FiguresToGroup | undefined;
  /** Why nothing can be grouped, in words. */
  readonly failure: string | undefined;
}

/** The name that is taken first where several tables could be the tolerances. */
export const usualTolerances = "Tolerances";

/** Reads chart, tolerances and second readings. Never rejects: what fails is said in the result. */
export async function readGroups(book: Book, chosen: ChosenForGroups): Promise<GroupsInput> {
  const nothing = {
    sheets: [],
    tables: [],
    charts: [],
    toleranceTables: [],
    secondTables: [],
    figures: undefined,
  };
  try {
    const tables = await book.tables();
    const { table, secondTable, tolerancesTable, ...could } = book.once(
      tablesToGroup,
      tables,
      chosen.figures,
      chosen.tolerances,
      chosen.second,
    );
    const known = { ...nothing, sheets: await book.sheets(), tables, ...could };
    if (!table) return { ...known, failure: undefined };
    let reading = table;
    try {
      const data = await book.readTable(table.name);
      const chart = chartIn(book, data);
      if (tolerancesTable) reading = tolerancesTable;
      const allowed = tolerancesTable && (await book.readTable(tolerancesTable.name));
      const tolerances = allowed
        ? book.once(tolerancesIn, allowed.values, allowed.formats, chart)
        : usualOnes;
      const second = await readSecond(book, chart, secondTable);
      const estimates = book.once(estimatesIn, chart, chosen.estimates === true);
      const counted = estimates.areCounted ? book.once(countingEstimates, chart) : chart;
      const figures = book.once(
        figuresToGroup,
        table,
        data,
        counted,
        estimates,
        tolerancesTable,
        tolerances,
        second,
      );
      return { ...known, figures, failure: undefined };
    } catch (error) {
      return { ...known, failure: `Table ${reading.name}: ${failureText(error)}` };
    }
  } catch (error) {
    return { ...nothing, failure: failureText(error) };
  }
}

/** The tables that could serve, and those that do. */
function tablesToGroup(
  tables: readonly TableInfo[],
  figures: string | undefined,
  tolerances: string | undefined,
  second: string | undefined,
) {
  const charts = chartTables(tables);
  const toleranceTables = tables.filter(holdsTolerances);
  const isSecond = ({ name }: TableInfo): boolean => sameName(name, usualSecond);
  const table =
    named(charts, figures) ??
    named(charts, chartTable) ??
    charts.find((each) => !isSecond(each)) ??
    charts[0];
  const secondTables = tables.filter((each) => each !== table && (charts.includes(each) || isSecond(each)));
  return {
    ...{ charts, toleranceTables, secondTables, table },
    secondTable:
      second === "" ? undefined : (named(secondTables, second) ?? named(secondTables, usualSecond)),
    tolerancesTable:
      tolerances === ""
        ? undefined
        : (named(toleranceTables, tolerances) ??
          named(toleranceTables, usualTolerances) ??
          toleranceTables[0]),
  };
}

type Tolerances = Pick<FiguresToGroup, "tolerances" | "garments">;

const usualOnes: Tolerances = { tolerances: undefined, garments: [] };

function tolerancesIn(values: RangeData["values"], formats: RangeData["formats"], chart: Chart): Tolerances {
  return {
    tolerances: readTolerances(values, chart, formats),
    garments: readGarmentTolerances(values, chart, formats),
  };
}

function figuresToGroup(
  table: TableInfo,
  data: RangeData,
  chart: Chart,
  estimates: Estimates,
  tolerancesTable: TableInfo | undefined,
  { tolerances, garments }: Tolerances,
  second: SecondReadings,
): FiguresToGroup {
  return { table, data, chart, estimates, tolerancesTable, tolerances, garments, second };
}

function estimatesIn({ measures }: Chart, areCounted: boolean): Estimates {
  const count = measures.reduce(
    (sum, { origins }) =>
      sum + [...(origins?.values() ?? [])].filter((origin) => origin === "estimated").length,
    0,
  );
  return { count, areCounted: areCounted && count > 0 };
}

/** True for a table with a row for each measure and how far it may differ. */
function holdsTolerances({ headings }: TableInfo): boolean {
  const columns = tableColumns([headings]);
  const has = (...names: readonly string[]): boolean => columnNamed(columns, names) !== undefined;
  return has("Measure", "Measures", "Measurement") && has("Tolerance", "Tolerances", "Tol");
}

function named(tables: readonly TableInfo[], name: string | undefined): TableInfo | undefined {
  return name === undefined ? undefined : tables.find((table) => sameName(table.name, name));
}

/** What estimates do at the moment, in a line. */
export function estimateWords({ count: estimates, areCounted }: Estimates): string {
  return areCounted
    ? `${String(estimates)} ${estimates === 1 ? "counts" : "count"} as if measured: what follows rests on guesses too`
    : `${String(estimates)} ${estimates === 1 ? "takes" : "take"} no part in what follows`;
}
