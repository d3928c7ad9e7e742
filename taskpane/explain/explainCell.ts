import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { isCellError } from "../../addin/chart/cell.ts";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { expectedValue } from "../../addin/checking/expectedValue.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { quote } from "../../addin/measures/quote.ts";
import type { Area, TableInfo, Workbook } from "../../addin/workbook/port.ts";
import type { Book } from "../shell/book.ts";
import { chartToCheck } from "../shell/chartIn.ts";
import { chartTables } from "../shell/chartTables.ts";
import { count } from "../ui/words.ts";

/** What a cell of a chart holds, in words. */
export interface CellWords {
  readonly title: string;
  readonly says: readonly string[];
  /** What deserves a look: what it may be, and why. */
  readonly looks: readonly { readonly kind: string; readonly why: string }[];
}

/** A cell of a chart to explain, as plain data. */
export interface ExplainJob {
  readonly kind: "explain";
  readonly chart: Chart;
  readonly values: Cells;
  /** Within the range, from 0 (row 0 is the headings). */
  readonly at: { readonly row: number; readonly column: number };
  /** What the check of the chart says. */
  readonly flags: readonly Flag[];
}

/** A cell of a chart that is asked about. */
export type AskedCell = Omit<ExplainJob, "kind" | "flags">;

export interface ExplainAnswer {
  readonly kind: "explain";
  readonly words: CellWords;
}

export function doExplainJob({ chart, values, at, flags }: ExplainJob): ExplainAnswer {
  return { kind: "explain", words: explainCell(chart, values, at, flags) };
}

/**
 * The selected cell with its chart, or what can be said of it elsewhere; of several cells, the first.
 *
 * @param book the workbook as it is now
 * @throws {InputError} when it is in no chart and shows nothing to explain
 */
export async function readSelectedCell(
  workbook: Pick<Workbook, "readSelection" | "findCells" | "errorAt">,
  book: Book,
): Promise<AskedCell | CellWords> {
  const { area, values: selected } = await workbook.readSelection();
  const charts = chartTables(await book.tables());
  const table = tableAt(charts, area);
  if (!table) {
    const { sheet, row, column } = area;
    // What is said of results needs the functions, which charts do not.
    const { explainResult } = await import("./explainResult.ts");
    const words = await explainResult(workbook, book, { sheet, row, column }, selected[0]?.[0]);
    if (words) return words;
    throw notInChart(charts);
  }
  const data = await book.readTable(table.name);
  return {
    chart: chartToCheck(book, data),
    values: data.values,
    at: { row: area.row - table.area.row, column: area.column - table.area.column },
  };
}

/** The table that holds the first cell of an area. */
export function tableAt(tables: readonly TableInfo[], { sheet, row, column }: Area): TableInfo | undefined {
  return tables.find(
    ({ area }) =>
      area.sheet === sheet &&
      row >= area.row &&
      row < area.row + area.rows &&
      column >= area.column &&
      column < area.column + area.columns,
  );
}

function notInChart([first]: readonly TableInfo[]): InputError {
  return new InputError(
    first
      ? `There is nothing to explain in the selected cell. Select a reading, a figure’s name or a heading of the table ${first.name} on the sheet ${first.area.sheet}, a result, or an error, then ask again.`
      : "There is no measurement chart in the workbook yet. Bring one in under Import, then ask again.",
  );
}

export function explainCell(
  chart: Chart,
  values: Cells,
  at: ExplainJob["at"],
  flags: readonly Flag[],
): CellWords {
  const measure = chart.measures.find(({ position }) => position === at.column);
  const figure = chart.rows.indexOf(at.row);
  if (at.row === 0)
    return measure ? headingWords(chart, measure, flags) : plainHeading(values[0]?.[at.column]);
  if (figure === -1) return leftOutWords(chart, at.row);
  if (measure) return readingWords(chart, { figure, measure, cell: values[at.row]?.[at.column] }, flags);
  const attribute = chart.attributes.find(({ position }) => position === at.column);
  return attribute
    ? {
        title: `${attribute.heading} of ${chart.figures[figure] ?? ""}`,
        says: [
          attribute.values[figure] ? `The cell says ${quote(attribute.values[figure])}.` : "It is empty.",
          "This column is no measure: it is kept with the figure.",
        ],
        looks: [],
      }
    : figureWords(chart, figure, flags);
}

function readingWords(
  chart: Chart,
  {
    figure,
    measure,
    cell,
  }: { readonly figure: number; readonly measure: MeasureColumn; readonly cell: Cell },
  flags: readonly Flag[],
): CellWords {
  const { unit } = measure;
  const mm = measure.mm[figure] ?? Number.NaN;
  const row = chart.rows[figure];
  const expected = expectedValue(chart, figure, chart.measures.indexOf(measure));
  return {
    title: `${measure.heading} of ${chart.figures[figure] ?? ""}`,
    says: [
      Number.isNaN(mm)
        ? (problemOf(chart, row, measure.position) ?? "There is no reading.")
        : `The reading is ${lengthWords(mm, unit)}${asWritten(cell)}.`,
      ...(expected
        ? [
            `From the other readings ${lengthWords(expected.mm, unit)} can be expected: an estimate. About nineteen in twenty readings lie from ${lengthWords(expected.lowMm, unit)} to ${lengthWords(expected.highMm, unit)}${whereItLies(mm, expected)}.`,
          ]
        : ["There are too few readings to say what can be expected."]),
      ...howToTake(measure),
    ],
    looks: flags.filter(
      (flag) =>
        (flag.row === row && flag.column === measure.position) ||
        flag.corrections.some((each) => each.row === row && each.column === measure.position),
    ),
  };
}

/** A text that was read as a length is quoted; a number speaks for itself. */
function asWritten(cell: Cell): string {
  return typeof cell === "string" ? `, from ${quote(cell)}` : "";
}

function whereItLies(
  mm: number,
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
): string {
  if (Number.isNaN(mm)) return "";
  if (mm < lowMm) return "; this one lies below";
  return mm > highMm ? "; this one lies above" : "; so does this one";
}

function problemOf(chart: Chart, row: number | undefined, column: number): string | undefined {
  return chart.problems.find((problem) => problem.row === row && problem.column === column)?.message;
}

function howToTake({ measure, heading }: MeasureColumn): readonly string[] {
  return measure
    ? [`How to take it: ${measure.definition} ${measure.onFigures}`.trim()]
    : [
        `${quote(heading)} is a measure of your own: Measure Book compares it, but does not know how it is taken.`,
      ];
}

function headingWords(chart: Chart, column: MeasureColumn, flags: readonly Flag[]): CellWords {
  const known = Array.from(column.mm).filter((mm) => !Number.isNaN(mm));
  const range =
    known.length > 0
      ? `, from ${lengthWords(Math.min(...known), column.unit)} to ${lengthWords(Math.max(...known), column.unit)}`
      : "";
  return {
    title: column.measure?.name ?? column.heading,
    says: [
      `${String(known.length)} of ${count(chart.figures.length, "figure")} have a reading${range}.`,
      ...howToTake(column),
    ],
    looks: flags.filter((flag) => flag.figure === "" && flag.column === column.position),
  };
}

function plainHeading(cell: Cell): CellWords {
  return {
    title: cell === undefined || isCellError(cell) ? "A heading" : String(cell),
    says: ["This column holds no readings."],
    looks: [],
  };
}

function figureWords(chart: Chart, figure: number, flags: readonly Flag[]): CellWords {
  const row = chart.rows[figure];
  const missing = chart.measures.filter(({ mm }) => Number.isNaN(mm[figure] ?? Number.NaN));
  const taken = chart.measures.length - missing.length;
  return {
    title: chart.figures[figure] ?? "",
    says: [
      `${String(taken)} of ${count(chart.measures.length, "measure")} have a reading.`,
      ...(missing.length > 0 ? [`Not taken: ${missing.map(({ heading }) => heading).join(", ")}.`] : []),
      ...chart.attributes
        .filter(({ values }) => values[figure])
        .map(({ heading, values }) => `${heading}: ${values[figure] ?? ""}.`),
    ],
    looks: flags.filter((flag) => flag.row === row),
  };
}

function leftOutWords(chart: Chart, row: number): CellWords {
  const why = chart.problems.find((problem) => problem.row === row)?.message;
  return {
    title: "A row without a figure",
    says: [why ?? "This row is empty: write the name of a figure into its first cell."],
    looks: [],
  };
}
