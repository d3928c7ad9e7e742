import type { Cell, Cells } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import type { GarmentClass } from "../../addin/chart/garmentClass.ts";
import type { PresentPatterns } from "../../addin/chart/import/patternPlan.ts";
import type { ImportPlan } from "../../addin/chart/import/importPlan.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import type { EditOptions } from "./planEdits.ts";
import { besideTable, writing } from "./planEdits.ts";

/** What patterns are imported into, and what their words are held against. */
export interface PatternsAround extends PresentPatterns {
  readonly chart: Chart;
  readonly classes: readonly GarmentClass[];
  /** How far figures may differ; the usual tolerances of Measure Book without. */
  readonly tolerances?: ToleranceTable | undefined;
}

/**
 * The patterns of a plan that the table could not use, each with the reason: read as they will be read once they stand in it.
 *
 * @returns by index into the plan’s figures
 * @throws {InputError} when the table as a whole cannot be read
 */
export function rowProblems(
  plan: ImportPlan,
  { cells, chart, classes }: PatternsAround,
  settings: EditOptions,
): ReadonlyMap<number, string> {
  const order = besideTable(plan.targets, cells[0]?.length ?? 0);
  const steps = writing(plan, order, settings);
  let step = steps.next();
  while (!step.done) step = steps.next();
  const { updates, rows } = step.value;

  const finished: Cell[][] = cells.map((row) => [...row]);
  const figureOfRow = new Map<number, number>();
  for (const { target, position } of order) finished[0]![position] = target.heading;
  for (const [figure, changed] of updates) {
    const row = plan.present?.rows[figure] ?? -1;
    for (const [position, cell] of changed) if (finished[row]) finished[row][position] = cell.value;
  }
  plan.figures.forEach(({ target, action }, i) => {
    if (action === "update" && target?.in === "the chart")
      figureOfRow.set(plan.present?.rows[target.figure] ?? -1, i);
  });
  const added = plan.figures.flatMap(({ action }, i) => (action === "add" ? [i] : []));
  for (const [i, row] of rows.entries()) {
    figureOfRow.set(finished.length, added[i] ?? -1);
    finished.push(row.map((cell) => cell?.value));
  }
  const { problems } = readPatternTable(finished satisfies Cells, chart, { classes });
  return new Map(
    problems.flatMap(({ row, message }) => {
      const figure = figureOfRow.get(row);
      return figure === undefined ? [] : [[figure, withoutRow(message)] as const];
    }),
  );
}

/** “Row 4 of the patterns, Opening length: …” → “Opening length: …”: the row of a table that is not there says nothing yet. */
function withoutRow(message: string): string {
  const rest = message.replace(/^Row \d+ of the patterns(?:, |: )/u, "");
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}
