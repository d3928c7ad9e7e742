import type { Cell } from "../../addin/chart/cell.ts";
import type { ImportPlan, PlannedCell, TargetColumn } from "../../addin/chart/import/importPlan.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import type { CellAddress, Edit, TableInfo } from "../../addin/workbook/port.ts";

/** Name of the table that holds the chart. */
export const chartTable = "Figures";

/** Rows above a new chart: title and a quiet line; the headings come next. */
const rowsAbove = 2;

export interface EditOptions {
  /** Put what could not be read into its cell as text, marked, instead of leaving the cell empty. */
  readonly keepRefused: boolean;
}

/** One cell to write: what, and whether to mark it. */
interface Written {
  readonly value: Cell;
  readonly marked: boolean;
}

/** What an import writes: cells of figures that are there, and the rows of new ones. Columns as in the finished chart. */
interface Writing {
  readonly updates: ReadonlyMap<number, ReadonlyMap<number, Written>>;
  readonly rows: readonly (readonly (Written | undefined)[])[];
}

/**
 * A plan → the edits of one action: a new sheet with a title and a table where there is no chart yet, else new columns,
 * new rows and changed cells of the present table. What the file does not fill stays untouched.
 *
 * @param table the present chart’s table; `undefined` makes a new one
 * @param sheets names that are taken, for a new sheet
 */
export function planEdits(
  plan: ImportPlan,
  table: TableInfo | undefined,
  sheets: readonly string[],
  options: EditOptions,
): readonly Edit[] {
  return table ? editsOfTable(plan, table, options) : newSheet(plan, sheets, options);
}

function newSheet(plan: ImportPlan, sheets: readonly string[], options: EditOptions): readonly Edit[] {
  const order = inChartOrder(plan.targets);
  const name = freeSheetName(sheets);
  const { rows } = writing(plan, order, options);
  const body = rows.map((row) => order.map((_, c) => row[c] && content(row[c])));
  return [
    {
      kind: "sheet",
      sheet: {
        name,
        cells: [
          [{ value: "Figures", style: "title" }],
          [
            {
              value: "One row a figure, one column a measure. Leave a cell empty where no reading was taken.",
              style: "quiet",
            },
          ],
          order.map(({ target }) => ({ value: target.heading })),
          ...body,
        ],
        frozenRows: rowsAbove + 1,
        frozenColumns: 1,
        columnWidths: order.map(({ target }) => (target.holds === "name" ? 180 : undefined)),
        tables: [
          { name: chartTable, row: rowsAbove, column: 0, rows: rows.length + 1, columns: order.length },
        ],
      },
    },
  ];
}

function editsOfTable(plan: ImportPlan, table: TableInfo, options: EditOptions): readonly Edit[] {
  const { sheet, row, column, rows: height, columns: width } = table.area;
  const order = besideTable(plan.targets, width);
  const { updates, rows } = writing(plan, order, options);
  const chartRows = plan.present?.chart.rows ?? [];
  const figureOfRow = new Map(chartRows.map((chartRow, figure) => [chartRow, figure]));

  const newColumns = order
    .filter(({ target }) => target.position === undefined)
    .map(({ target, position }): Edit => {
      const values = Array.from({ length: height - 1 }, (_, i) => {
        const figure = figureOfRow.get(i + 1);
        return figure === undefined ? undefined : updates.get(figure)?.get(position)?.value;
      });
      return { kind: "column", table: table.name, heading: target.heading, values };
    });

  const fullWidth = width + newColumns.length;
  const newRows: Edit[] =
    rows.length === 0
      ? []
      : [
          {
            kind: "rows",
            table: table.name,
            rows: rows.map((cells) => Array.from({ length: fullWidth }, (_, c) => cells[c]?.value)),
          },
        ];

  const changes = [...updates].flatMap(([figure, cells]): Edit[] => {
    const present = [...cells.keys()].filter((c) => c < width);
    const chartRow = chartRows[figure];
    if (present.length === 0 || chartRow === undefined) return [];
    const from = Math.min(...present);
    const line = Array.from({ length: Math.max(...present) - from + 1 }, (_, i) => {
      const cell = cells.get(from + i);
      return cell && content(cell);
    });
    return [{ kind: "cells", at: { sheet, row: row + chartRow, column: column + from }, cells: [line] }];
  });

  const marked: CellAddress[] = [
    ...[...updates].flatMap(([figure, cells]) =>
      [...cells]
        .filter(([, cell]) => cell.marked)
        .map(([c]) => ({ sheet, row: row + (chartRows[figure] ?? 0), column: column + c })),
    ),
    ...rows.flatMap((cells, i) =>
      cells.flatMap((cell, c) =>
        cell?.marked ? [{ sheet, row: row + height + i, column: column + c }] : [],
      ),
    ),
  ];
  const marks: Edit[] = marked.length === 0 ? [] : [{ kind: "mark", cells: marked, marked: true }];
  return [...newColumns, ...newRows, ...changes, ...marks];
}

/** A target with its column in the finished chart and its index in the plan. */
interface Placed {
  readonly target: TargetColumn;
  readonly index: number;
  readonly position: number;
}

/** In a new chart the figure names come first, the rest in the file’s order. */
function inChartOrder(targets: readonly TargetColumn[]): readonly Placed[] {
  const indexed = targets.map((target, index) => ({ target, index }));
  const names = indexed.filter(({ target }) => target.holds === "name");
  const others = indexed.filter(({ target }) => target.holds !== "name");
  return [...names, ...others].map((placed, position) => ({ ...placed, position }));
}

/** New columns go to the right of a present chart. */
function besideTable(targets: readonly TargetColumn[], width: number): readonly Placed[] {
  const fresh = targets.filter((target) => target.position === undefined);
  return targets.map((target, index) => ({
    target,
    index,
    position: target.position ?? width + fresh.indexOf(target),
  }));
}

function writing(plan: ImportPlan, order: readonly Placed[], options: EditOptions): Writing {
  const updates = new Map<number, Map<number, Written>>();
  const rows: (Written | undefined)[][] = [];
  const rowOfFigure = new Map<number, (Written | undefined)[]>();

  for (const [f, figure] of plan.figures.entries()) {
    if (figure.action === "skip") continue;
    const cells = order.flatMap(({ index, position }) => {
      const cell = written(plan.cell(f, index), options);
      return cell ? [[position, cell] as const] : [];
    });
    if (figure.action === "add") {
      const row: (Written | undefined)[] = [];
      for (const [position, cell] of cells) row[position] = cell;
      rows.push(row);
      rowOfFigure.set(f, row);
    } else if (figure.target?.in === "the file") {
      const row = rowOfFigure.get(figure.target.figure);
      if (row) for (const [position, cell] of cells) row[position] = cell;
    } else if (figure.target) {
      const before = updates.get(figure.target.figure) ?? new Map<number, Written>();
      updates.set(figure.target.figure, new Map([...before, ...cells]));
    }
  }
  return { updates, rows };
}

function written(cell: PlannedCell, { keepRefused }: EditOptions): Written | undefined {
  switch (cell.kind) {
    case "new":
    case "changed":
      return { value: cell.value, marked: false };
    case "refused":
      // A reading that could not be read never goes over a cell that holds something.
      return keepRefused && cell.old === undefined ? { value: cell.text, marked: true } : undefined;
    case "blank":
    case "same":
      return undefined;
  }
}

/** Text goes in with the text format, so that no host takes it for a formula, a date or a number. */
function content({ value, marked }: Written): CellContent {
  return {
    value,
    ...(typeof value === "string" ? { format: "@" } : {}),
    ...(marked ? { style: "marked" as const } : {}),
  };
}

function freeSheetName(sheets: readonly string[]): string {
  const taken = new Set(sheets.map((name) => name.toLowerCase()));
  const names = [
    chartTable,
    ...Array.from({ length: sheets.length + 1 }, (_, i) => `${chartTable} ${String(i + 2)}`),
  ];
  return names.find((name) => !taken.has(name.toLowerCase())) ?? chartTable;
}
