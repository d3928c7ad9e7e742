import { isBlank } from "../../addin/chart/cell.ts";
import type { Cell } from "../../addin/chart/cell.ts";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import { figureKey } from "../../addin/chart/find.ts";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import type { ExpectedValue } from "../../addin/checking/expectedValue.ts";
import { expectedValue } from "../../addin/checking/expectedValue.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { columnsOfZone } from "../../addin/similarity/columns.ts";
import { nextReadings } from "../../addin/similarity/next.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { fromMm } from "../../addin/measures/units.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { heightOf } from "./tapePlaces.ts";

/** What was read off the tape in this session, in mm, by the column of the chart. */
export type Taken = Readonly<Record<string, number>>;

/** The figure that is measured: one of the chart, or a new one by its name. */
export interface Measured {
  readonly name: string;
  /** Its place in the chart, from 0; `undefined` for a new one. */
  readonly place: number | undefined;
}

export function without(taken: Taken, { key }: MeasureColumn): Taken {
  return Object.fromEntries(Object.entries(taken).filter(([each]) => each !== key));
}

/** The figure of a name, as it is written in the chart where it is there; `undefined` for no name. */
export function measuredFigure(chart: Chart, name: string): Measured | undefined {
  const wanted = name.trim();
  if (wanted === "") return undefined;
  const place = chart.figures.findIndex((figure) => figureKey(figure) === figureKey(wanted));
  return place < 0 ? { name: wanted, place: undefined } : { name: chart.figures[place] ?? wanted, place };
}

/** In which order measures are taken. */
export type MeasureOrder = "body" | "missing" | "wanted";

/**
 * The columns in the order in which they are taken: from head to foot, or first those that the figure lacks.
 *
 * @param at place of the figure in the chart; `undefined` for a new one
 */
export function inOrder(
  chart: Chart,
  at: number | undefined,
  order: Exclude<MeasureOrder, "wanted">,
): readonly MeasureColumn[] {
  const down = [...chart.measures].sort((a, b) => {
    const [above, below] = [heightOf(a.measure?.id), heightOf(b.measure?.id)];
    return above === below ? a.position - b.position : above - below;
  });
  if (order === "body") return down;
  const isTaken = ({ mm }: MeasureColumn): boolean => at !== undefined && !Number.isNaN(mm[at] ?? Number.NaN);
  return [...down.filter((column) => !isTaken(column)), ...down.filter(isTaken)];
}

/**
 * First what tells most: missing readings in the order of FIT.MEASURENEXT, then those by which bodies are compared, then others; what is
 * there already comes last.
 *
 * @param tolerances by which figures are compared; the usual ones when left out
 */
export function mostWanted(
  chart: Chart,
  figure: Measured,
  tolerances: ToleranceTable | undefined,
): readonly MeasureColumn[] {
  const missing = inOrder(chart, figure.place, "missing");
  const trial = withTaken(chart, figure, {});
  if (trial.at + 1 > mostChecked) return missing;
  const compared = columnsOfZone(trial.chart, "body", tolerances);
  const next = nextReadings(trial.chart, compared)
    .filter((reading) => figureKey(reading.figure) === figureKey(figure.name))
    .map(({ column }) => column.key);
  const deciding = [...compared.filter(({ required }) => required), ...compared].map(
    ({ column }) => column.key,
  );
  const wanted = [...next, ...deciding];
  const rank = ({ key, mm }: MeasureColumn): number => {
    const isTaken = figure.place !== undefined && !Number.isNaN(mm[figure.place] ?? Number.NaN);
    const at = wanted.indexOf(key);
    return isTaken ? wanted.length + 1 : at < 0 ? wanted.length : at;
  };
  return [...missing].sort((a, b) => rank(a) - rank(b));
}

/** The chart as it would be with what was taken, and the place of the figure in it. */
export function withTaken(chart: Chart, figure: Measured, taken: Taken): { chart: Chart; at: number } {
  const at = figure.place ?? chart.figures.length;
  const isNew = figure.place === undefined;
  return {
    at,
    chart: {
      ...chart,
      figures: isNew ? [...chart.figures, figure.name] : chart.figures,
      rows: isNew ? [...chart.rows, Math.max(0, ...chart.rows) + 1] : chart.rows,
      measures: chart.measures.map((column) => {
        const mm = Float64Array.from({ length: Math.max(at + 1, column.mm.length) }, (_, i) =>
          i < column.mm.length ? (column.mm[i] ?? Number.NaN) : Number.NaN,
        );
        const reading = taken[column.key];
        if (reading !== undefined) mm[at] = reading;
        return { ...column, mm };
      }),
      attributes: isNew
        ? chart.attributes.map((each) => ({ ...each, values: [...each.values, ""] }))
        : chart.attributes,
      problems: [],
    },
  };
}

/** Charts beyond which a reading is not held against all others while one waits for the next. */
const mostChecked = 600;

/** What speaks against a reading, in words. */
export interface ReadingDoubt extends Pick<Flag, "why"> {
  readonly kind: Flag["kind"] | "differs from the first reading";
}

/** What speaks against a reading that was just taken; `undefined` where nothing does. */
export function doubtAbout(
  chart: Chart,
  figure: Measured,
  taken: Taken,
  column: MeasureColumn,
): ReadingDoubt | undefined {
  const trial = withTaken(chart, figure, taken);
  const row = trial.chart.rows[trial.at];
  const flags = trial.at + 1 > mostChecked ? [] : checkChart(trial.chart);
  return (
    flags.find((flag) => flag.row === row && flag.column === column.position) ??
    farFromAll(column, figure, taken[column.key])
  );
}

/** With fewer readings nobody can say how small or large figures are there. */
const fewestOthers = 5;
/** A reading this many times smaller or larger than all others is asked about, even of a figure of which nothing else is known. */
const far = 3;

function farFromAll(
  { mm, unit, heading }: MeasureColumn,
  { place }: Measured,
  reading: number | undefined,
): ReadingDoubt | undefined {
  const others = [...mm].filter((other, i) => i !== place && other > 0).sort((a, b) => a - b);
  // Slips that stand in the chart already must not excuse the next one.
  const aside = Math.floor(others.length / 10);
  const [least, most] = [others[aside], others.at(-1 - aside)];
  if (reading === undefined || others.length < fewestOthers || least === undefined || most === undefined)
    return undefined;
  if (reading === 0 || (reading * far >= least && reading <= most * far)) return undefined;
  const said = [reading, least, most].map((length) => lengthWords(length, unit));
  return {
    kind: "out of proportion",
    why: `${heading} ${said[0] ?? ""} is far from the other figures, which have about ${said[1] ?? ""} to ${said[2] ?? ""}. Was it another unit?`,
  };
}

/** What the reading may be expected to be, from the other readings of this figure and from figures like it. */
export function expectedHere(
  chart: Chart,
  figure: Measured,
  taken: Taken,
  column: MeasureColumn,
): ExpectedValue | undefined {
  const trial = withTaken(chart, figure, without(taken, column));
  if (trial.at + 1 > mostChecked) return undefined;
  return expectedValue(trial.chart, trial.at, chart.measures.indexOf(column));
}

/** No more digits than a tape can give. */
function written(mm: number, { unit }: MeasureColumn): number {
  return Number(fromMm(mm, unit).toFixed(4));
}

/** What is written for a session: the cells of the figure’s row, or a row of its own. */
export function measuringEdits(
  { cells, chart }: PresentChart,
  table: TableInfo,
  figure: Measured,
  taken: Taken,
): readonly Edit[] {
  const { sheet, row, column: left, columns } = table.area;
  const readings = chart.measures.flatMap((column) => {
    const mm = taken[column.key];
    return mm === undefined ? [] : [{ position: column.position, value: written(mm, column) }];
  });
  if (figure.place !== undefined) {
    const at = row + (chart.rows[figure.place] ?? 0);
    return readings.map(({ position, value }) => ({
      kind: "cells",
      at: { sheet, row: at, column: left + position },
      cells: [[{ value }]],
    }));
  }
  const line: Cell[] = Array.from({ length: columns }, (_, c) =>
    c === 0 ? figure.name : readings.find(({ position }) => position === c)?.value,
  );
  const empty = cells.findIndex((each, i) => i > 0 && each.every(isBlank));
  if (empty < 0) return [{ kind: "rows", table: table.name, rows: [line] }];
  const filled = line.map((value) => (value === undefined ? undefined : { value }));
  return [{ kind: "cells", at: { sheet, row: row + empty, column: left }, cells: [filled] }];
}
