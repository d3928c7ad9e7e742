import { cellText } from "../../addin/chart/cell.ts";
import type { ColumnChoice, ImportColumn } from "../../addin/chart/import/columns.ts";
import { matchColumns } from "../../addin/chart/import/columns.ts";
import { detectDecimalMark } from "../../addin/chart/import/decimalMark.ts";
import type { TwinChoices } from "../../addin/chart/import/figures.ts";
import { decideFigures } from "../../addin/chart/import/figures.ts";
import type { ImportPlan, PresentChart } from "../../addin/chart/import/importPlan.ts";
import { planOf } from "../../addin/chart/import/importPlan.ts";
import { requireChart } from "../../addin/chart/import/requireChart.ts";
import { shapeRemarks } from "../../addin/chart/import/survey.ts";
import type { LaidOutSource } from "../../addin/chart/import/source.ts";
import { detectHeadingRow, detectTurned, layOut, turn } from "../../addin/chart/import/source.ts";
import type { DecimalMark } from "../../addin/measures/decimal.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ReadSource } from "./readSource.ts";

/** What the user decided about the layout and the columns; what is left open is detected. */
export interface LayoutSettings {
  readonly decimalMark?: DecimalMark | undefined;
  /** Index into the rows. */
  readonly headingRow?: number | undefined;
  /** True when measures run down and figures across. */
  readonly turned?: boolean | undefined;
  readonly figureColumn?: number | undefined;
  /** The unit of columns that give no sign of theirs. */
  readonly assumedUnit?: LengthUnit | undefined;
  readonly columns: ReadonlyMap<number, ColumnChoice>;
  readonly twins: TwinChoices;
}

/** Everything between the rows of a file and the question “Import?”. */
export interface Prepared {
  /** `undefined` where the file does not tell: each reading is read by itself. */
  readonly decimalMark: DecimalMark | undefined;
  readonly headingRow: number;
  readonly turned: boolean;
  readonly laidOut: LaidOutSource;
  readonly columns: readonly ImportColumn[];
  readonly plan: ImportPlan;
  /** What is odd about the shape of the file, in sentences. */
  readonly remarks: readonly string[];
  /** Why nothing can be imported as things stand, in words. */
  readonly obstacle: string | undefined;
}

/** Lays out, matches and plans. Nothing is thrown for a bad chart: the settings stay open for mending, with the obstacle said. */
export function prepare(
  name: string,
  read: ReadSource,
  settings: LayoutSettings,
  present: PresentChart | undefined,
): Prepared {
  const turned = settings.turned ?? detectTurned(read.source.rows, read.source.texts);
  const source = turned ? turn(read.source) : read.source;
  const headingRow = settings.headingRow ?? detectHeadingRow(source.rows, source.texts);
  const laidOut = layOut(source, headingRow);
  const decimalMark = settings.decimalMark ?? detectDecimalMark(sampleTexts(laidOut));
  const columns = matchColumns(laidOut, {
    decimalMark,
    chart: present?.chart,
    choices: settings.columns,
    figureColumn: settings.figureColumn,
    assumedUnit: settings.assumedUnit,
  });
  const figures = decideFigures(
    laidOut,
    columns.find((c) => c.role === "figure")?.position ?? 0,
    present?.chart.figures ?? [],
    settings.twins,
  );
  const plan = planOf({ laidOut, columns, figures, decimalMark, present });
  return {
    decimalMark,
    headingRow,
    turned,
    laidOut,
    columns,
    plan,
    remarks: shapeRemarks(plan),
    obstacle: obstacle(() => {
      requireChart(name, laidOut, columns, figures);
    }),
  };
}

function* sampleTexts({ source, firstRow }: LaidOutSource): Generator<string> {
  for (const row of source.rows.slice(firstRow, firstRow + 200)) yield* row.map(cellText);
}

function obstacle(check: () => void): string | undefined {
  try {
    check();
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
